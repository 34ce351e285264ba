import { failure, success } from '../evidence/result.js';
import { formPressure108 } from '../engineering/ciria-108/form-pressure.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { CalculatorInput } from './calculator-input.js';
import { cappedPressure } from './metric-form-pressure.js';
import { CIRIA_FIELDS, readCiria } from './ciria-input.js';
import { outsideAnswer } from './outside-answer.js';
import { readRise } from './fresh-concrete-input.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'ciria-108';

/**
 * Form pressure by CIRIA Report 108: `section` (wall or column), `c2` (0.30, 0.45, 0.60), `pourHeight` where less is poured than the form is high.
 *
 * Worked in SI, the units of the report. Outside its temperatures there is no answer.
 */
export const ciriaPressure: Calculator = (fields) => {
  const input = new CalculatorInput(fields, [...CIRIA_FIELDS, 'rise']);
  const asked = readCiria(input, fields);
  const R = readRise(input);
  if (asked === undefined || R === undefined || input.errors.length > 0) return failure(input.errors);
  if (asked.outside.length > 0) return success(outsideAnswer('CIRIA 108', asked.outside, SOURCE, input.defaults));
  const { c1, c2, K, poured, form } = asked;
  const { weight: D, height: H } = form;
  const P = formPressure108(D, c1, c2, K.value, R, H);
  const equation = 'P = D · ( C1 · √R + C2 · K · √( H − C1 · √R ) )';
  const substituted = `${n(D)} · ( ${n(c1)} · √${n(R)} + ${n(c2)} · ${n(K.value)} · √( ${n(H)} − ${n(c1)} · √${n(R)} ) )`;
  const steps = P === null ? [] : [K, workedStep('pressure', equation, substituted, P, 'kPa', SOURCE)];
  const { result, governs, trace } = cappedPressure(P ?? Number.POSITIVE_INFINITY, 'equation', form, poured, SOURCE);
  return success({
    result,
    governs,
    trace: [...steps, ...trace],
    source: SOURCE,
    defaults: input.defaults,
    notes: P === null ? ['C1 · √R is over the height of the form: as the report says, the liquid head counts.'] : [],
    findings: [],
  });
};
