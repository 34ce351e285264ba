import type { Currency } from '../quantity/money.js';
import type { PlainDate } from './plain-date.js';

/** A supplier's prices from a day on; immutable once used. Prices and rates are decimal text (money in major units), kept as written. */
export interface PriceList {
  readonly code: string;
  readonly currency: Currency;
  readonly inForceFrom: PlainDate;
  /** The last day in force; null where the list holds until another begins. */
  readonly inForceTo: PlainDate | null;
  /** A quote of day d holds to the end of day d + validDays. */
  readonly validDays: number;
  readonly items: ReadonlyMap<string, PriceItem>;
  /** By the organisation's name. */
  readonly customers: ReadonlyMap<string, ListedCustomer>;
  readonly discounts: readonly Discount[];
  readonly minimumOrder: MinimumOrder | null;
  /** By place, in the order of the list. */
  readonly taxes: ReadonlyMap<string, readonly ListedTax[]>;
  readonly freight: FreightTerms | null;
}

export type SellingUnit = 'each' | 'ft' | 'pack';

/** A price, and lower or higher ones from some quantity on. */
export interface QuantityPrice {
  readonly price: string;
  /** Ascending. */
  readonly breaks: readonly PriceBreak[];
}

export interface PriceBreak {
  /** In selling units, 2 or more. */
  readonly from: number;
  readonly price: string;
}

export interface PriceItem extends QuantityPrice {
  readonly sku: string;
  readonly unit: SellingUnit;
  /** What the supplier pays; never shown to a contractor. */
  readonly cost: string | null;
  /** Sold in bundles of so many selling units. */
  readonly bundle: number | null;
  /** A bundle may be broken: rate by which loose selling units cost more. Null: whole bundles only. */
  readonly breakBundle: string | null;
  /** Group of lines for discounts; null: the group of its kind. */
  readonly group: string | null;
  readonly tiers: ReadonlyMap<string, QuantityPrice>;
  /** By the organisation's name. */
  readonly customers: ReadonlyMap<string, QuantityPrice>;
  /** Of one selling unit, for trucks; null where nobody stated it. */
  readonly volumeM3: string | null;
  readonly weightKg: string | null;
}

export interface ListedCustomer {
  readonly organisation: string;
  readonly tier: string | null;
  /** Number of the certificate that frees the customer from tax. */
  readonly taxExempt: string | null;
}

/** For one group of lines; for everybody where neither a tier nor an organisation is named. At most one of the two is. */
export interface Discount {
  readonly group: string;
  readonly tier: string | null;
  readonly organisation: string | null;
  /** From 0 to below 1. */
  readonly rate: string;
}

/** Goods below `amount` are made up to it, or bear `charge` where one is stated. */
export interface MinimumOrder {
  readonly amount: string;
  readonly charge: string | null;
}

export interface ListedTax {
  readonly name: string;
  readonly rate: string;
  /** Whether freight is taxed. */
  readonly freight: boolean;
}

export interface FreightTerms {
  readonly truck: TruckSize;
  readonly split: FreightSplit;
  readonly zones: readonly FreightZone[];
}

/** One delivery for the job, or one for each storey. */
export type FreightSplit = 'job' | 'storey';

/** What one truck takes; at least one of the three is stated. */
export interface TruckSize {
  readonly volumeM3: string | null;
  /** Selling units. */
  readonly pieces: number | null;
  readonly weightKg: string | null;
}

export interface FreightZone {
  readonly zone: string;
  readonly places: readonly string[];
  readonly perTruck: string;
  readonly perDelivery: string | null;
}

/** What decides on which days a list holds. */
export interface ListPeriod {
  readonly inForceFrom: PlainDate;
  readonly inForceTo?: PlainDate | null;
}

/**
 * The list in force on a day: of those that have begun and not ended, the one that began last; of two of one day, the later in the order given.
 *
 * @returns null where none is in force
 */
export function priceListInForce<T extends ListPeriod>(lists: readonly T[], date: PlainDate): T | null {
  return lists.reduce<T | null>((best, list) => {
    if (list.inForceFrom > date || (list.inForceTo && list.inForceTo < date)) return best;
    return best === null || list.inForceFrom >= best.inForceFrom ? list : best;
  }, null);
}
