import { meant } from '../quantity/rounding.js';
import { dischargeLimit } from '../engineering/astm-c94/discharge-limit.js';
import { finding, type Finding } from '../evidence/finding.js';
import type { Pour } from '../schedule/schedule.js';
import type { PourPace } from './pour-pace.js';

const SOURCE = 'astm-c94-before-2021 §10.7';
/** A time this close to the limit is the limit: what is left of a conversion. */
const SAME = 1 + 1e-9;

const NOTES = [
  'ASTM C94 before 2021: discharged within 1.5 h of batching or 300 turns of the drum, whichever comes first, unless the purchaser waives it; shorter in hot weather.',
  'ASTM C94-21 sets no time by itself: the purchaser states one, or the producer prints one on the ticket, and that one holds.',
] as const;

/** The time limit of a truck and what the slower pace leaves of it. */
export interface DischargeAnswer {
  readonly results: Readonly<Record<string, number | string>>;
  readonly defaults: readonly string[];
  readonly notes: readonly string[];
  readonly findings: readonly Finding[];
}

/**
 * Time to empty a truck against the time for its discharge: the pour's own, else the hour and a half of the older edition, as a default.
 *
 * Later than it at the pace of the pour: `discharge-late`, a note.
 *
 * @param pace the slower of the paces that are stated; null where none is
 */
export function dischargeOf(storey: string, pour: Pour | null, pace: PourPace | null): DischargeAnswer {
  const byEdition = dischargeLimit('astm-c94-before-2021') as number;
  const limitH = pour?.dischargeH ?? byEdition;
  const limit = { dischargeLimitH: limitH, dischargeLimitBy: pour?.dischargeH === undefined ? 'ASTM C94 before 2021' : 'purchaser' };
  const defaults = pour?.dischargeH === undefined ? [`discharge: ${byEdition} h of ASTM C94 before 2021`] : [];
  const truckTimeH = pace?.truckTimeH ?? null;
  if (pace === null || truckTimeH === null) return { results: limit, defaults, notes: NOTES, findings: [] };
  if (truckTimeH <= limitH * SAME) {
    const leftForHaulMin = meant(Math.max(0, limitH - truckTimeH) * 60);
    return { results: { ...limit, leftForHaulMin }, defaults, notes: NOTES, findings: [] };
  }
  const late = finding('discharge-late', { storey, numbers: { truckTimeH, limitH, pace: pace.by }, source: SOURCE });
  return { results: limit, defaults, notes: [...NOTES, 'Smaller loads, or a faster pace that the forms allow, bring a truck within its time.'], findings: [late] };
}
