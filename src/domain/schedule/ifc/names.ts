import { shownText } from '../../evidence/input-error.js';
import { MAX_MARK } from '../schedule-limits.js';
import type { Entity } from './step-model.js';

/** An element's identifier as it is shown; empty where it has none. */
export const globalIdOf = (entity: Entity): string => shownText(entity.text(0) ?? '').slice(0, MAX_MARK);

/**
 * Marks of elements: the name where no other has it, else the tag, else the GlobalId.
 *
 * @param places attributes in which a mark is looked for, the first choice first
 */
export function marksOf(entities: readonly Entity[], places: readonly number[]): ReadonlyMap<number, string> {
  const marks = new Map<number, string>();
  const taken = new Set<string>();
  const plain = (text: string | null): string =>
    text === null || [...text].length > MAX_MARK || /[\p{Cc}\p{Cs}]/u.test(text) ? '' : text;
  for (const place of [...places, 0]) {
    const count = new Map<string, number>();
    for (const entity of entities) count.set(plain(entity.text(place)), (count.get(plain(entity.text(place))) ?? 0) + 1);
    for (const entity of entities) {
      const text = plain(entity.text(place));
      if (marks.has(entity.id) || text === '' || taken.has(text) || count.get(text) !== 1) continue;
      taken.add(text);
      marks.set(entity.id, text);
    }
  }
  for (const entity of entities) if (!marks.has(entity.id)) marks.set(entity.id, `#${entity.id}`);
  return marks;
}
