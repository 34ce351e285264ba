import { CalculatorInput } from './calculator-input.js';
import { FRESH_CONCRETE_FIELDS, readStandingConcrete } from './fresh-concrete-input.js';
import { failure, success } from '../evidence/result.js';
import { finding } from '../evidence/finding.js';
import { kpaToPsf, psfToKpa } from '../quantity/us-customary.js';
import { outsideMethodAnswer } from './outside-method-answer.js';
import { pressureInBoth, riseInBoth, type Calculator, type CalculatorAnswer } from './calculator-answer.js';
import { riseLimit, type RiseLimit } from '../engineering/aci-347-04/rise-limit.js';

const SOURCE = 'aci-347-04 §2.2.2';
const HIGHEST_RATING_PSF = 50_000;

/**
 * Fastest rate of rise of a wall for a form's rated pressure: the form-pressure calculator turned round.
 *
 * Reads `rating` and the fields of the form-pressure calculator but `rise`. Answers `rise`: a rate, or the words `any rate`; where no
 * rate keeps the pressure within the rating, `no rate` and a `pressure-over-rating` finding with the least pressure possible.
 */
export const riseLimitCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['rating', ...FRESH_CONCRETE_FIELDS]);
  const span = { above: 0, to: psfToKpa(HIGHEST_RATING_PSF), says: `more than 0 and at most ${HIGHEST_RATING_PSF} psf` };
  const rating = input.quantity('rating', 'pressure', '750 psf', span);
  const standing = readStandingConcrete(input);
  if (rating === undefined || standing === undefined || input.errors.length > 0) return failure(input.errors);
  const ratedPsf = kpaToPsf(rating);
  const limit = riseLimit(ratedPsf, standing);
  return success(
    limit.kind === 'outside-method'
      ? outsideMethodAnswer(limit, SOURCE, input.defaults)
      : answerOf(limit, ratedPsf, input.defaults),
  );
};

function answerOf(limit: RiseLimit, ratedPsf: number, defaults: readonly string[]): CalculatorAnswer {
  const written = { governs: limit.governs, trace: limit.trace, source: SOURCE, defaults, findings: [] };
  switch (limit.kind) {
    case 'limit': {
      const notes =
        limit.governs === 'highest-rate'
          ? ['Any faster, the standard counts the full liquid head, which is over the rating.']
          : [];
      return { ...written, result: { rise: riseInBoth(limit.riseFtPerH) }, notes };
    }
    case 'any-rate':
      return { ...written, result: { rise: 'any rate' }, notes: ['Not even the full liquid head is over the rating.'] };
    case 'no-rate': {
      const numbers = { pressurePsf: limit.leastPsf, ratedPsf, riseLimit: 'none', riseLimitBy: limit.governs };
      const over = finding('pressure-over-rating', { numbers, source: SOURCE });
      return {
        ...written,
        result: { rise: 'no rate', leastPressure: pressureInBoth(limit.leastPsf) },
        notes: [],
        findings: [over],
      };
    }
  }
}
