import { amountOf } from '../quantity/money.js';
import type { PriceList } from './price-list.js';
import type { Quote, QuoteLine } from './quote.js';

/** What a quote costs the supplier: for sales and admin alone, never part of a quote. */
export interface InternalFigures {
  readonly lines: readonly InternalLine[];
  /** Sums over the lines whose cost is known. */
  readonly costMinor: number;
  readonly marginMinor: number;
  /** Numbers of the lines whose cost the list does not state (goods without a cost, freight): they are in neither sum. */
  readonly withoutCost: readonly number[];
}

/** Both null where the list states no cost. The margin is before tax. */
export interface InternalLine {
  readonly n: number;
  readonly costMinor: number | null;
  readonly marginMinor: number | null;
}

/**
 * Cost and margin of a quote, line by line.
 *
 * @equation cost = quantity · cost of a selling unit, rounded once; margin = amount - cost
 * @param quote priced from `list`
 * @param list  the price list that the quote was priced from
 */
export function internalFigures(quote: Pick<Quote, 'lines'>, list: Pick<PriceList, 'items' | 'currency'>): InternalFigures {
  const lines = quote.lines.map((line) => internalLine(line, list));
  return {
    lines,
    costMinor: lines.reduce((sum, { costMinor }) => sum + (costMinor ?? 0), 0),
    marginMinor: lines.reduce((sum, { marginMinor }) => sum + (marginMinor ?? 0), 0),
    withoutCost: lines.filter(({ costMinor }) => costMinor === null).map(({ n }) => n),
  };
}

function internalLine({ n, kind, sku, quantity, amountMinor }: QuoteLine, { items, currency }: Pick<PriceList, 'items' | 'currency'>): InternalLine {
  if (kind === 'minimum') return { n, costMinor: 0, marginMinor: amountMinor };
  const cost = kind === 'freight' ? null : (items.get(sku)?.cost ?? null);
  if (cost === null) return { n, costMinor: null, marginMinor: null };
  const costMinor = amountOf(quantity, cost, currency);
  return { n, costMinor, marginMinor: amountMinor - costMinor };
}
