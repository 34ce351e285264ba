import { failure, success } from '../evidence/result.js';
import { rateForPressure108 } from '../engineering/ciria-108/rate-for-pressure.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { CalculatorInput } from './calculator-input.js';
import { CIRIA_FIELDS, readCiria } from './ciria-input.js';
import { outsideAnswer } from './outside-answer.js';
import { readRating, turnedRoundAnswer } from './metric-rise-limit.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'ciria-108';

/** Fastest rate of rise for a form's `rating` by CIRIA Report 108; the other fields as `ciriaPressure`, but for `rise`. */
export const ciriaRise: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['rating', ...CIRIA_FIELDS]);
  const rated = readRating(input);
  const asked = readCiria(input, fields);
  if (rated === undefined || asked === undefined || input.errors.length > 0) return failure(input.errors);
  if (asked.outside.length > 0) return success(outsideAnswer('CIRIA 108', asked.outside, SOURCE, input.defaults));
  const { c1, c2, K, poured, form } = asked;
  const { weight: D, height: H } = form;
  const head = D * poured;
  const R = rated < head ? rateForPressure108(rated, D, c1, c2, K.value, H) : null;
  const equation = 'R = ( ( H − y² ) / C1 )², y = ( k + √( k² + 4 · ( H − P / D ) ) ) / 2, k = C2 · K';
  const substituted = `H = ${n(H)}, C1 = ${n(c1)}, P / D = ${n(rated)} / ${n(D)}, k = ${n(c2)} · ${n(K.value)}`;
  return success(
    turnedRoundAnswer(
      {
        source: SOURCE, rated, head, fastest: null, steps: [K], notes: [],
        rate: R === null ? null : workedStep('rate of rise', equation, substituted, R, 'm/h', SOURCE),
        // The equation at a rate of nought.
        least: D * c2 * K.value * Math.sqrt(H),
      },
      input.defaults,
    ),
  );
};
