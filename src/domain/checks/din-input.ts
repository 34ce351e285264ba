import { meant } from '../quantity/rounding.js';
import { CONSISTENCIES, LIMITS, STIFF, type Consistency } from '../engineering/din-18218-2010/consistency.js';
import { feetToMetres } from '../quantity/us-customary.js';
import { inUnit } from '../quantity/quantity.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { readMetricForm, type MetricForm } from './metric-form-pressure.js';
import type { CalculatorInput } from './calculator-input.js';
import type { LeftLimit } from './outside-answer.js';

export const DIN_FIELDS = ['method', 'height', 'class', 'setting', 'unitWeight', 'concrete'] as const;
export const DIN_MEMORY = 'din-18218-2010 from memory';
const SETTING = { above: 0, to: 72, says: 'more than 0 and at most 72 h' };

/** A form by the standard, but for its rate. */
export interface DinForm {
  readonly form: MetricForm;
  readonly consistency: Consistency;
  /** End of setting [h]. */
  readonly tE: number;
  /** Temperature of the concrete [°C]. */
  readonly T: number;
  readonly outside: readonly LeftLimit[];
}

/** Everything but the rate; undefined where a field could not be read. */
export function readDin(input: CalculatorInput): DinForm | undefined {
  const form = readMetricForm(input);
  const consistency = input.name('class', (name) => CONSISTENCIES.find((known) => known === name.trim().toUpperCase()) ?? null, CONSISTENCIES);
  const tE = input.quantity('setting', 'time', '5 h', SETTING);
  const assumed = `concrete: ${LIMITS.reference} C, the reference`;
  const T = input.orElse<number>('concrete', () => input.quantity('concrete', 'temperature', '15 C', PLAUSIBLE.concrete), LIMITS.reference, assumed);
  if (form === undefined || consistency === undefined || tE === undefined || T === undefined) return undefined;
  return { form, consistency, tE, T, outside: limitsLeft(form, consistency, tE, T) };
}

/** The limit of the rate that F1 to F4 have. */
export function rateLeft(consistency: Consistency, rise: number): readonly LeftLimit[] {
  if (!STIFF.includes(consistency) || rise <= LIMITS.fastestStiff * SAME) return [];
  const perHour = (m: number): number => meant(m / feetToMetres(1));
  const numbers = { riseFtPerH: perHour(rise), limitFtPerH: perHour(LIMITS.fastestStiff), side: 'above' };
  return [{ numbers, source: 'din-18218-1980-summary' }];
}

function limitsLeft({ weight }: MetricForm, consistency: Consistency, tE: number, read: number): readonly LeftLimit[] {
  // 41 F is 5 C.
  const T = Number(read.toFixed(9));
  const fahrenheit = (c: number): number => Number(inUnit('temperature', '°F', c).toFixed(6));
  const left: LeftLimit[] = [];
  if (tE < LIMITS.earliestSetting / SAME || tE > LIMITS.latestSetting * SAME) {
    const [limit, side] = tE < LIMITS.earliestSetting ? [LIMITS.earliestSetting, 'below'] : [LIMITS.latestSetting, 'above'];
    left.push({ numbers: { settingHours: tE, limitHours: limit, side }, source: DIN_MEMORY });
  }
  if (consistency !== 'SCC' && weight > LIMITS.heaviest * SAME)
    left.push({ numbers: { weightKnPerM3: weight, limitKnPerM3: LIMITS.heaviest, side: 'above' }, source: DIN_MEMORY });
  if (T < LIMITS.coldest || T > LIMITS.warmest) {
    const [limit, side] = T < LIMITS.coldest ? [LIMITS.coldest, 'below'] : [LIMITS.warmest, 'above'];
    left.push({ numbers: { concreteF: fahrenheit(T), limitF: fahrenheit(limit), side }, source: DIN_MEMORY });
  }
  return left;
}

/** A value this close to a limit is the limit: what is left of a conversion. */
const SAME = 1 + 1e-9;
