import type { Currency } from '../quantity/money.js';
import type { PlainDate } from './plain-date.js';

/** A supplier's prices from a day on; immutable once used. Prices are decimal text in major units, kept as written. */
export interface PriceList {
  readonly code: string;
  readonly currency: Currency;
  readonly inForceFrom: PlainDate;
  /** A quote of day d holds to the end of day d + validDays. */
  readonly validDays: number;
  readonly items: ReadonlyMap<string, PriceItem>;
  /** Tax rates by place, decimal text. */
  readonly taxes: ReadonlyMap<string, string>;
}

export type SellingUnit = 'each' | 'ft' | 'pack';

export interface PriceItem {
  readonly sku: string;
  readonly unit: SellingUnit;
  readonly price: string;
  /** What the supplier pays; never shown to a contractor. */
  readonly cost: string | null;
  /** Sold only in whole bundles of so many selling units. */
  readonly bundle: number | null;
}

/**
 * The list in force on a day: of those that have begun, the one that began last; of two of one day, the later in the order given.
 *
 * @returns null where none has begun
 */
export function priceListInForce<T extends { readonly inForceFrom: PlainDate }>(lists: readonly T[], date: PlainDate): T | null {
  return lists.reduce<T | null>((best, list) => {
    if (list.inForceFrom > date) return best;
    return best === null || list.inForceFrom >= best.inForceFrom ? list : best;
  }, null);
}
