import type { Finding, Severity } from '../evidence/finding.js';
import type { LengthUnit } from '../quantity/length-unit.js';
import type { MaterialLine } from '../reinforcement/material-line.js';
import type { Takeoff } from '../takeoff/takeoff.js';
import type { PlainDate } from './plain-date.js';
import type { FreightSplit, SellingUnit, TruckSize } from './price-list.js';
import type { Audience } from './unit-price.js';

/** Who is quoted; the organisation decides whose prices hold, `place` the tax and the freight. */
export interface Customer {
  readonly organisation: string;
  readonly place?: string | null;
}

/** What pricing reads of a measurement: the pipeline's `Measurement` fits. */
export interface MeasuredJob {
  readonly engine: string;
  readonly range: { readonly code: string; readonly version: number };
  readonly takeoff: Pick<Takeoff, 'units' | 'concrete'>;
  readonly materials: readonly MaterialLine[];
  readonly findings: readonly Finding[];
  /** Of the schedule: the conditions are worded in it; inches where none is given. */
  readonly lengthUnit?: LengthUnit;
}

/** A priced job: plain data, frozen once issued. Money in integer minor units, unit prices as written in the price list. */
export interface Quote {
  readonly engine: string;
  readonly range: { readonly code: string; readonly version: number };
  readonly priceList: { readonly code: string; readonly inForceFrom: PlainDate };
  readonly customer: { readonly organisation: string; readonly place: string | null };
  readonly date: PlainDate;
  /** Last day on which the quote holds. */
  readonly validUntil: PlainDate;
  /** ISO 4217. */
  readonly currency: string;
  readonly lines: readonly QuoteLine[];
  /** Sum of the lines: goods, what makes them up to the minimum, freight. */
  readonly subtotalMinor: number;
  /** What is charged at the place, in one: of several taxes the sum of their rates. */
  readonly tax: QuoteTax;
  /** Each tax of the place by itself, rounded by itself; none where none is charged. */
  readonly taxes: readonly TaxEntry[];
  /** Sum of `taxes`. */
  readonly taxMinor: number;
  /** `subtotalMinor` + `taxMinor`. */
  readonly totalMinor: number;
  /** Null: freight is by others; the scope says why. */
  readonly freight: QuoteFreight | null;
  readonly scope: readonly ScopeItem[];
  readonly conditions: readonly QuoteCondition[];
  readonly cautions: readonly string[];
}

export type LineKind = 'unit' | 'spare' | 'material' | 'minimum' | 'freight';

/** `amountMinor` is (quantity + surcharge rate · loose units) · unit price · (1 - discount rate), rounded once. */
export interface QuoteLine {
  readonly n: number;
  readonly kind: LineKind;
  /** Of a delivery; null where the line belongs to the whole job. */
  readonly storey: string | null;
  /** Group of goods for discounts; `minimum` and `freight` for lines that are none. */
  readonly group: string;
  readonly sku: string;
  readonly text: string;
  /** What is sold, after packs and bundles. */
  readonly quantity: number;
  readonly unit: SellingUnit;
  readonly unitPrice: string;
  /** What everybody pays for one unit, below every break. */
  readonly listPrice: string;
  /** The break that gave the unit price; null below the first. */
  readonly break: { readonly from: number } | null;
  readonly audience: Audience;
  readonly discountRate: string | null;
  /** Of the quantity, those beyond whole bundles. */
  readonly looseQuantity: number;
  /** By which loose units cost more; null where there are none. */
  readonly surchargeRate: string | null;
  readonly amountMinor: number;
  readonly because: readonly QuoteBecause[];
  /** From what the job needs to what is sold. */
  readonly selling: Selling;
}

/** As the take-off's and the rules' `Because`; `storey` is null for what belongs to the whole job (spares). */
export interface QuoteBecause {
  readonly rule: string;
  readonly storey: string | null;
  readonly wall: string | null;
  readonly course: number | null;
  readonly quantity: number;
  /** Axis stations [mm]; absent for units, for spares and in quotes made before stations were kept. */
  readonly atMm?: readonly number[];
}

/** The trace of a line's quantity. */
export interface Selling {
  /** What the job needs, in the job's unit (feet, pieces, forms). */
  readonly needed: number;
  readonly neededUnit: 'each' | 'ft';
  /** Contents of one pack where the line is sold by the pack. */
  readonly pack: number | null;
  /** Already covered by the rest of the last bundle of the line above (spares only). */
  readonly covered: number;
  /** Bars: what is cut from each stock bar's length, why more is sold than the total length would ask for. */
  readonly cutting?: BarCutting;
  /** In selling units before bundling. */
  readonly beforeBundling: number;
  readonly bundle: number | null;
  /** In selling units after bundling; the line's quantity. */
  readonly afterBundling: number;
  /** Where a bundle may be broken and the sku ends within one: what was weighed, for all lines of the sku together. */
  readonly broken?: BrokenBundle;
}

/** A whole bundle more, or loose units at their surcharge: whichever costs the customer less, the whole bundle at equal cost. */
export interface BrokenBundle {
  readonly surchargeRate: string;
  /** Selling units of the sku before bundling, and those of them beyond whole bundles. */
  readonly needed: number;
  readonly loose: number;
  /** In major units, exact, at the break that `needed` reaches, before discount. */
  readonly looseCost: string;
  /** Selling units in whole bundles, and what they cost at the break they reach, before discount. */
  readonly whole: number;
  readonly wholeCost: string;
  readonly sold: 'whole' | 'loose';
}

/** Pieces that each have to be in one length, cut from stock bars of one length; no cutting takes fewer bars than `lowerBound`. */
export interface BarCutting {
  readonly stockMm: number;
  readonly pieces: readonly { readonly lengthMm: number; readonly count: number }[];
  readonly lowerBound: number;
}

/** Why a job cannot be priced from a list: everything that is missing at once, never a price of nought. */
export type PriceRefusal =
  | { readonly code: 'list-not-in-force'; readonly priceList: string; readonly inForceFrom: PlainDate; readonly date: PlainDate }
  | { readonly code: 'list-ended'; readonly priceList: string; readonly inForceTo: PlainDate; readonly date: PlainDate }
  | { readonly code: 'amount-too-large'; readonly priceList: string; readonly sku: string | null }
  | { readonly code: 'too-many-trucks'; readonly priceList: string; readonly storey: string | null; readonly most: number }
  | { readonly code: 'not-priced'; readonly priceList: string; readonly items: readonly UnpricedItem[] };

export interface UnpricedItem {
  readonly sku: string;
  /** `not-listed`: the list has no such sku. `sold-otherwise`: it sells it in a unit that the job's quantity cannot be counted in. */
  readonly reason: 'not-listed' | 'sold-otherwise';
  readonly listedUnit: SellingUnit | null;
  /** The job's lines that need it. */
  readonly needed: number;
  readonly neededUnit: 'each' | 'ft';
  readonly because: readonly QuoteBecause[];
}

/** `rate` null: no tax is charged, and `reason` says why. */
export type QuoteTax =
  | { readonly place: string; readonly rate: string; readonly reason: null }
  | { readonly place: string | null; readonly rate: null; readonly reason: 'place-not-stated' | 'place-not-listed' }
  | { readonly place: string | null; readonly rate: null; readonly reason: 'exempt'; readonly certificate: string };

/** One tax: the rate on the sum of the lines that bear it, rounded once. */
export interface TaxEntry {
  readonly name: string;
  readonly place: string;
  readonly rate: string;
  readonly baseMinor: number;
  readonly amountMinor: number;
}

export interface QuoteFreight {
  readonly zone: string;
  readonly split: FreightSplit;
  readonly truck: TruckSize;
  readonly perTruck: string;
  readonly perDelivery: string | null;
  readonly deliveries: readonly Delivery[];
  /** Goods whose volume or weight the list does not state though its truck counts it: they were loaded as if they had none. */
  readonly notMeasured: readonly string[];
}

/** One line of freight: the trucks that bring the goods of the job, or of one storey. */
export interface Delivery {
  readonly storey: string | null;
  readonly trucks: number;
  readonly loads: readonly TruckLoad[];
}

/** What one truck carries; the contents in laying order. */
export interface TruckLoad {
  readonly n: number;
  readonly volumeM3: number;
  /** Selling units. */
  readonly pieces: number;
  readonly weightKg: number;
  /** The fullest of the truck's measures, 0 to 1, to four places. */
  readonly fill: number;
  readonly contents: readonly LoadedGoods[];
}

/** @property line number of the quote's line */
export interface LoadedGoods {
  readonly line: number;
  readonly sku: string;
  readonly quantity: number;
}

export type ScopeStatus = 'included' | 'optional' | 'by others';

export interface ScopeItem {
  readonly item: string;
  readonly status: ScopeStatus;
  readonly note: string;
}

/** A finding as the quote prints it; holds block acceptance until they are answered. */
export interface QuoteCondition {
  readonly severity: Severity;
  readonly text: string;
  readonly finding: Finding;
}
