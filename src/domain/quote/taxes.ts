import Big from 'big.js';
import { taxOn } from '../quantity/money.js';
import type { ListedTax, PriceList } from './price-list.js';
import type { QuoteLine, QuoteTax, TaxEntry } from './quote.js';

export interface Taxation {
  readonly tax: QuoteTax;
  readonly taxes: readonly TaxEntry[];
}

/**
 * The taxes of a place on the lines: each on the sum of the lines that bear it, rounded once.
 *
 * No rate for a place is no tax, said aloud: the customer may owe it elsewhere. An exempt customer owes none wherever it builds.
 */
export function taxesOn(lines: readonly Pick<QuoteLine, 'kind' | 'amountMinor'>[], list: Pick<PriceList, 'taxes' | 'customers'>, organisation: string, place: string | null): Taxation {
  const certificate = list.customers.get(organisation)?.taxExempt ?? null;
  if (certificate !== null) return { tax: { place, rate: null, reason: 'exempt', certificate }, taxes: [] };
  if (place === null) return { tax: { place, rate: null, reason: 'place-not-stated' }, taxes: [] };
  const listed = list.taxes.get(place);
  if (listed === undefined) return { tax: { place, rate: null, reason: 'place-not-listed' }, taxes: [] };
  const taxes = listed.map((tax) => taxOf(tax, place, lines));
  return { tax: { place, rate: inOne(listed), reason: null }, taxes };
}

function taxOf({ name, rate, freight }: ListedTax, place: string, lines: readonly Pick<QuoteLine, 'kind' | 'amountMinor'>[]): TaxEntry {
  const baseMinor = lines.reduce((sum, { kind, amountMinor }) => (kind === 'freight' && !freight ? sum : sum + amountMinor), 0);
  return { name, place, rate, baseMinor, amountMinor: taxOn(baseMinor, rate) };
}

/** One tax as it is written, several as the sum of their rates. */
const inOne = (taxes: readonly ListedTax[]): string =>
  taxes.length === 1 && taxes[0] ? taxes[0].rate : taxes.reduce((sum, { rate }) => sum.plus(rate), new Big(0)).toFixed();
