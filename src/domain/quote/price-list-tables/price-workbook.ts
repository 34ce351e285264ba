import { writeWorkbook } from '../../schedule/template/write-workbook.js';
import type { PriceTables } from './list-tables.js';
import { NEEDED_COLUMNS, PRICE_SHEETS, SHEET_COLUMNS } from './sheet-columns.js';

const NOTES: Readonly<Record<string, string>> = {
  key: 'The name of a setting; it stays as it is.',
  value: 'What is set. Rows that are not used may be deleted.',
  sku: 'One row with the price for everybody, then one for each break, tier and customer.',
  unit: 'each, ft or pack; on the first row of a sku.',
  price: 'Of one selling unit, in the currency of the list.',
  cost: 'What the supplier pays; for sales and admin only.',
  bundle: 'Sold in bundles of so many selling units.',
  breakBundle: 'Rate by which loose selling units cost more: 0.10 is 10 %. Left out: whole bundles only.',
  group: 'Group of lines, for discounts.',
  tier: 'The tier that the row holds for.',
  customer: 'The organisation that the price holds for.',
  from: 'Least quantity of the break, in selling units.',
  organisation: 'Name of the organisation, letter by letter.',
  taxExempt: 'Number of the certificate that frees the customer from tax.',
  rate: 'A rate below 1: 0.05 is 5 %.',
  freight: 'yes where freight is taxed (left out: this), no where it is not.',
  zone: 'One row for each place of the zone; its prices on the first.',
};

/** A price list as a workbook, a sheet for each table; every cell is text, so that none is calculated and no digit is lost. */
export const priceWorkbook = (tables: PriceTables, writtenAt: Date): Promise<Uint8Array> =>
  writeWorkbook(
    PRICE_SHEETS.map((sheet) => ({
      name: sheet,
      columns: SHEET_COLUMNS[sheet].map((name) => ({ name, note: NOTES[name] ?? name, choices: null, needed: NEEDED_COLUMNS[sheet].includes(name) })),
      rows: tables[sheet].map((row) => row.map((cell) => (cell === '' ? null : cell))),
      byRow: [],
    })),
    { howTo: false, writtenAt },
  );
