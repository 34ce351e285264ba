import { RESERVED_GROUPS } from './line-group.js';
import type { PriceBreak, PriceItem, QuantityPrice, SellingUnit } from './price-list.js';
import type { Fields, PriceListFields } from './price-list-fields.js';

export const MAX_PRICE_ITEMS = 20_000;
const MAX_BREAKS = 100;
const MAX_TIERS = 100;
const MAX_CUSTOMER_PRICES = 5_000;
const MAX_QUANTITY = 1_000_000_000;

const UNITS: readonly string[] = ['each', 'ft', 'pack'] satisfies readonly SellingUnit[];
const ITEM_KEYS = ['sku', 'unit', 'price', 'cost', 'bundle', 'breakBundle', 'group', 'breaks', 'tiers', 'customers', 'volumeM3', 'weightKg'];
const PRICE_KEYS = ['price', 'breaks'];
const BREAK_KEYS = ['from', 'price'];

/** The items of a list by sku, each priced once. @param tiers those that a customer of the list is in */
export function readItems(json: unknown, tiers: ReadonlySet<string>, fields: PriceListFields): ReadonlyMap<string, PriceItem> {
  const items = new Map<string, PriceItem>();
  fields.rows(json, '/items', MAX_PRICE_ITEMS, ITEM_KEYS, (row, pointer) => {
    const item = readItem(row, pointer, tiers, fields);
    fields.check(!items.has(item.sku), `${pointer}/sku`, item.sku, 'each sku once');
    items.set(item.sku, item);
  });
  return items;
}

function readItem(row: Fields, pointer: string, tiers: ReadonlySet<string>, fields: PriceListFields): PriceItem {
  const bundle = row['bundle'] === undefined ? null : fields.whole(row, 'bundle', pointer, 1, 1_000_000);
  return {
    sku: fields.name(row, 'sku', pointer),
    unit: fields.text(row, 'unit', pointer, (text) => UNITS.includes(text), '"each", "ft" or "pack"') as SellingUnit,
    ...readPrice(row, pointer, fields),
    cost: fields.optionalDecimal(row, 'cost', pointer),
    bundle,
    breakBundle: readBreakBundle(row, pointer, fields),
    group: readGroup(row, pointer, fields),
    tiers: readAudience(row, 'tiers', pointer, MAX_TIERS, fields, (tier, at) => fields.check(tiers.has(tier), at, tier, tierFix(tiers))),
    customers: readAudience(row, 'customers', pointer, MAX_CUSTOMER_PRICES, fields),
    volumeM3: fields.optionalDecimal(row, 'volumeM3', pointer),
    weightKg: fields.optionalDecimal(row, 'weightKg', pointer),
  };
}

/** What would do for a tier that no customer is in. */
export const tierFix = (tiers: ReadonlySet<string>): string =>
  tiers.size === 0 ? 'a tier that an entry of customers is in; this list has none' : `a tier that an entry of customers is in: ${[...tiers].sort().slice(0, 20).join(', ')}`;

export function readGroup(row: Fields, pointer: string, fields: PriceListFields): string | null {
  const group = fields.optionalName(row, 'group', pointer);
  fields.check(group === null || !RESERVED_GROUPS.includes(group), `${pointer}/group`, group, `a group of goods: ${RESERVED_GROUPS.join(' and ')} are lines of their own`);
  return group;
}

function readBreakBundle(row: Fields, pointer: string, fields: PriceListFields): string | null {
  if (row['breakBundle'] === undefined) return null;
  fields.check(row['bundle'] !== undefined, `${pointer}/breakBundle`, row['breakBundle'], 'a bundle beside it, which may be broken');
  return fields.rate(row, 'breakBundle', pointer, 'a rate below 1: "0.10" is 10 % more for loose units');
}

function readAudience(
  row: Fields, key: string, pointer: string, most: number, fields: PriceListFields, known: (name: string, pointer: string) => void = () => undefined,
): ReadonlyMap<string, QuantityPrice> {
  const prices = new Map<string, QuantityPrice>();
  if (row[key] === undefined) return prices;
  fields.named(row[key], `${pointer}/${key}`, most, (name, value, at) => {
    known(name, at);
    const price = fields.object(value, at, PRICE_KEYS);
    if (price) prices.set(name, readPrice(price, at, fields));
  });
  return prices;
}

function readPrice(row: Fields, pointer: string, fields: PriceListFields): QuantityPrice {
  return { price: fields.decimal(row, 'price', pointer), breaks: row['breaks'] === undefined ? [] : readBreaks(row['breaks'], `${pointer}/breaks`, fields) };
}

/** Breaks go up; whether the price goes down is the supplier's matter. */
function readBreaks(json: unknown, pointer: string, fields: PriceListFields): readonly PriceBreak[] {
  const breaks: PriceBreak[] = [];
  fields.rows(json, pointer, MAX_BREAKS, BREAK_KEYS, (row, at) => {
    const from = fields.whole(row, 'from', at, 2, MAX_QUANTITY);
    const price = fields.decimal(row, 'price', at);
    const before = breaks.at(-1);
    fields.check(from === null || !before || from > before.from, `${at}/from`, from, `more than ${before?.from}, the break before: breaks go up, each once`);
    if (from !== null) breaks.push({ from, price });
  });
  return breaks;
}
