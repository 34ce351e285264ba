import { CalculatorInput } from './calculator-input.js';
import { ciriaRise } from './ciria-rise.js';
import { dinRise } from './din-rise.js';
import {
  FRESH_CONCRETE_FIELDS,
  inSi,
  inUsCustomary,
  readStandingConcrete,
  type StandingConcrete,
} from './fresh-concrete-input.js';
import { EQUATION_A_RISE_M_PER_H } from '../engineering/aci-347-04/limits-si.js';
import { failure, success } from '../evidence/result.js';
import { finding } from '../evidence/finding.js';
import { kpaToPsf, psfToKpa } from '../quantity/us-customary.js';
import { outsideMethodAnswer } from './outside-method-answer.js';
import {
  pressureInBoth,
  pressureInBothFromSi,
  riseInBoth,
  riseInBothFromSi,
  type Calculator,
  type CalculatorAnswer,
  type InBothUnits,
} from './calculator-answer.js';
import { questionSystem } from './question-system.js';
import { riseLimit, riseLimitSi, type RiseGoverns, type RiseLimit } from '../engineering/aci-347-04/rise-limit.js';
import type { OutsideMethod } from '../engineering/aci-347-04/fresh-concrete-wall.js';

const SOURCE = 'aci-347-04 §2.2.2';
const HIGHEST_RATING_PSF = 50_000;

/** What the equations of either set say. */
type Solved =
  | OutsideMethod
  | Extract<RiseLimit, { kind: 'any-rate' }>
  | (Omit<Extract<RiseLimit, { kind: 'limit' }>, 'riseFtPerH'> & { readonly rise: InBothUnits })
  | (Omit<Extract<RiseLimit, { kind: 'no-rate' }>, 'leastPsf'> & { readonly least: InBothUnits });

/**
 * Fastest rate of rise of a wall for a form's rated pressure: the form-pressure calculator turned round.
 *
 * Reads `rating` and the fields of the form-pressure calculator but `rise`; the set of equations is the one in whose units the question
 * is asked (`questionSystem`). Answers `rise`: a rate, or the words `any rate`; where no rate keeps the pressure within the rating,
 * `no rate` and a `pressure-over-rating` finding with the least pressure possible. Methods as form-pressure.
 */
export const riseLimitCalculator: Calculator = (fields) => {
  const other = OTHER_METHODS.find(({ name }) => name === fields['method']);
  return other ? other.calculator(fields) : aciRise(fields);
};

const OTHER_METHODS: readonly { readonly name: string; readonly calculator: Calculator }[] = [
  { name: 'ciria-108', calculator: ciriaRise },
  { name: 'din-18218', calculator: dinRise },
];
const METHODS = ['aci-347', ...OTHER_METHODS.map(({ name }) => name)];

const aciRise: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['rating', ...FRESH_CONCRETE_FIELDS]);
  const { system, note } = questionSystem(fields, 'rating');
  const span = { above: 0, to: psfToKpa(HIGHEST_RATING_PSF), says: `more than 0 and at most ${HIGHEST_RATING_PSF} psf` };
  const ratedKpa = input.quantity('rating', 'pressure', '750 psf', span);
  const standing = readStandingConcrete(input, system, METHODS);
  if (ratedKpa === undefined || standing === undefined || input.errors.length > 0) return failure(input.errors);
  const solved = system === 'si' ? bySi(ratedKpa, standing) : byUsCustomary(kpaToPsf(ratedKpa), standing);
  if (solved.kind === 'outside-method') return success(outsideMethodAnswer(solved, SOURCE, input.defaults));
  const answer = answerOf(solved, kpaToPsf(ratedKpa), input.defaults);
  return success({ ...answer, notes: [...answer.notes, note] });
};

function byUsCustomary(ratedPsf: number, standing: StandingConcrete): Solved {
  const limit = riseLimit(ratedPsf, inUsCustomary(standing));
  if (limit.kind === 'limit') return { ...limit, rise: riseInBoth(limit.riseFtPerH) };
  return limit.kind === 'no-rate' ? { ...limit, least: pressureInBoth(limit.leastPsf) } : limit;
}

function bySi(ratedKpa: number, standing: StandingConcrete): Solved {
  const limit = riseLimitSi(ratedKpa, inSi(standing));
  if (limit.kind === 'limit') return { ...limit, rise: riseInBothFromSi(limit.riseMPerH) };
  return limit.kind === 'no-rate' ? { ...limit, least: pressureInBothFromSi(limit.leastKpa) } : limit;
}

/** What to say of a limit at which the pressure is below the rating. */
const ENDS: Readonly<Partial<Record<RiseGoverns, string>>> = {
  'highest-rate': 'Any faster, the standard counts the full liquid head, which is over the rating.',
  'equation-a-range': `Just under ${EQUATION_A_RISE_M_PER_H} m/h: from there on equation B counts, which is over the rating.`,
};

function answerOf(solved: Exclude<Solved, OutsideMethod>, ratedPsf: number, defaults: readonly string[]): CalculatorAnswer {
  const written = { governs: solved.governs, trace: solved.trace, source: SOURCE, defaults, findings: [] };
  switch (solved.kind) {
    case 'limit': {
      const end = ENDS[solved.governs];
      return { ...written, result: { rise: solved.rise }, notes: end === undefined ? [] : [end] };
    }
    case 'any-rate':
      return { ...written, result: { rise: 'any rate' }, notes: ['Not even the full liquid head is over the rating.'] };
    case 'no-rate': {
      const numbers = { pressurePsf: solved.least.us.value, ratedPsf, riseLimit: 'none', riseLimitBy: solved.governs };
      const over = finding('pressure-over-rating', { numbers, source: SOURCE });
      return { ...written, result: { rise: 'no rate', leastPressure: solved.least }, notes: [], findings: [over] };
    }
  }
}
