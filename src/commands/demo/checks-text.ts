import type { ChecklistAnswer } from '../../modules/checklists/checklists.schemas.js';
import type { CheckAnswer } from '../../modules/takeoffs/takeoffs.schemas.js';
import { table } from './tables.js';

/** What a reader looks for first in each check's answer, by the names of its results. */
const FIRST = ['pressurePsf', 'ratedPsf', 'cell', 'bars', 'forceLb', 'riseFtPerH', 'lifts', 'trucks', 'slumpMm', 'stoneLimitMm', 'rateLbPerFt2H', 'concreteF', 'openings', 'places'] as const;
const MOST = 3;

const shown = (value: number | string): string => (typeof value === 'number' ? String(Number(value.toFixed(1))) : value);

/** One line a report: the check, where, and what it comes to. */
export function checksText(checks: readonly CheckAnswer[]): string {
  if (checks.length === 0) return '  none';
  return table(
    ['check', 'storey', 'core', 'answer', 'finds'],
    checks.map(({ check, storey, core, results, findings }) => [check, storey, core ?? '-', answer(results), findings.map(({ code }) => code).join(', ') || '-']),
  );
}

function answer(results: CheckAnswer['results']): string {
  const named = FIRST.filter((name) => results[name] !== undefined).slice(0, MOST);
  const names = named.length > 0 ? named : Object.keys(results).slice(0, MOST);
  return names.map((name) => `${name} ${shown(results[name] as number | string)}`).join(', ');
}

export function checklistText({ total, ticked, readyToPour }: ChecklistAnswer): string {
  return `  ${total} items, ${ticked} ticked; ${readyToPour ? 'ready to pour' : 'not ready to pour until all are ticked and nothing holds the job'}`;
}
