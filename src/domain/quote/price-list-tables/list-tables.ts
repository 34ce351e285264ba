import { LIST_SETTINGS, PRICE_SHEETS, SHEET_COLUMNS, type PriceSheet } from './sheet-columns.js';

type Fields = Readonly<Record<string, unknown>>;
/** Texts by row, in the order of the columns of the sheet; an empty text is an empty cell. */
export type PriceTables = Readonly<Record<PriceSheet, readonly (readonly string[])[]>>;

/**
 * A price list as the rows of its tables.
 *
 * An item is one row with its own price, then one for each price of a break, of a tier and of a customer: these name the sku, the
 * audience and the least quantity, and nothing else. A zone is one row for each of its places; its prices stand on the first.
 *
 * @param document one that `readPriceList` has read
 */
export function priceListTables(document: Fields): PriceTables {
  const freight = document['freight'] as Fields | undefined;
  const rows: Readonly<Record<PriceSheet, readonly Fields[]>> = {
    list: LIST_SETTINGS.map((key) => ({ key, value: at(document, key) })).filter(({ value }) => value !== undefined),
    items: listed(document['items']).flatMap(itemRows),
    customers: listed(document['customers']),
    discounts: listed(document['discounts']),
    taxes: listed(document['taxes']),
    zones: listed(freight?.['zones']).flatMap(zoneRows),
  };
  const texts = (sheet: PriceSheet): readonly (readonly string[])[] => rows[sheet].map((row) => SHEET_COLUMNS[sheet].map((column) => cellText(row[column])));
  return Object.fromEntries(PRICE_SHEETS.map((sheet) => [sheet, texts(sheet)])) as unknown as PriceTables;
}

function itemRows(item: Fields): readonly Fields[] {
  const { sku, breaks, tiers, customers, ...own } = item;
  const audiences = (named: unknown, column: string): readonly Fields[] =>
    Object.entries((named ?? {}) as Readonly<Record<string, Fields>>).flatMap(([name, price]) => [
      { sku, [column]: name, price: price['price'] },
      ...breakRows(price['breaks'], { sku, [column]: name }),
    ]);
  return [{ sku, ...own }, ...breakRows(breaks, { sku }), ...audiences(tiers, 'tier'), ...audiences(customers, 'customer')];
}

const breakRows = (breaks: unknown, audience: Fields): readonly Fields[] => listed(breaks).map(({ from, price }) => ({ ...audience, from, price }));

function zoneRows({ zone, places, perTruck, perDelivery }: Fields): readonly Fields[] {
  const [first, ...more] = places as readonly string[];
  return [{ zone, place: first, perTruck, perDelivery }, ...more.map((place) => ({ zone, place }))];
}

const listed = (rows: unknown): readonly Fields[] => (rows ?? []) as readonly Fields[];

function at(document: Fields, path: string): unknown {
  return path.split('.').reduce<unknown>((value, key) => (value as Fields | undefined)?.[key], document);
}

const cellText = (value: unknown): string => (value === undefined ? '' : typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value));
