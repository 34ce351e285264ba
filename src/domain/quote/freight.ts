import Big from 'big.js';
import type { FreightTerms, FreightZone, PriceList } from './price-list.js';
import type { Delivery, QuoteFreight, QuoteLine } from './quote.js';
import { sharesOf, type Weighed } from './storey-shares.js';
import { loadTrucks, MAX_TRUCKS, type GoodsToLoad } from './truck-loads.js';

/** Why freight is not priced: the list has none, the customer has no place, the place is in no zone, or nothing is delivered. */
export type FreightAbsence = 'not-listed' | 'place-not-stated' | 'place-without-zone' | 'nothing-to-deliver';

export type FreightPlan =
  | { readonly absent: FreightAbsence; readonly place: string | null }
  | { readonly tooMany: { readonly storey: string | null; readonly most: number } }
  | { readonly freight: QuoteFreight };

type Goods = Pick<QuoteLine, 'n' | 'sku' | 'quantity' | 'because'>;

/** The zone of a place, null where no zone has it. */
const zoneOf = ({ zones }: FreightTerms, place: string): FreightZone | null => zones.find(({ places }) => places.includes(place)) ?? null;

/**
 * Loads the goods of a quote onto trucks: one delivery for the job, or one for each storey that takes any.
 *
 * A line is shared out over storeys by what its causes take there, largest remainder first; what is caused by no storey (spares) goes as the
 * other lines of its sku go, and with the first storey where there is none. Loading goes in laying order: by the first storey and the lowest
 * course there that a line's causes have in the delivery, lines without a course last, then by the line's number.
 *
 * @param goods   numbered lines of goods
 * @param storeys of the job, from the bottom up
 */
export function planFreight(goods: readonly Goods[], list: PriceList, place: string | null, storeys: readonly string[]): FreightPlan {
  const terms = list.freight;
  if (terms === null) return { absent: 'not-listed', place };
  if (place === null) return { absent: 'place-not-stated', place };
  const zone = zoneOf(terms, place);
  if (!zone) return { absent: 'place-without-zone', place };
  const parts = (terms.split === 'job' ? [{ storey: null, goods }] : byStorey(goods, storeys)).filter(({ goods: each }) => each.some(({ quantity }) => quantity > 0));
  if (parts.length === 0) return { absent: 'nothing-to-deliver', place };
  const deliveries: Delivery[] = [];
  for (const part of parts) {
    const loads = loadTrucks(toLoad(part.goods, part.storey === null ? storeysOf(goods, storeys) : [part.storey], list), terms.truck);
    if (!loads) return { tooMany: { storey: part.storey, most: MAX_TRUCKS } };
    deliveries.push({ storey: part.storey, trucks: loads.length, loads });
  }
  const { truck, split } = terms;
  return { freight: { zone: zone.zone, split, truck, perTruck: zone.perTruck, perDelivery: zone.perDelivery, deliveries, notMeasured: notMeasured(goods, list, terms) } };
}

/** What a delivery costs: trucks · price of a truck + price of a delivery, in major units, exact. */
export const deliveryPrice = ({ perTruck, perDelivery }: Pick<QuoteFreight, 'perTruck' | 'perDelivery'>, { trucks }: Pick<Delivery, 'trucks'>): Big =>
  new Big(perTruck).times(trucks).plus(perDelivery ?? 0);

interface Part {
  readonly storey: string | null;
  readonly goods: readonly Goods[];
}

function byStorey(goods: readonly Goods[], known: readonly string[]): readonly Part[] {
  const storeys = storeysOf(goods, known);
  if (storeys.length === 0) return [{ storey: null, goods }];
  const ofSku = new Map<string, Weighed[]>();
  for (const { sku, because } of goods) ofSku.set(sku, [...(ofSku.get(sku) ?? []), ...weightsOf(because)]);
  const shared = goods.map((line) => ({ line, shares: sharesOf(line.quantity, weightsFor(line, ofSku, storeys), storeys) }));
  return storeys.map((storey, index) => ({ storey, goods: shared.map(({ line, shares }) => ({ ...line, quantity: shares[index] ?? 0 })) }));
}

/** Storeys in the job's order; those that only causes name come after, by name. */
function storeysOf(goods: readonly Goods[], known: readonly string[]): readonly string[] {
  const named = new Set(goods.flatMap(({ because }) => because.flatMap(({ storey }) => (storey === null ? [] : [storey]))));
  const inOrder = [...new Set(known)].filter((storey) => named.has(storey));
  const placed = new Set(inOrder);
  return [...inOrder, ...[...named].filter((storey) => !placed.has(storey)).sort()];
}

const weightsOf = (because: Goods['because']): readonly Weighed[] =>
  because.flatMap(({ storey, quantity }) => (storey !== null && quantity > 0 ? [{ place: storey, quantity }] : []));

function weightsFor({ sku, because }: Goods, ofSku: ReadonlyMap<string, readonly Weighed[]>, storeys: readonly string[]): readonly Weighed[] {
  const own = weightsOf(because);
  if (own.length > 0) return own;
  const others = ofSku.get(sku) ?? [];
  return others.length > 0 ? others : [{ place: storeys[0] ?? '', quantity: 1 }];
}

/** @param storeys of the delivery, in order */
function toLoad(goods: readonly Goods[], storeys: readonly string[], { items }: PriceList): readonly GoodsToLoad[] {
  const level = new Map(storeys.map((storey, index) => [storey, index]));
  return goods
    .map((line) => ({ line, laid: firstLaid(line, level) }))
    .sort((a, b) => a.laid.level - b.laid.level || a.laid.course - b.laid.course || a.line.n - b.line.n)
    .map(({ line: { n, sku, quantity } }) => ({ line: n, sku, quantity, volumeM3: items.get(sku)?.volumeM3 ?? '0', weightKg: items.get(sku)?.weightKg ?? '0' }));
}

interface Laid {
  readonly level: number;
  readonly course: number;
}

const NEVER: Laid = { level: Number.MAX_SAFE_INTEGER, course: Number.MAX_SAFE_INTEGER };

function firstLaid({ because }: Goods, levels: ReadonlyMap<string, number>): Laid {
  return because.reduce((first, { storey, course }) => {
    const level = storey === null ? undefined : levels.get(storey);
    if (level === undefined || course === null) return first;
    return level < first.level || (level === first.level && course < first.course) ? { level, course } : first;
  }, NEVER);
}

function notMeasured(goods: readonly Goods[], { items }: PriceList, { truck }: FreightTerms): readonly string[] {
  const lacks = ({ sku, quantity }: Goods): boolean =>
    quantity > 0 && ((truck.volumeM3 !== null && items.get(sku)?.volumeM3 === null) || (truck.weightKg !== null && items.get(sku)?.weightKg === null));
  return [...new Set(goods.filter(lacks).map(({ sku }) => sku))].sort();
}
