import { CAUTIONS } from '../evidence/cautions.js';
import { findingPlaceText, findingText } from '../evidence/finding-text.js';
import { failure, success, type Result } from '../evidence/result.js';
import { amountOf, taxOn, type Minor } from '../quantity/money.js';
import type { MaterialLine } from '../reinforcement/material-line.js';
import type { UnitCount } from '../takeoff/takeoff.js';
import { materialText, spareText, unitText } from './line-text.js';
import { inLineOrder } from './order-lines.js';
import { addDays, type PlainDate } from './plain-date.js';
import type { PriceItem, PriceList } from './price-list.js';
import type { Customer, MeasuredJob, PriceRefusal, Quote, QuoteBecause, QuoteCondition, QuoteLine, QuoteTax, Selling, UnpricedItem } from './quote.js';
import { scopeOf } from './scope.js';
import { sell, type Need } from './selling.js';

type Draft = Omit<QuoteLine, 'n'>;
type Lines = readonly (Draft | UnpricedItem)[];

/** What a line is before it has a price. */
interface Wanted {
  readonly kind: QuoteLine['kind'];
  readonly sku: string;
  readonly need: Need;
  readonly text: (selling: Selling) => string;
  readonly because: readonly QuoteBecause[];
}

/**
 * Prices a measured job from one price list: pure, to the cent, every line with its causes.
 *
 * Lines are the units bought, each followed by its spares, then the materials in whole packs. Where units are sold in bundles, the
 * rest of the last bundle counts as spares first. Amounts are rounded line by line, tax once on the subtotal, half to even.
 *
 * @param job       what the pipeline measured
 * @param list      the price list in force on `date`
 * @param customer  who is quoted; the place decides the tax
 * @param date      the quote's date in the supplier's time zone
 * @returns         the quote, or everything that keeps the job from being priced
 */
export function price(job: MeasuredJob, list: PriceList, customer: Customer, date: PlainDate): Result<Quote, PriceRefusal> {
  if (date < list.inForceFrom) return failure({ code: 'list-not-in-force', priceList: list.code, inForceFrom: list.inForceFrom, date });
  const drafts = [...inLineOrder(job.takeoff.units).flatMap((unit) => unitLines(unit, list)), ...job.materials.map((line) => materialLine(line, list))];
  const unpriced = drafts.filter((draft): draft is UnpricedItem => 'reason' in draft);
  if (unpriced.length > 0) return failure({ code: 'not-priced', priceList: list.code, items: unpriced });
  const lines = drafts.filter((draft): draft is Draft => !('reason' in draft)).map((draft, index) => ({ n: index + 1, ...draft }));
  return success(quoteOf(lines, job, list, customer, date));
}

function quoteOf(lines: readonly QuoteLine[], job: MeasuredJob, list: PriceList, customer: Customer, date: PlainDate): Quote {
  const subtotalMinor = lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0);
  const place = customer.place ?? null;
  const tax = taxAt(place, list);
  const taxMinor: Minor = tax.rate === null ? 0 : taxOn(subtotalMinor, tax.rate);
  return {
    engine: job.engine,
    range: job.range,
    priceList: { code: list.code, inForceFrom: list.inForceFrom },
    customer: { organisation: customer.organisation, place },
    date,
    validUntil: addDays(date, list.validDays),
    currency: list.currency,
    lines,
    subtotalMinor,
    tax,
    taxMinor,
    totalMinor: subtotalMinor + taxMinor,
    scope: scopeOf(job.materials, job.takeoff.concrete),
    conditions: conditionsOf(job),
    cautions: CAUTIONS,
  };
}

function unitLines(unit: UnitCount, list: PriceList): Lines {
  const bought = unit.bought > 0 ? [lineOf(boughtUnits(unit), list)] : [];
  const sold = bought[0];
  const rest = sold && !('reason' in sold) ? sold.quantity - unit.bought : 0;
  const spare = unit.spare > 0 ? [lineOf(spareUnits(unit, Math.min(rest, unit.spare)), list)] : [];
  return [...bought, ...spare];
}

function boughtUnits(unit: UnitCount): Wanted {
  return {
    kind: 'unit',
    sku: unit.sku,
    need: { needed: unit.bought, neededUnit: 'each', pack: null, covered: 0 },
    text: () => unitText(unit),
    because: unit.because,
  };
}

function spareUnits(unit: UnitCount, covered: number): Wanted {
  return {
    kind: 'spare',
    sku: unit.sku,
    need: { needed: unit.spare, neededUnit: 'each', pack: null, covered },
    text: (selling) => spareText(unit, selling),
    because: [{ rule: 'spare-forms', storey: null, wall: null, course: null, quantity: unit.spare }],
  };
}

function materialLine(material: MaterialLine, list: PriceList): Draft | UnpricedItem {
  return lineOf(
    {
      kind: 'material',
      sku: material.sku,
      need: { needed: material.quantity, neededUnit: material.unit, pack: material.pack, pieces: material.pieces, covered: 0 },
      text: (selling) => materialText(material, selling),
      because: material.because,
    },
    list,
  );
}

function lineOf({ kind, sku, need, text, because }: Wanted, list: PriceList): Draft | UnpricedItem {
  const item = list.items.get(sku);
  const selling = item ? sell(need, item) : null;
  if (!item || !selling) return unpricedItem({ sku, need, because }, item);
  const { unit, price: unitPrice } = item;
  const quantity = selling.afterBundling;
  return { kind, sku, text: text(selling), quantity, unit, unitPrice, amountMinor: amountOf(quantity, unitPrice, list.currency), because, selling };
}

function unpricedItem({ sku, need, because }: Pick<Wanted, 'sku' | 'need' | 'because'>, item: PriceItem | undefined): UnpricedItem {
  const { needed, neededUnit } = need;
  return { sku, reason: item ? 'sold-otherwise' : 'not-listed', listedUnit: item?.unit ?? null, needed, neededUnit, because };
}

/** No rate for a place is no tax, said aloud: the customer may owe it elsewhere. */
function taxAt(place: string | null, list: PriceList): QuoteTax {
  if (place === null) return { place, rate: null, reason: 'place-not-stated' };
  const rate = list.taxes.get(place);
  return rate === undefined ? { place, rate: null, reason: 'place-not-listed' } : { place, rate, reason: null };
}

function conditionsOf({ findings, lengthUnit }: MeasuredJob): readonly QuoteCondition[] {
  return findings.map((finding) => {
    const place = findingPlaceText(finding, lengthUnit);
    const text = findingText(finding, lengthUnit);
    return { severity: finding.severity, text: place ? `${place.charAt(0).toUpperCase()}${place.slice(1)}: ${text}` : text, finding };
  });
}
