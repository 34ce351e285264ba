import { classPressure, rateForClassPressure } from '../engineering/din-18218-2010/class-pressure.js';
import { coldFactor } from '../engineering/din-18218-2010/cold-factor.js';
import { failure, success } from '../evidence/result.js';
import { LIMITS, STIFF } from '../engineering/din-18218-2010/consistency.js';
import { rateForSelfCompactingPressure, selfCompactingPressure } from '../engineering/din-18218-2010/self-compacting-pressure.js';
import { settingFactor } from '../engineering/din-18218-2010/setting-factor.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { CalculatorInput } from './calculator-input.js';
import { DIN_FIELDS, DIN_MEMORY, readDin, type DinForm } from './din-input.js';
import { dinNotes } from './din-pressure.js';
import { outsideAnswer } from './outside-answer.js';
import { readRating, turnedRoundAnswer } from './metric-rise-limit.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'din-18218-2010';

/** Fastest rate of rise for a form's `rating` by DIN 18218:2010; the other fields as `dinPressure`, but for `rise`. */
export const dinRise: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['rating', ...DIN_FIELDS]);
  const rated = readRating(input);
  const asked = readDin(input);
  if (rated === undefined || asked === undefined || input.errors.length > 0) return failure(input.errors);
  if (asked.outside.length > 0) return success(outsideAnswer('DIN 18218', asked.outside, SOURCE, input.defaults));
  const { form, consistency, T } = asked;
  const cold = coldFactor(T);
  const { rate, least, equation, source } = turned(asked, rated / cold);
  const substituted = `${consistency}, tE = ${n(asked.tE)}, σ = ${n(rated)} / ${n(cold)}`;
  return success(
    turnedRoundAnswer(
      {
        source: SOURCE, rated, head: form.weight * form.height, steps: [], notes: dinNotes(consistency, T),
        fastest: STIFF.includes(consistency) ? LIMITS.fastestStiff : null,
        rate: rate === null ? null : workedStep('rate of rise', equation, substituted, rate, 'm/h', source),
        least: least * cold,
      },
      input.defaults,
    ),
  );
};

/** Rate and pressure of the slowest filling, of concrete at the reference temperature. */
function turned({ form, consistency, tE }: DinForm, pressure: number) {
  if (consistency === 'SCC') {
    const rate = rateForSelfCompactingPressure(pressure, tE, form.weight);
    return { rate, least: selfCompactingPressure(0, tE, form.weight), equation: 'v = ( σ / γ − 1 ) / ( 0.26 · tE )', source: 'din-18218-2010 Eq. (1)' };
  }
  const K1 = settingFactor(consistency, tE);
  return { rate: rateForClassPressure(consistency, pressure, K1), least: classPressure(consistency, 0, K1), equation: 'v of class, σ and K1', source: DIN_MEMORY };
}
