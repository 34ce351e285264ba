import type { ChecklistAnswer } from '../../modules/checklists/checklists.schemas.js';
import type { BracingAnswer } from '../../modules/takeoffs/bracing.schemas.js';
import type { CheckAnswer } from '../../modules/takeoffs/takeoffs.schemas.js';
import { table } from './tables.js';

/** What a reader looks for first in each check's answer, by the names of its results. */
const FIRST = ['pressurePsf', 'ratedPsf', 'cell', 'bars', 'forceLb', 'riseFtPerH', 'lifts', 'trucks', 'slumpIn', 'limitIn', 'rateLbPerFt2H', 'concreteF', 'openings', 'places'] as const;
const MOST = 3;
const MM_PER_FT = 304.8;

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

/** The braces of each storey, and on one line the wall that has most. */
export function bracingText(storeys: readonly BracingAnswer[]): string {
  return table(
    ['storey', 'braces', 'spacing ft', 'most on', 'at ft along its axis', 'axial lb'],
    storeys.map(({ storey, count, spacingMm, walls }) => {
      const most = [...walls].sort((a, b) => b.braces.length - a.braces.length)[0];
      const axial = Math.max(0, ...walls.flatMap(({ braces }) => braces.flatMap(({ axialLb }) => axialLb ?? [])));
      const stations = most?.braces.map(({ atMm }) => (atMm / MM_PER_FT).toFixed(1)).join(' ') ?? '';
      return [storey, count, (spacingMm / MM_PER_FT).toFixed(1), most?.mark ?? '-', stations, axial.toFixed(0)];
    }),
  );
}
