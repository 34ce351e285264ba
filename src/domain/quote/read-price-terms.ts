import Big from 'big.js';
import type { Discount, FreightSplit, FreightTerms, FreightZone, ListedCustomer, ListedTax, MinimumOrder, PriceItem, TruckSize } from './price-list.js';
import type { Fields, PriceListFields } from './price-list-fields.js';
import { readGroup, tierFix } from './read-price-items.js';

export const MAX_TAX_PLACES = 5_000;
const MAX_CUSTOMERS = 20_000;
const MAX_DISCOUNTS = 5_000;
const MAX_ZONES = 1_000;
const MAX_ZONE_PLACES = 5_000;

const SPLITS: readonly string[] = ['job', 'storey'] satisfies readonly FreightSplit[];
const RATE = 'a rate below 1: "0.0825" is 8 1/4 %';
/** A tax that a list gives no name. */
const UNNAMED_TAX = 'tax';

export function readCustomers(json: unknown, fields: PriceListFields): ReadonlyMap<string, ListedCustomer> {
  const customers = new Map<string, ListedCustomer>();
  if (json === undefined) return customers;
  fields.rows(json, '/customers', MAX_CUSTOMERS, ['organisation', 'tier', 'taxExempt'], (row, pointer) => {
    const organisation = fields.name(row, 'organisation', pointer);
    fields.check(!customers.has(organisation), `${pointer}/organisation`, organisation, 'each organisation once');
    customers.set(organisation, { organisation, tier: fields.optionalName(row, 'tier', pointer), taxExempt: fields.optionalName(row, 'taxExempt', pointer) });
  });
  return customers;
}

export function readDiscounts(json: unknown, tiers: ReadonlySet<string>, fields: PriceListFields): readonly Discount[] {
  const discounts: Discount[] = [];
  if (json === undefined) return discounts;
  const seen = new Set<string>();
  fields.rows(json, '/discounts', MAX_DISCOUNTS, ['group', 'tier', 'organisation', 'rate'], (row, pointer) => {
    const group = row['group'] === undefined ? fields.name(row, 'group', pointer) : (readGroup(row, pointer, fields) ?? '');
    const tier = fields.optionalName(row, 'tier', pointer);
    const organisation = fields.optionalName(row, 'organisation', pointer);
    const rate = fields.rate(row, 'rate', pointer, 'a rate below 1, no discount of 100 % or more: "0.05" is 5 %');
    fields.check(tier === null || organisation === null, `${pointer}/organisation`, organisation, 'a tier or an organisation, not both: the more particular one wins by itself');
    fields.check(tier === null || tiers.has(tier), `${pointer}/tier`, tier, tierFix(tiers));
    const key = JSON.stringify([group, tier, organisation]);
    fields.check(!seen.has(key), `${pointer}/group`, group, 'each group once for everybody, once for a tier and once for an organisation');
    seen.add(key);
    discounts.push({ group, tier, organisation, rate });
  });
  return discounts;
}

export function readMinimumOrder(json: unknown, fields: PriceListFields): MinimumOrder | null {
  const row = json === undefined ? null : fields.object(json, '/minimumOrder', ['amount', 'charge']);
  return row && { amount: fields.decimal(row, 'amount', '/minimumOrder'), charge: fields.optionalDecimal(row, 'charge', '/minimumOrder') };
}

export function readTaxes(json: unknown, fields: PriceListFields): ReadonlyMap<string, readonly ListedTax[]> {
  const taxes = new Map<string, ListedTax[]>();
  fields.rows(json, '/taxes', MAX_TAX_PLACES, ['place', 'name', 'rate', 'freight'], (row, pointer) => {
    const place = fields.name(row, 'place', pointer);
    const name = fields.optionalName(row, 'name', pointer) ?? UNNAMED_TAX;
    const rate = fields.rate(row, 'rate', pointer, RATE);
    const freight = row['freight'] === undefined ? true : row['freight'];
    fields.check(typeof freight === 'boolean', `${pointer}/freight`, freight, 'true where freight is taxed, false where it is not');
    const known = taxes.get(place) ?? [];
    fields.check(!known.some((tax) => tax.name === name), `${pointer}/${row['name'] === undefined ? 'place' : 'name'}`, row['name'] ?? place, 'each place once, or each name of a tax once at a place');
    taxes.set(place, [...known, { name, rate, freight: freight === true }]);
  });
  return taxes;
}

/** Items that a truck of the terms could never take are errors of the item. @param items as they were read, in order */
export function readFreight(json: unknown, items: ReadonlyMap<string, PriceItem>, fields: PriceListFields): FreightTerms | null {
  const row = json === undefined ? null : fields.object(json, '/freight', ['truck', 'split', 'zones']);
  if (!row) return null;
  const truck = readTruck(row['truck'], fields);
  const split = row['split'] === undefined ? 'job' : fields.text(row, 'split', '/freight', (text) => SPLITS.includes(text), '"job" or "storey"');
  [...items.values()].forEach((item, index) => {
    for (const measure of ['volumeM3', 'weightKg'] as const) {
      const [most, own] = [truck[measure], item[measure]];
      if (most !== null && own !== null) fields.check(new Big(own).lte(most), `/items/${index}/${measure}`, own, `at most ${most}, what one truck takes: selling units are not split`);
    }
  });
  return { truck, split: split as FreightSplit, zones: readZones(row['zones'], fields) };
}

function readTruck(json: unknown, fields: PriceListFields): TruckSize {
  const pointer = '/freight/truck';
  const row = fields.object(json, pointer, ['volumeM3', 'pieces', 'weightKg']);
  if (!row) return { volumeM3: null, pieces: null, weightKg: null };
  const truck = {
    volumeM3: positive(row, 'volumeM3', pointer, fields),
    pieces: row['pieces'] === undefined ? null : fields.whole(row, 'pieces', pointer, 1, 1_000_000_000),
    weightKg: positive(row, 'weightKg', pointer, fields),
  };
  fields.check(Object.keys(row).length > 0, pointer, row, 'what a truck takes: volumeM3, pieces or weightKg');
  return truck;
}

function positive(row: Fields, key: string, pointer: string, fields: PriceListFields): string | null {
  const value = fields.optionalDecimal(row, key, pointer);
  if (value !== null && row[key] === value) fields.check(Number(value) > 0, `${pointer}/${key}`, value, 'more than nought');
  return value;
}

function readZones(json: unknown, fields: PriceListFields): readonly FreightZone[] {
  const zones: FreightZone[] = [];
  const seen = { zones: new Set<string>(), places: new Set<string>() };
  fields.rows(json, '/freight/zones', MAX_ZONES, ['zone', 'places', 'perTruck', 'perDelivery'], (row, pointer) => {
    const zone = fields.name(row, 'zone', pointer);
    fields.check(!seen.zones.has(zone), `${pointer}/zone`, zone, 'each zone once');
    seen.zones.add(zone);
    const places = fields.list(row['places'], `${pointer}/places`, MAX_ZONE_PLACES).map((place, index) => {
      const read = fields.name({ [index]: place }, `${index}`, `${pointer}/places`);
      fields.check(!seen.places.has(read), `${pointer}/places/${index}`, read, 'each place in one zone, once');
      seen.places.add(read);
      return read;
    });
    zones.push({ zone, places, perTruck: fields.decimal(row, 'perTruck', pointer), perDelivery: fields.optionalDecimal(row, 'perDelivery', pointer) });
  });
  return zones;
}
