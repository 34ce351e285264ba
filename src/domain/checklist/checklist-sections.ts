import type { ChecklistCount, ChecklistItem, ChecklistPhase } from './checklist-item.js';
import { grouped } from './grouped.js';

/** What a printed checklist shows of an item. */
export type ListedItem = Pick<ChecklistItem, 'phase' | 'rule' | 'storey' | 'wall' | 'course' | 'text' | 'counts'>;

/** What the crew sees to in one go: a wall, or what concerns the storey before, while or after its walls are laid. */
export interface ChecklistSection<T extends ListedItem> {
  readonly storey: string;
  readonly phase: ChecklistPhase;
  readonly wall: string | null;
  readonly blocks: readonly ChecklistBlock<T>[];
}

/** Items of one rule that say the same, each of another course: the text is said once. */
export interface ChecklistBlock<T extends ListedItem> {
  readonly text: string;
  readonly items: readonly T[];
}

/** The items in sections as they are walked; blocks of a section in the order in which their first items come. No item is lost. */
export function checklistSections<T extends ListedItem>(items: readonly T[]): readonly ChecklistSection<T>[] {
  const byPlace = grouped(items, ({ storey, phase, wall }) => JSON.stringify([storey, phase, wall]));
  return [...byPlace.values()].flatMap((inPlace) =>
    inPlace.slice(0, 1).map(({ storey, phase, wall }) => ({
      storey,
      phase,
      wall,
      blocks: [...grouped(inPlace, ({ rule, text }) => JSON.stringify([rule, text])).values()].map((alike) => ({ text: alike[0]!.text, items: alike })),
    })),
  );
}

const METRES_PER_FOOT = 0.3048;

const MM_PER_INCH = 25.4;
/** More stations than these are not told one by one: the text says what they follow. */
const MOST_STATIONS = 6;

/**
 * `2 × WIRE-16, 15.03 ft FOAM-24, at 32 in`: what an item takes and where along the wall, from its beginning.
 *
 * Feet to two places, metres beside them where the job is drawn in metres; stations to a tenth of an inch or to the millimetre.
 */
export function countsText(counts: readonly ChecklistCount[], metric: boolean): string {
  const taken = counts.map(({ sku, quantity, unit }) => (unit === 'each' ? `${quantity} × ${sku}` : `${lengthOf(quantity, metric)} ${sku}`));
  return [...taken, ...stationsOf(counts, metric)].join(', ');
}

function stationsOf(counts: readonly ChecklistCount[], metric: boolean): readonly string[] {
  const stations = [...new Set(counts.flatMap(({ atMm = [] }) => atMm))].sort((a, b) => a - b);
  if (stations.length === 0 || stations.length > MOST_STATIONS) return [];
  return [`at ${stations.map((mm) => (metric ? Math.round(mm) : Number((mm / MM_PER_INCH).toFixed(1)))).join(', ')} ${metric ? 'mm' : 'in'}`];
}

const lengthOf = (feet: number, metric: boolean): string => `${rounded(feet)} ft${metric ? ` (${rounded(feet * METRES_PER_FOOT)} m)` : ''}`;
const rounded = (value: number): string => String(Number(value.toFixed(2)));
