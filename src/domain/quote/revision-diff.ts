import { failure, success, type Result } from '../evidence/result.js';
import type { LineKind, Quote } from './quote.js';

/** What changed between two quotes, in the order in which the inputs are replaced. */
export type DiffCause = 'rule' | 'schedule' | 'range' | 'price' | 'advice';

/** A quote with one more input replaced by the new one; of the first, which is the old quote, the cause is not read. */
export interface DiffStep {
  readonly cause: DiffCause | null;
  readonly quote: DiffedQuote;
}

export type DiffedQuote = Pick<Quote, 'lines' | 'taxes' | 'currency' | 'totalMinor'>;

export interface QuoteDiff {
  /** One entry for each line and cause that changed it, in the order of the steps. */
  readonly changes: readonly LineChange[];
  /** One entry for each step; they sum to `deltaMinor`. */
  readonly causes: readonly { readonly cause: DiffCause; readonly deltaMinor: number }[];
  /** New total less the old one, tax included. */
  readonly deltaMinor: number;
}

export interface LineChange {
  readonly cause: DiffCause;
  /** Of lines their own kind; a tax is an entry like a line, its sku the name of the tax. */
  readonly kind: LineKind | 'tax';
  readonly sku: string;
  readonly storey: string | null;
  readonly text: string;
  /** Null where the line is new. */
  readonly before: ChangedLine | null;
  /** Null where the line is gone. */
  readonly after: ChangedLine | null;
  readonly deltaMinor: number;
}

/** Of a tax the rate stands for the unit price, and the quantity is 1. */
export interface ChangedLine {
  readonly quantity: number;
  readonly unitPrice: string;
  readonly amountMinor: number;
}

/** Amounts in two currencies have no difference. */
export interface DiffRefusal {
  readonly code: 'currency-changed';
  readonly before: string;
  readonly after: string;
}

/**
 * What changed from a quote to its revision, and why: the inputs are replaced one at a time, and what changes with one is its doing.
 *
 * Lines are matched by kind, sku and storey; a changed line is told once for each cause that changed its quantity, price or amount.
 *
 * @param steps the old quote, then the quote after each replacement, the last one the new quote; never empty
 * @returns     the diff, whose causes sum to the change of the total to the minor unit
 */
export function revisionDiff(steps: readonly DiffStep[]): Result<QuoteDiff, DiffRefusal> {
  const [first, last] = [steps[0], steps.at(-1)];
  if (!first || !last) throw new RangeError('a diff needs the old quote');
  const other = steps.find(({ quote }) => quote.currency !== first.quote.currency);
  if (other) return failure({ code: 'currency-changed', before: first.quote.currency, after: other.quote.currency });
  const pairs = steps.slice(1).map((step, index) => ({ cause: causeOf(step), before: steps[index]!.quote, after: step.quote }));
  return success({
    changes: pairs.flatMap(({ cause, before, after }) => diffQuotes(before, after, cause)),
    causes: pairs.map(({ cause, before, after }) => ({ cause, deltaMinor: after.totalMinor - before.totalMinor })),
    deltaMinor: last.quote.totalMinor - first.quote.totalMinor,
  });
}

function causeOf({ cause }: DiffStep): DiffCause {
  if (cause === null) throw new RangeError('a step after the first has a cause');
  return cause;
}

interface Entry extends ChangedLine {
  readonly key: string;
  readonly kind: LineChange['kind'];
  readonly sku: string;
  readonly storey: string | null;
  readonly text: string;
}

/** The lines and taxes that differ between two quotes of one currency: those of the new quote in its order, then those that are gone. */
export function diffQuotes(before: DiffedQuote, after: DiffedQuote, cause: DiffCause): readonly LineChange[] {
  const [old, now] = [entriesOf(before), entriesOf(after)];
  const kept = [...now.values()].map((entry) => changeOf(old.get(entry.key) ?? null, entry, cause));
  const gone = [...old.values()].filter(({ key }) => !now.has(key)).map((entry) => changeOf(entry, null, cause));
  return [...kept, ...gone].filter((change): change is LineChange => change !== null);
}

function changeOf(before: Entry | null, after: Entry | null, cause: DiffCause): LineChange | null {
  const told = after ?? before;
  if (!told || (before && after && same(before, after))) return null;
  const { kind, sku, storey, text } = told;
  const deltaMinor = (after?.amountMinor ?? 0) - (before?.amountMinor ?? 0);
  return { cause, kind, sku, storey, text, before: before && changedLine(before), after: after && changedLine(after), deltaMinor };
}

const same = (a: Entry, b: Entry): boolean => a.quantity === b.quantity && a.unitPrice === b.unitPrice && a.amountMinor === b.amountMinor;

const changedLine = ({ quantity, unitPrice, amountMinor }: Entry): ChangedLine => ({ quantity, unitPrice, amountMinor });

/** Lines, then taxes; lines alike are told apart by their order. */
function entriesOf({ lines, taxes }: DiffedQuote): ReadonlyMap<string, Entry> {
  const entries = new Map<string, Entry>();
  const add = (entry: Omit<Entry, 'key'>): void => {
    for (let n = 0; ; n++) {
      const key = JSON.stringify([entry.kind, entry.sku, entry.storey, n]);
      if (!entries.has(key)) return void entries.set(key, { ...entry, key });
    }
  };
  for (const { kind, sku, storey, text, quantity, unitPrice, amountMinor } of lines) add({ kind, sku, storey, text, quantity, unitPrice, amountMinor });
  for (const { name, place, rate, amountMinor } of taxes) add({ kind: 'tax', sku: name, storey: null, text: `${name}, ${place}`, quantity: 1, unitPrice: rate, amountMinor });
  return entries;
}
