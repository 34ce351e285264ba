import { listed } from './read-storeys.js';

/** Marks by what is left of them when one character is dropped, made once for a set of marks: many errors may ask. */
const INDEXES = new WeakMap<object, ReadonlyMap<string, readonly string[]>>();

/**
 * The marks of a schedule for an error about one that is none of them: those that differ by case, punctuation or one character first
 * (`a1` and `A-1` for `A1`), then the others in their order, the first twelve and how many more.
 */
export function listedNear(marks: ReadonlyMap<string, unknown>, wanted: string): string {
  let index = INDEXES.get(marks);
  if (!index) INDEXES.set(marks, (index = indexOf(marks.keys())));
  const near = new Set(shortened(wanted).flatMap((form) => index.get(form) ?? []));
  if (near.size === 0) return listed(marks.keys());
  return listed(new Set([...near, ...marks.keys()]));
}

function indexOf(marks: Iterable<string>): ReadonlyMap<string, readonly string[]> {
  const index = new Map<string, string[]>();
  for (const mark of marks) {
    for (const form of new Set(shortened(mark))) {
      const known = index.get(form);
      if (known) known.push(mark);
      else index.set(form, [mark]);
    }
  }
  return index;
}

/** A mark in plain letters and digits, and the same without any one of them. Two marks one change apart share a form. */
function shortened(mark: string): string[] {
  const plain = [...mark.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')];
  return [plain.join(''), ...plain.map((_, at) => plain.filter((_each, index) => index !== at).join(''))];
}
