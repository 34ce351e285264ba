import { meant } from '../quantity/rounding.js';
import { finding } from '../evidence/finding.js';
import { inSi } from '../quantity/quantity.js';
import { kpaToPsf } from '../quantity/us-customary.js';
import { pressureInBothFromSi, riseInBothFromSi, type CalculatorAnswer } from './calculator-answer.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { workedStep } from './worked-step.js';
import type { CalculatorInput } from './calculator-input.js';
import type { TraceStep } from '../evidence/trace.js';

const HIGHEST_RATING_PSF = 50_000;

/** A form's rated pressure [kPa]. */
export function readRating(input: CalculatorInput): number | undefined {
  const to = inSi('pressure', 'psf', HIGHEST_RATING_PSF);
  const read = input.quantity('rating', 'pressure', '36 kPa', { above: 0, to, says: `more than 0 and at most ${HIGHEST_RATING_PSF} psf` });
  return read === undefined ? undefined : meant(read);
}

/** A pressure equation of a metric method turned round. */
export interface TurnedRound {
  readonly source: string;
  readonly rated: number;
  /** Liquid head of what is poured [kPa]: where the form carries it, any rate will do. */
  readonly head: number;
  /** Null where no rate is slow enough [m/h]. */
  readonly rate: TraceStep | null;
  /** Pressure of the slowest filling [kPa]. */
  readonly least: number;
  /** Where the method ends [m/h]; null where it does not. */
  readonly fastest: number | null;
  readonly steps: readonly TraceStep[];
  readonly notes: readonly string[];
}

/** Fastest rate of rise as the rise-limit calculator answers it: a rate, `any rate`, or `no rate` with the finding. */
export function turnedRoundAnswer(turned: TurnedRound, defaults: readonly string[]): CalculatorAnswer {
  const { source, rated, head, rate, fastest } = turned;
  const headStep = workedStep('liquid head', 'D · h', n(head), head, 'kPa', source);
  const written = { source, defaults, notes: turned.notes, findings: [] };
  if (rated >= head * (1 - 1e-12)) {
    const notes = ['Not even the full liquid head is over the rating.', ...turned.notes];
    return { ...written, notes, result: { rise: 'any rate' }, governs: 'liquid-head', trace: [headStep] };
  }
  const trace = [headStep, ...turned.steps];
  if (rate === null) {
    const least = Math.min(turned.least, head);
    const numbers = { pressurePsf: kpaToPsf(least), ratedPsf: kpaToPsf(rated), riseLimit: 'none', riseLimitBy: 'minimum' };
    const over = finding('pressure-over-rating', { numbers, source });
    return { ...written, result: { rise: 'no rate', leastPressure: pressureInBothFromSi(least) }, governs: 'minimum', trace, findings: [over] };
  }
  if (fastest !== null && rate.value > fastest) {
    const notes = [`The equations end at ${n(fastest)} m/h; of any faster rate the method says nothing.`, ...turned.notes];
    return { ...written, notes, result: { rise: riseInBothFromSi(fastest) }, governs: 'highest-rate', trace: [...trace, rate] };
  }
  return { ...written, result: { rise: riseInBothFromSi(rate.value) }, governs: 'equation', trace: [...trace, rate] };
}
