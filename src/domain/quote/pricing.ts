import { CAUTIONS } from '../evidence/cautions.js';
import { findingPlaceText, findingText } from '../evidence/finding-text.js';
import { failure, success, type Result } from '../evidence/result.js';
import { exactMinor, isCountable, priceText, roundMinor } from '../quantity/money.js';
import { deliveryPrice, planFreight, type FreightPlan } from './freight.js';
import { goodsLines, type DraftLine } from './goods-lines.js';
import { minimumLine } from './minimum-order.js';
import { ownLine } from './own-line.js';
import { addDays, type PlainDate } from './plain-date.js';
import type { PriceList } from './price-list.js';
import type { Customer, Delivery, MeasuredJob, PriceRefusal, Quote, QuoteCondition, QuoteFreight, QuoteLine } from './quote.js';
import { freightScope, scopeOf } from './scope.js';
import { taxesOn } from './taxes.js';

/** The sku of the lines of freight. */
export const FREIGHT_SKU = 'FREIGHT';

/**
 * Prices a measured job from one price list: pure, to the cent, every line with its causes.
 *
 * Lines are the units bought, each followed by its spares, then the materials in whole packs; then what makes the goods up to the minimum
 * order, then freight, one line a delivery. Where units are sold in bundles, the rest of the last bundle counts as spares first; a bundle
 * that may be broken is, where loose units cost the customer less. Prices are the customer's own, else its tier's, else everybody's, at the
 * break that all selling units of the sku together reach. Amounts are rounded once a line, once a tax, half to even.
 *
 * @param job       what the pipeline measured
 * @param list      the price list in force on `date`
 * @param customer  who is quoted; the organisation decides whose prices hold, the place the tax and the freight
 * @param date      the quote's date in the supplier's time zone
 * @returns         the quote, or everything that keeps the job from being priced
 */
export function price(job: MeasuredJob, list: PriceList, customer: Customer, date: PlainDate): Result<Quote, PriceRefusal> {
  const priceList = list.code;
  if (date < list.inForceFrom) return failure({ code: 'list-not-in-force', priceList, inForceFrom: list.inForceFrom, date });
  if (list.inForceTo !== null && date > list.inForceTo) return failure({ code: 'list-ended', priceList, inForceTo: list.inForceTo, date });
  const goods = goodsLines(job, list, customer.organisation);
  if ('unpriced' in goods) return failure({ code: 'not-priced', priceList, items: goods.unpriced });
  if ('tooLarge' in goods) return failure({ code: 'amount-too-large', priceList, sku: goods.tooLarge });
  return charged(goods.lines, job, list, customer, date);
}

/** Goods with all that is charged beside them. */
function charged(goods: readonly DraftLine[], job: MeasuredJob, list: PriceList, customer: Customer, date: PlainDate): Result<Quote, PriceRefusal> {
  const tooLarge = failure({ code: 'amount-too-large', priceList: list.code, sku: null } as const);
  const minimum = goods.length === 0 ? null : minimumLine(sumOf(goods), list.minimumOrder, list.currency);
  const plan = planFreight(numbered(goods), list, customer.place ?? null, job.takeoff.concrete.map(({ storey }) => storey));
  if ('tooMany' in plan) return failure({ code: 'too-many-trucks', priceList: list.code, ...plan.tooMany });
  const freight = 'freight' in plan ? plan.freight.deliveries.map((delivery) => freightLine(plan.freight, delivery, list)) : [];
  if (minimum === 'tooLarge' || freight.includes(null)) return tooLarge;
  const lines = numbered([...goods, ...(minimum ? [minimum] : []), ...freight.filter((line): line is DraftLine => line !== null)]);
  const subtotalMinor = sumOf(lines);
  // No amount is below nought: a sum that once went past the whole numbers of a double stays past them.
  if (!isCountable(subtotalMinor)) return tooLarge;
  const { tax, taxes } = taxesOn(lines, list, customer.organisation, customer.place ?? null);
  const taxMinor = sumOf(taxes);
  if (!isCountable(subtotalMinor + taxMinor)) return tooLarge;
  return success(quoteOf({ lines, tax, taxes, subtotalMinor, taxMinor }, plan, job, list, customer, date));
}

type Charged = Pick<Quote, 'lines' | 'tax' | 'taxes' | 'subtotalMinor' | 'taxMinor'>;

function quoteOf({ lines, tax, taxes, subtotalMinor, taxMinor }: Charged, plan: FreightPlan, job: MeasuredJob, list: PriceList, customer: Customer, date: PlainDate): Quote {
  return {
    engine: job.engine,
    range: job.range,
    priceList: { code: list.code, inForceFrom: list.inForceFrom },
    customer: { organisation: customer.organisation, place: customer.place ?? null },
    date,
    validUntil: addDays(date, list.validDays),
    currency: list.currency,
    lines,
    subtotalMinor,
    tax,
    taxes,
    taxMinor,
    totalMinor: subtotalMinor + taxMinor,
    freight: 'freight' in plan ? plan.freight : null,
    scope: scopeOf(job.materials, job.takeoff.concrete, freightScope(plan)),
    conditions: conditionsOf(job),
    cautions: CAUTIONS,
  };
}

/** Null where the amount cannot be counted exactly. */
function freightLine(freight: QuoteFreight, delivery: Delivery, list: PriceList): DraftLine | null {
  const major = deliveryPrice(freight, delivery);
  const exact = exactMinor(major, list.currency);
  if (!isCountable(exact)) return null;
  const price = priceText(major, list.currency);
  return ownLine({ kind: 'freight', sku: FREIGHT_SKU, storey: delivery.storey, text: freightText(freight, delivery, list), price, amountMinor: roundMinor(exact), rule: 'freight' });
}

/** `Freight to zone A for storey S1: 2 trucks at USD 420.00 each, USD 60.00 for the delivery`. */
function freightText(freight: QuoteFreight, { storey, trucks }: Delivery, { currency }: PriceList): string {
  const money = (text: string): string => `${currency} ${text}`;
  const where = `Freight to zone ${freight.zone}${storey === null ? '' : ` for storey ${storey}`}`;
  const each = trucks === 1 ? `1 truck at ${money(freight.perTruck)}` : `${trucks} trucks at ${money(freight.perTruck)} each`;
  return `${where}: ${each}${freight.perDelivery === null ? '' : `, ${money(freight.perDelivery)} for the delivery`}`;
}

const numbered = (lines: readonly DraftLine[]): readonly QuoteLine[] => lines.map((line, index) => ({ n: index + 1, ...line }));

const sumOf = (lines: readonly { readonly amountMinor: number }[]): number => lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0);

function conditionsOf({ findings, lengthUnit }: MeasuredJob): readonly QuoteCondition[] {
  return findings.map((finding) => {
    const place = findingPlaceText(finding, lengthUnit);
    const text = findingText(finding, lengthUnit);
    return { severity: finding.severity, text: place ? `${place.charAt(0).toUpperCase()}${place.slice(1)}: ${text}` : text, finding };
  });
}
