import Big from 'big.js';
import { exactMinor, isCountable, roundMinor } from '../quantity/money.js';
import type { MaterialLine } from '../reinforcement/material-line.js';
import type { UnitCount } from '../takeoff/takeoff.js';
import { sellSku, type SkuSale, type SoldPart } from './bundling.js';
import { materialGroup, unitGroup } from './line-group.js';
import { materialText, pricedText, spareText, unitText } from './line-text.js';
import { inLineOrder } from './order-lines.js';
import type { PriceItem, PriceList } from './price-list.js';
import type { MeasuredJob, QuoteBecause, QuoteLine, Selling, UnpricedItem } from './quote.js';
import { demandOf, sellingOf, type Demand, type Need } from './selling.js';
import { audiencePrice, discountOf, tierOf } from './unit-price.js';

/** A line before it has its number. */
export type DraftLine = Omit<QuoteLine, 'n'>;

export type GoodsLines =
  | { readonly lines: readonly DraftLine[] }
  | { readonly unpriced: readonly UnpricedItem[] }
  | { readonly tooLarge: string };

/** What a line is before it has a price. */
interface Wanted {
  readonly kind: 'unit' | 'spare' | 'material';
  readonly sku: string;
  readonly group: string;
  readonly need: Need;
  readonly text: (selling: Selling) => string;
  readonly because: readonly QuoteBecause[];
}

interface Asked {
  readonly wanted: Wanted;
  readonly item: PriceItem;
  readonly demand: Demand;
}

/**
 * The goods of a quote: units, each followed by its spares, then materials. Everything that keeps one from being priced is told at once.
 *
 * A price depends on how much of its sku the quote holds, so that lines of one sku are sold together.
 */
export function goodsLines(job: MeasuredJob, list: PriceList, organisation: string): GoodsLines {
  const wanted = [...inLineOrder(job.takeoff.units).flatMap(unitsWanted), ...job.materials.map(materialWanted)];
  const asked = wanted.map((each) => askedOf(each, list));
  const unpriced = asked.filter((each): each is UnpricedItem => 'reason' in each);
  if (unpriced.length > 0) return { unpriced };
  const goods = asked.filter((each): each is Asked => !('reason' in each));
  const sold = soldBySku(goods, list, organisation);
  const lines: DraftLine[] = [];
  for (const [index, each] of goods.entries()) {
    const line = lineOf(each, sold[index]!, list, organisation);
    if (line === null) return { tooLarge: each.wanted.sku };
    lines.push(line);
  }
  return { lines };
}

interface Sold {
  readonly sale: SkuSale;
  readonly part: SoldPart;
}

/** For each asked line, in its order, how it is sold. */
function soldBySku(goods: readonly Asked[], list: PriceList, organisation: string): readonly Sold[] {
  const bySku = new Map<string, number[]>();
  goods.forEach(({ wanted: { sku } }, index) => bySku.set(sku, [...(bySku.get(sku) ?? []), index]));
  const sold: Sold[] = [];
  for (const indexes of bySku.values()) {
    const demands = indexes.map((index) => goods[index]!.demand.count);
    const { item } = goods[indexes[0]!]!;
    const sale = sellSku(demands, item, audiencePrice(item, organisation, tierOf(list, organisation)));
    indexes.forEach((index, place) => (sold[index] = { sale, part: sale.parts[place]! }));
  }
  return sold;
}

/** Null where the amount is beyond what can be counted exactly. */
function lineOf({ wanted, item, demand }: Asked, { sale, part }: Sold, list: PriceList, organisation: string): DraftLine | null {
  const group = item.group ?? wanted.group;
  const discountRate = discountOf(list.discounts, group, organisation, tierOf(list, organisation));
  const surchargeRate = part.loose > 0 ? item.breakBundle : null;
  const charged = surchargeRate === null ? new Big(part.quantity) : new Big(surchargeRate).times(part.loose).plus(part.quantity);
  const gross = charged.times(sale.unit.unitPrice);
  const exact = exactMinor(discountRate === null ? gross : gross.times(new Big(1).minus(discountRate)), list.currency);
  if (!isCountable(exact)) return null;
  const selling = sellingOf(wanted.need, demand, part, item.bundle, sale.broken);
  return {
    kind: wanted.kind, storey: null, group, sku: wanted.sku,
    text: pricedText(wanted.text(selling), { looseQuantity: part.loose, surchargeRate, discountRate }),
    quantity: part.quantity, unit: item.unit, unitPrice: sale.unit.unitPrice, listPrice: item.price, break: sale.unit.break, audience: sale.unit.audience,
    discountRate, looseQuantity: part.loose, surchargeRate, amountMinor: roundMinor(exact), because: wanted.because, selling,
  };
}

function askedOf(wanted: Wanted, { items }: PriceList): Asked | UnpricedItem {
  const item = items.get(wanted.sku);
  const demand = item ? demandOf(wanted.need, item) : null;
  if (item && demand) return { wanted, item, demand };
  const { sku, need: { needed, neededUnit }, because } = wanted;
  return { sku, reason: item ? 'sold-otherwise' : 'not-listed', listedUnit: item?.unit ?? null, needed, neededUnit, because };
}

function unitsWanted(unit: UnitCount): readonly Wanted[] {
  const { sku, bought, spare, because } = unit;
  const group = unitGroup(unit.kind);
  const units: Wanted = { kind: 'unit', sku, group, need: { needed: bought, neededUnit: 'each', pack: null }, text: () => unitText(unit), because };
  const spares: Wanted = {
    kind: 'spare', sku, group, need: { needed: spare, neededUnit: 'each', pack: null }, text: (selling) => spareText(unit, selling),
    because: [{ rule: 'spare-forms', storey: null, wall: null, course: null, quantity: spare }],
  };
  return [...(bought > 0 ? [units] : []), ...(spare > 0 ? [spares] : [])];
}

function materialWanted(material: MaterialLine): Wanted {
  const { sku, quantity, unit, pack, pieces, because } = material;
  return {
    kind: 'material', sku, group: materialGroup(material.kind),
    need: { needed: quantity, neededUnit: unit, pack, ...(pieces && { pieces }) }, text: (selling) => materialText(material, selling), because,
  };
}
