import { classPressure } from '../engineering/din-18218-2010/class-pressure.js';
import { coldFactor } from '../engineering/din-18218-2010/cold-factor.js';
import { CONSISTENCIES, LIMITS, STIFF, type Consistency } from '../engineering/din-18218-2010/consistency.js';
import { failure, success } from '../evidence/result.js';
import { feetToMetres } from '../quantity/us-customary.js';
import { inUnit } from '../quantity/quantity.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { selfCompactingPressure } from '../engineering/din-18218-2010/self-compacting-pressure.js';
import { settingFactor } from '../engineering/din-18218-2010/setting-factor.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { CalculatorInput } from './calculator-input.js';
import { cappedPressure, readMetricWall, type MetricWall } from './metric-form-pressure.js';
import { outsideAnswer, type LeftLimit } from './outside-answer.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';
import type { TraceStep } from '../evidence/trace.js';

const SOURCE = 'din-18218-2010';
const MEMORY = 'din-18218-2010 from memory';
const SETTING = { above: 0, to: 72, says: 'more than 0 and at most 72 h' };

/**
 * Form pressure by DIN 18218:2010: `class` F1 to F6 or SCC, `setting` (end of setting after mixing). Worked in SI, characteristic values.
 *
 * Outside its rates, setting times, weights and temperatures there is no answer.
 */
export const dinPressure: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['method', 'height', 'rise', 'class', 'setting', 'unitWeight', 'concrete']);
  const wall = readMetricWall(input);
  const consistency = input.name('class', (name) => CONSISTENCIES.find((known) => known === name.trim().toUpperCase()) ?? null, CONSISTENCIES);
  const tE = input.quantity('setting', 'time', '5 h', SETTING);
  const assumed = `concrete: ${LIMITS.reference} C, the reference`;
  const T = input.orElse<number>('concrete', () => input.quantity('concrete', 'temperature', '15 C', PLAUSIBLE.concrete), LIMITS.reference, assumed);
  if (wall === undefined || consistency === undefined || tE === undefined || T === undefined) return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const outside = limitsLeft(wall, consistency, tE, T);
  if (outside.length > 0) return success(outsideAnswer('DIN 18218', outside, SOURCE, input.defaults));
  const steps = pressureSteps(wall, consistency, tE);
  const plain = steps.at(-1)?.value ?? Number.NaN;
  const factor = coldFactor(T);
  const cold = factor > 1 ? [workedStep('cold concrete', 'σ · ( 1 + 0.03 · ( 15 − T ) )', `${n(plain)} · ${n(factor)}`, plain * factor, 'kPa', MEMORY)] : [];
  const { result, governs, trace } = cappedPressure(plain * factor, consistency, wall, wall.height, SOURCE);
  return success({
    result,
    governs,
    trace: [...steps, ...cold, ...trace],
    source: SOURCE,
    defaults: input.defaults,
    notes: [
      'Characteristic values, without a partial factor; placed from the top.',
      ...(consistency === 'SCC' ? [] : ['The equations of the classes F1 to F6 are from memory: check them against the standard.']),
      ...(T > LIMITS.reference ? ['Concrete warmer than 15 C is not counted as pressing less.'] : []),
    ],
    findings: [],
  });
};

function pressureSteps({ rise: v, weight }: MetricWall, consistency: Consistency, tE: number): readonly TraceStep[] {
  if (consistency === 'SCC') {
    const substituted = `( 1 + 0.26 · ${n(v)} · ${n(tE)} ) · ${n(weight)}`;
    return [workedStep('pressure', 'σ = ( 1 + 0.26 · v · tE ) · γ ≥ 30', substituted, selfCompactingPressure(v, tE, weight), 'kPa', 'din-18218-2010 Eq. (1)')];
  }
  const K1 = workedStep('factor of the setting time', 'K1 of class and tE', `${consistency}, tE = ${n(tE)}`, settingFactor(consistency, tE), '1', MEMORY);
  const substituted = `${consistency}, v = ${n(v)}, K1 = ${n(K1.value)}`;
  return [K1, workedStep('pressure', 'σ of class, v and K1', substituted, classPressure(consistency, v, K1.value), 'kPa', MEMORY)];
}

function limitsLeft({ rise, weight }: MetricWall, consistency: Consistency, tE: number, read: number): readonly LeftLimit[] {
  // 41 F is 5 C.
  const T = Number(read.toFixed(9));
  const fahrenheit = (c: number): number => Number(inUnit('temperature', '°F', c).toFixed(6));
  const perHour = (m: number): number => Number((m / feetToMetres(1)).toPrecision(12));
  const left: LeftLimit[] = [];
  if (STIFF.includes(consistency) && rise > LIMITS.fastestStiff * SAME)
    left.push({ numbers: { riseFtPerH: perHour(rise), limitFtPerH: perHour(LIMITS.fastestStiff), side: 'above' }, source: 'din-18218-1980-summary' });
  if (tE < LIMITS.earliestSetting / SAME || tE > LIMITS.latestSetting * SAME) {
    const [limit, side] = tE < LIMITS.earliestSetting ? [LIMITS.earliestSetting, 'below'] : [LIMITS.latestSetting, 'above'];
    left.push({ numbers: { settingHours: tE, limitHours: limit, side }, source: MEMORY });
  }
  if (consistency !== 'SCC' && weight > LIMITS.heaviest * SAME)
    left.push({ numbers: { weightKnPerM3: weight, limitKnPerM3: LIMITS.heaviest, side: 'above' }, source: MEMORY });
  if (T < LIMITS.coldest || T > LIMITS.warmest) {
    const [limit, side] = T < LIMITS.coldest ? [LIMITS.coldest, 'below'] : [LIMITS.warmest, 'above'];
    left.push({ numbers: { concreteF: fahrenheit(T), limitF: fahrenheit(limit), side }, source: MEMORY });
  }
  return left;
}

/** A value this close to a limit is the limit: what is left of a conversion. */
const SAME = 1 + 1e-9;
