import { meant } from '../quantity/rounding.js';
import {
  feetPerHourToMetresPerHour,
  feetToMetres,
  kpaToPsf,
  metresPerHourToFeetPerHour,
  psfToKpa,
} from '../quantity/us-customary.js';
import { NM_PER_METRE, toFeet, toInches, toMm, type Nm } from '../quantity/length.js';
import type { Finding } from '../evidence/finding.js';
import type { InputError } from '../evidence/input-error.js';
import type { Result } from '../evidence/result.js';
import type { TraceStep } from '../evidence/trace.js';

/** One quantity in both systems. */
export interface InBothUnits {
  readonly us: { readonly value: number; readonly unit: string };
  readonly si: { readonly value: number; readonly unit: string };
}

/** One row of a list: a point of a diagram, a pattern of a cutting plan, a stack. */
export type CalculatorRow = Readonly<Record<string, InBothUnits | number | string | readonly InBothUnits[]>>;

export type CalculatorResult = InBothUnits | number | string | readonly InBothUnits[] | readonly CalculatorRow[];

/** What every calculator answers. Outside a method's limits `result` is empty and `findings` says why. */
export interface CalculatorAnswer {
  readonly result: Readonly<Record<string, CalculatorResult>>;
  /** What decided the result: an equation, a floor, a cap, or `outside-method`. */
  readonly governs: string;
  readonly trace: readonly TraceStep[];
  readonly source: string;
  /** Inputs that were left out, with the value assumed for each. */
  readonly defaults: readonly string[];
  /** Where the standard itself says what to do past a limit, and this was done; and by which set of equations. */
  readonly notes: readonly string[];
  readonly findings: readonly Finding[];
}

/** A calculator reads quantities as text with units; what it cannot read it refuses, all of it at once. */
export type Calculator = (input: Readonly<Record<string, unknown>>) => Result<CalculatorAnswer, readonly InputError[]>;

const both = (us: number, usUnit: string, si: number, siUnit: string): InBothUnits => ({
  us: { value: meant(us), unit: usUnit },
  si: { value: meant(si), unit: siUnit },
});

export const pressureInBoth = (psf: number): InBothUnits => both(psf, 'psf', psfToKpa(psf), 'kPa');
export const depthInBoth = (ft: number): InBothUnits => both(ft, 'ft', feetToMetres(ft), 'm');
export const lengthInBoth = (nm: Nm): InBothUnits => both(toInches(nm), 'in', toMm(nm), 'mm');
export const riseInBoth = (ftPerH: number): InBothUnits => both(ftPerH, 'ft/h', feetPerHourToMetresPerHour(ftPerH), 'm/h');

/** The same of a value worked out in SI. */
export const pressureInBothFromSi = (kPa: number): InBothUnits => both(kpaToPsf(kPa), 'psf', kPa, 'kPa');
export const depthInBothFromSi = (m: number): InBothUnits => both(toFeet(m * NM_PER_METRE), 'ft', m, 'm');
export const riseInBothFromSi = (mPerH: number): InBothUnits => both(metresPerHourToFeetPerHour(mPerH), 'ft/h', mPerH, 'm/h');
