/** The sheets of a price list, in the order in which they are written. */
export const PRICE_SHEETS = ['list', 'items', 'customers', 'discounts', 'taxes', 'zones'] as const;
export type PriceSheet = (typeof PRICE_SHEETS)[number];

export const SHEET_COLUMNS: Readonly<Record<PriceSheet, readonly string[]>> = {
  list: ['key', 'value'],
  items: ['sku', 'unit', 'price', 'cost', 'bundle', 'breakBundle', 'group', 'tier', 'customer', 'from', 'volumeM3', 'weightKg'],
  customers: ['organisation', 'tier', 'taxExempt'],
  discounts: ['group', 'tier', 'organisation', 'rate'],
  taxes: ['place', 'name', 'rate', 'freight'],
  zones: ['zone', 'place', 'perTruck', 'perDelivery'],
};

/** A sheet is known by these columns; no two sheets share all of theirs. */
export const NEEDED_COLUMNS: Readonly<Record<PriceSheet, readonly string[]>> = {
  list: ['key', 'value'],
  items: ['sku', 'price'],
  customers: ['organisation'],
  discounts: ['group', 'rate'],
  taxes: ['place', 'rate'],
  zones: ['zone', 'perTruck'],
};

/** Keys of the sheet `list`: their path in the document, parted by points. */
export const LIST_SETTINGS = [
  'format', 'code', 'currency', 'inForceFrom', 'inForceTo', 'validDays', 'minimumOrder.amount', 'minimumOrder.charge',
  'freight.truck.volumeM3', 'freight.truck.pieces', 'freight.truck.weightKg', 'freight.split',
] as const;

/** Columns and settings that the document holds as whole numbers. */
export const WHOLE_FIELDS: ReadonlySet<string> = new Set(['validDays', 'bundle', 'from', 'freight.truck.pieces']);

/** The sheet whose columns a header names: of those whose needed columns are there, the one with the most known columns. */
export function sheetOfHeader(names: readonly string[]): PriceSheet | null {
  const known = (sheet: PriceSheet): number => SHEET_COLUMNS[sheet].filter((column) => names.includes(column)).length;
  const able = PRICE_SHEETS.filter((sheet) => NEEDED_COLUMNS[sheet].every((column) => names.includes(column)));
  return able.toSorted((a, b) => known(b) - known(a))[0] ?? null;
}
