import { addDays, type PlainDate } from './plain-date.js';
import type { ListPeriod } from './price-list.js';

/** Days on which two lists of different codes would both hold. */
export interface PeriodOverlap<T> {
  readonly list: T;
  readonly other: T;
  readonly from: PlainDate;
  /** Null: without an end. */
  readonly to: PlainDate | null;
  /** What would do. */
  readonly fix: string;
}

interface Held<T> {
  readonly list: T;
  readonly from: PlainDate;
  readonly to: PlainDate | null;
}

/**
 * Lists whose periods overlap, so that nobody could say which of the two holds.
 *
 * Two lists without an end never do: the one that begins later takes over. A list with an end overlaps every list of another code that
 * holds on one of its days. Versions of one code never do either: a later version takes over on the day it begins.
 *
 * @param lists in any order of codes; versions of one code from the first to the last
 * @returns     every pair once, by the day on which the overlap begins
 */
export function overlapping<T extends ListPeriod & { readonly code: string }>(lists: readonly T[]): readonly PeriodOverlap<T>[] {
  const held = lists.map((list, index) => heldBy(list, lists.slice(index + 1))).filter((each): each is Held<T> => each !== null);
  const pairs = held.flatMap((first, index) => held.slice(index + 1).flatMap((second) => pairOf(first, second)));
  return pairs.sort((a, b) => byText(a.from, b.from) || byText(a.list.code, b.list.code) || byText(a.other.code, b.other.code));
}

/** The days of a list that no later version of it takes over. */
function heldBy<T extends ListPeriod & { readonly code: string }>(list: T, later: readonly T[]): Held<T> | null {
  const ends = later.filter(({ code }) => code === list.code).map(({ inForceFrom }) => addDays(inForceFrom, -1));
  const to = [...ends, ...(list.inForceTo ? [list.inForceTo] : [])].sort(byText)[0] ?? null;
  return to !== null && to < list.inForceFrom ? null : { list, from: list.inForceFrom, to };
}

function pairOf<T extends ListPeriod & { readonly code: string }>(first: Held<T>, second: Held<T>): readonly PeriodOverlap<T>[] {
  const [a, b] = first.list.code <= second.list.code ? [first, second] : [second, first];
  if (a.list.code === b.list.code || !(a.list.inForceTo || b.list.inForceTo)) return [];
  const from = a.from > b.from ? a.from : b.from;
  const to = [a.to, b.to].filter((day): day is PlainDate => day !== null).sort(byText)[0] ?? null;
  if (to !== null && to < from) return [];
  return [{ list: a.list, other: b.list, from, to, fix: fixOf(a, b) }];
}

function fixOf<T extends ListPeriod & { readonly code: string }>(a: Held<T>, b: Held<T>): string {
  const [first, second] = a.from <= b.from ? [a, b] : [b, a];
  const after = first.list.inForceTo ? `, or begin ${second.list.code} on ${addDays(first.list.inForceTo, 1)} or later` : '';
  const before = first.from < second.from ? `end ${first.list.code} with inForceTo ${addDays(second.from, -1)} or earlier` : `let one of ${first.list.code} and ${second.list.code} begin after the other has ended`;
  return `${before}${first.from < second.from ? after : ''}`;
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
