import type { OutsideLimit } from './fresh-concrete-wall.js';

/** A formula as its source prints it, with numbers put in, and worked out. */
export interface PrintedFormula<Numbers extends readonly number[]> {
  readonly equation: string;
  readonly substituted: (...numbers: Numbers) => string;
  readonly of: (...numbers: Numbers) => number;
  readonly source: string;
}

type Single = readonly [Cw: number];
type Pressed = readonly [Cw: number, Cc: number, R: number, T: number];
type Risen = readonly [p: number, Cw: number, Cc: number, T: number];

/**
 * The wall equations in one of the two systems of units in which the standard prints them.
 *
 * The constants and limits of each are rounded for themselves, so neither is the other converted.
 */
export interface EquationSet {
  readonly pressureUnit: 'psf' | 'kPa';
  readonly lengthUnit: 'ft' | 'm';
  readonly riseUnit: 'ft/h' | 'm/h';
  readonly equationAHeight: number;
  readonly equationARise: number;
  readonly equationBRise: number;
  readonly head: PrintedFormula<readonly [w: number, h: number]>;
  readonly minimum: PrintedFormula<Single>;
  readonly equationA: PrintedFormula<Pressed>;
  readonly equationB: PrintedFormula<Pressed>;
  readonly rateByA: PrintedFormula<Risen>;
  readonly rateByB: PrintedFormula<Risen>;
  readonly depth: PrintedFormula<readonly [p: number, w: number]>;
  /** Floor and cap of the equations together. */
  readonly bounded: string;
  /** Limits of temperature that T of this system leaves. */
  readonly outside: (T: number) => readonly OutsideLimit[];
}
