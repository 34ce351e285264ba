import type { Finding, Severity } from '../evidence/finding.js';
import type { LengthUnit } from '../quantity/length-unit.js';
import type { MaterialLine } from '../reinforcement/material-line.js';
import type { Takeoff } from '../takeoff/takeoff.js';
import type { PlainDate } from './plain-date.js';
import type { SellingUnit } from './price-list.js';

/** Who is quoted; `place` decides the tax. */
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
  readonly subtotalMinor: number;
  readonly tax: QuoteTax;
  readonly taxMinor: number;
  readonly totalMinor: number;
  readonly scope: readonly ScopeItem[];
  readonly conditions: readonly QuoteCondition[];
  readonly cautions: readonly string[];
}

export interface QuoteLine {
  readonly n: number;
  readonly kind: 'unit' | 'spare' | 'material';
  readonly sku: string;
  readonly text: string;
  /** What is sold, after packs and bundles. */
  readonly quantity: number;
  readonly unit: SellingUnit;
  readonly unitPrice: string;
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
  | { readonly place: string | null; readonly rate: null; readonly reason: 'place-not-stated' | 'place-not-listed' };

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
