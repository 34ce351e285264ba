import { inSi } from '../quantity/quantity.js';
import { inches, millimetres, type Nm } from '../quantity/length.js';
import { pinBarForce } from '../engineering/statics/pin-bar-force.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { STATICS_SPANS as SPANS } from './statics-spans.js';
import { namedBar } from './bar-field.js';
import { workedStep } from './worked-step.js';
import type { CalculatorInput } from './calculator-input.js';
import type { CoherentUnits } from './both-units.js';
import type { TraceStep } from '../evidence/trace.js';

export const PIN_BAR_FIELDS = ['bar', 'webSpacing', 'barYield'] as const;

/** Nominal diameters: eighths of an inch by number; metric bars by size. From memory. */
const DIAMETERS: Readonly<Record<string, Nm>> = {
  '#3': inches(0.375), '#4': inches(0.5), '#5': inches(0.625), '#6': inches(0.75),
  '10M': millimetres(11.3), '15M': millimetres(16), '20M': millimetres(19.5),
};
const BARS = Object.keys(DIAMETERS);
const ASSUMED_YIELD_KSI = 60;
const YIELD = { from: inSi('pressure', 'ksi', 20), to: inSi('pressure', 'ksi', 120), says: 'between 20 and 120 ksi (138 and 827 MPa)' };
/** Allowable share of the plastic moment: the steel specification's factor, from memory. */
const MARGIN = 1.67;

export interface PinBar {
  readonly name: string;
  readonly diameter: Nm;
  readonly webSpacing: Nm;
  readonly yieldKpa: number;
}

/** The pinned bar of a tee; `none` where the question names no bar, undefined where a field could not be read. */
export function readPinBar(input: CalculatorInput): PinBar | 'none' | undefined {
  if (!input.has('bar')) {
    for (const name of ['webSpacing', 'barYield']) if (input.has(name)) input.refuse(name, 'nothing, where no bar is given');
    input.defaults.push('bar: not stated, no bar counted');
    return 'none';
  }
  const name = input.name('bar', (written) => BARS.find((bar) => bar === namedBar(written)?.name) ?? null, BARS);
  const words = 'webSpacing: 8 in (common practice, no source)';
  const webSpacing = input.orElse('webSpacing', () => input.length('webSpacing', '8 in', SPANS.webSpacing), inches(8), words);
  const assumed = inSi('pressure', 'ksi', ASSUMED_YIELD_KSI);
  const yieldKpa = input.orElse('barYield', () => input.quantity('barYield', 'pressure', '60 ksi', YIELD), assumed, `barYield: ${ASSUMED_YIELD_KSI} ksi`);
  const diameter = name === undefined ? undefined : DIAMETERS[name];
  if (name === undefined || diameter === undefined || webSpacing === undefined || yieldKpa === undefined) return undefined;
  return { name, diameter, webSpacing, yieldKpa };
}

/** A bar of a job by its size, of the assumed yield strength; null for a size without a diameter here. */
export function pinBarOf(name: string, webSpacing: Nm): PinBar | null {
  const diameter = DIAMETERS[name];
  return diameter === undefined ? null : { name, diameter, webSpacing, yieldKpa: inSi('pressure', 'ksi', ASSUMED_YIELD_KSI) };
}

/** What the bar carries by bending alone, between webs one spacing beyond each side of the cut-out. */
export function pinBarStep(units: CoherentUnits, bar: PinBar, core: Nm): TraceStep {
  const [fy, d] = [units.of('pressure', bar.yieldKpa), units.ofLength(bar.diameter)];
  const [L, c] = [units.ofLength(core + 2 * bar.webSpacing), units.ofLength(core)];
  const equation = 'F = 8 · fy · d³ / 6 / Ω / ( 2 · L − c )';
  const substituted = `8 · ${n(fy)} · ${n(d)}³ / 6 / ${MARGIN} / ( 2 · ${n(L)} − ${n(c)} )`;
  return workedStep('force the bar carries alone', equation, substituted, pinBarForce(fy, d, L, c, MARGIN), units.unit('force'), 'statics');
}
