import { classPressure } from '../engineering/din-18218-2010/class-pressure.js';
import { coldFactor } from '../engineering/din-18218-2010/cold-factor.js';
import { failure, success } from '../evidence/result.js';
import { LIMITS, type Consistency } from '../engineering/din-18218-2010/consistency.js';
import { selfCompactingPressure } from '../engineering/din-18218-2010/self-compacting-pressure.js';
import { settingFactor } from '../engineering/din-18218-2010/setting-factor.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { CalculatorInput } from './calculator-input.js';
import { cappedPressure, type MetricForm } from './metric-form-pressure.js';
import { DIN_FIELDS, DIN_MEMORY, rateLeft, readDin } from './din-input.js';
import { outsideAnswer } from './outside-answer.js';
import { readRise } from './fresh-concrete-input.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';
import type { TraceStep } from '../evidence/trace.js';

const SOURCE = 'din-18218-2010';

/**
 * Form pressure by DIN 18218:2010: `class` F1 to F6 or SCC, `setting` (end of setting after mixing). Worked in SI, characteristic values.
 *
 * Outside its rates, setting times, weights and temperatures there is no answer.
 */
export const dinPressure: Calculator = (fields) => {
  const input = new CalculatorInput(fields, [...DIN_FIELDS, 'rise']);
  const asked = readDin(input);
  const rise = readRise(input);
  if (asked === undefined || rise === undefined || input.errors.length > 0) return failure(input.errors);
  const { form, consistency, tE, T } = asked;
  const outside = [...rateLeft(consistency, rise), ...asked.outside];
  if (outside.length > 0) return success(outsideAnswer('DIN 18218', outside, SOURCE, input.defaults));
  const steps = pressureSteps(form, rise, consistency, tE);
  const plain = steps.at(-1)?.value ?? Number.NaN;
  const factor = coldFactor(T);
  const cold = factor > 1 ? [workedStep('cold concrete', 'σ · ( 1 + 0.03 · ( 15 − T ) )', `${n(plain)} · ${n(factor)}`, plain * factor, 'kPa', DIN_MEMORY)] : [];
  const { result, governs, trace } = cappedPressure(plain * factor, consistency, form, form.height, SOURCE);
  return success({
    result,
    governs,
    trace: [...steps, ...cold, ...trace],
    source: SOURCE,
    defaults: input.defaults,
    notes: dinNotes(consistency, T),
    findings: [],
  });
};

function pressureSteps({ weight }: MetricForm, v: number, consistency: Consistency, tE: number): readonly TraceStep[] {
  if (consistency === 'SCC') {
    const substituted = `( 1 + 0.26 · ${n(v)} · ${n(tE)} ) · ${n(weight)}`;
    return [workedStep('pressure', 'σ = ( 1 + 0.26 · v · tE ) · γ ≥ 30', substituted, selfCompactingPressure(v, tE, weight), 'kPa', 'din-18218-2010 Eq. (1)')];
  }
  const K1 = workedStep('factor of the setting time', 'K1 of class and tE', `${consistency}, tE = ${n(tE)}`, settingFactor(consistency, tE), '1', DIN_MEMORY);
  const substituted = `${consistency}, v = ${n(v)}, K1 = ${n(K1.value)}`;
  return [K1, workedStep('pressure', 'σ of class, v and K1', substituted, classPressure(consistency, v, K1.value), 'kPa', DIN_MEMORY)];
}

/** What is to be known of any answer by this standard. */
export function dinNotes(consistency: Consistency, T: number): readonly string[] {
  return [
    'Characteristic values, without a partial factor; placed from the top.',
    ...(consistency === 'SCC' ? [] : ['The equations of the classes F1 to F6 are from memory: check them against the standard.']),
    ...(T > LIMITS.reference ? ['Concrete warmer than 15 C is not counted as pressing less.'] : []),
  ];
}
