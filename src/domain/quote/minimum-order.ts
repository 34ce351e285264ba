import { exactMinor, isCountable, majorText, moneyText, roundMinor, type Currency, type Minor } from '../quantity/money.js';
import type { DraftLine } from './goods-lines.js';
import type { MinimumOrder } from './price-list.js';
import { ownLine } from './own-line.js';

/** The sku of the line that makes goods up to the minimum. */
export const MINIMUM_SKU = 'MINIMUM';

/**
 * What goods below the minimum order are charged beside: the stated charge, or what they lack of it.
 *
 * @param goods sum of the lines of goods
 * @returns     null where the goods reach the minimum; `tooLarge` where the amount cannot be counted exactly
 */
export function minimumLine(goods: Minor, minimum: MinimumOrder | null, currency: Currency): DraftLine | 'tooLarge' | null {
  if (minimum === null) return null;
  const least = exactMinor(minimum.amount, currency);
  if (least.lte(goods)) return null;
  const exact = minimum.charge === null ? least.minus(goods) : exactMinor(minimum.charge, currency);
  if (!isCountable(exact) || !isCountable(least)) return 'tooLarge';
  const price = minimum.charge ?? majorText(exact, currency);
  const amount = moneyText(roundMinor(least), currency);
  const text = minimum.charge === null ? `Made up to the minimum order of ${amount}` : `Charge on an order below ${amount}`;
  return ownLine({ kind: 'minimum', sku: MINIMUM_SKU, storey: null, text, price, amountMinor: roundMinor(exact), rule: 'minimum-order' });
}
