import { describe, expect, it } from '@jest/globals';
import ExcelJS from 'exceljs';
import { priceListTables } from '../../../src/domain/quote/price-list-tables/list-tables.js';
import { priceCsv } from '../../../src/domain/quote/price-list-tables/price-csv.js';
import { priceWorkbook } from '../../../src/domain/quote/price-list-tables/price-workbook.js';
import { readPriceFiles } from '../../../src/domain/quote/price-list-tables/read-price-files.js';
import { PRICE_SHEETS } from '../../../src/domain/quote/price-list-tables/sheet-columns.js';
import { randomQuote } from '../../support/random-quotes.js';
import { seededRandom } from '../../support/seeded-random.js';

type Document = Readonly<Record<string, unknown>>;

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const file = (name: string, text: string) => ({ name, bytes: bytesOf(text) });

const csvFiles = (document: Document) => {
  const tables = priceListTables(document);
  return PRICE_SHEETS.map((sheet) => file(`${sheet}.csv`, priceCsv(tables, sheet)));
};

const throughWorkbook = async (document: Document) =>
  readPriceFiles([{ name: 'prices.xlsx', bytes: await priceWorkbook(priceListTables(document), new Date('2026-01-01T00:00:00Z')) }]);

/** Every field of the format once, with names a spreadsheet would calculate. */
const FULL: Document = {
  format: 'wallcourse/prices@1', code: '=1+1', currency: 'USD', inForceFrom: '2026-01-01', inForceTo: '2026-12-31', validDays: 30,
  items: [
    {
      sku: 'ST6', unit: 'each', price: '23.40', cost: '14.05', bundle: 12, breakBundle: '0.10', group: 'forms', volumeM3: '0.149', weightKg: '3.1',
      breaks: [{ from: 120, price: '22.60' }, { from: 480, price: '21.90' }],
      tiers: { builder: { price: '22.90', breaks: [{ from: 240, price: '22.10' }] }, 'a/b~c': { price: '22.95' } },
      customers: { '@Alder, "Ridge"; Ltd': { price: '22.00' } },
    },
    { sku: '0042', unit: 'pack', price: '0' },
    { sku: 'TOTAL', unit: 'each', price: '2' },
    { sku: "'=held", unit: 'ft', price: '1.50' },
  ],
  customers: [
    { organisation: '@Alder, "Ridge"; Ltd', tier: 'builder', taxExempt: '-EX-1234' },
    { organisation: '+Two', tier: 'a/b~c' },
    { organisation: 'Total Concrete Ltd' },
  ],
  discounts: [{ group: 'forms', rate: '0.05' }, { group: 'forms', tier: 'builder', rate: '0.08' }, { group: 'materials', organisation: '+Two', rate: '0.1' }],
  minimumOrder: { amount: '500.00', charge: '45.00' },
  taxes: [{ place: 'Alder County', name: 'sales tax', rate: '0.0825', freight: false }, { place: 'Alder County', name: 'county tax', rate: '0.01', freight: true }, { place: 'Fenmoor', rate: '0' }, { place: 'Total', rate: '0' }],
  freight: {
    truck: { volumeM3: '70', pieces: 1200, weightKg: '9000' }, split: 'storey',
    zones: [{ zone: 'A', places: ['Alder County', 'Fenmoor'], perTruck: '420.00', perDelivery: '60.00' }, { zone: 'B', places: [], perTruck: '1' }],
  },
};
/** A literal would set the prototype; parsed JSON has the name as a key of its own. */
const full = JSON.parse(JSON.stringify(FULL).replace('"@Alder, \\"Ridge\\"; Ltd":{"price":"22.00"}', '"@Alder, \\"Ridge\\"; Ltd":{"price":"22.00"},"__proto__":{"price":"21.00"}')) as Document;

describe('a price list as tables and back', () => {
  it('every field comes back through CSV and through a workbook', async () => {
    expect(JSON.stringify(full)).toContain('__proto__');
    for (const read of [await readPriceFiles(csvFiles(full)), await throughWorkbook(full)]) {
      if (!read.ok) throw new Error(JSON.stringify(read.error));
      expect(read.value).toEqual(full);
      expect(Object.keys((read.value['items'] as { customers: object }[])[0]!.customers)).toContain('__proto__');
    }
  });

  it('two hundred random lists come back through CSV, and five through a workbook', async () => {
    const random = seededRandom(41);
    for (let n = 0; n < 200; n += 1) {
      const { document } = randomQuote(random);
      const { discounts, ...rest } = document as unknown as Document;
      const plain = (discounts as readonly unknown[]).length === 0 ? rest : { ...rest, discounts };
      for (const read of [await readPriceFiles(csvFiles(plain)), ...(n < 5 ? [await throughWorkbook(plain)] : [])]) expect(read).toEqual({ ok: true, value: plain });
    }
  });

  it('rows are those written out by hand', () => {
    expect(priceListTables(FULL).items.slice(0, 4)).toEqual([
      ['ST6', 'each', '23.40', '14.05', '12', '0.10', 'forms', '', '', '', '0.149', '3.1'],
      ['ST6', '', '22.60', '', '', '', '', '', '', '120', '', ''],
      ['ST6', '', '21.90', '', '', '', '', '', '', '480', '', ''],
      ['ST6', '', '22.90', '', '', '', '', 'builder', '', '', '', ''],
    ]);
  });

  it('no cell of a file is a formula: CSV holds such texts by an apostrophe, a workbook has them as texts', async () => {
    const tables = priceListTables(full);
    const cells = PRICE_SHEETS.flatMap((sheet) => priceCsv(tables, sheet).slice(1).split(/[,\r\n]+/).map((cell) => cell.replace(/^"/, '')));
    expect(cells.filter((cell) => /^[=+\-@]/.test(cell))).toEqual([]);
    expect(cells.filter((cell) => /^'[=+\-@]/.test(cell)).length).toBeGreaterThan(4);
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(Buffer.from(await priceWorkbook(tables, new Date(0))) as never);
    const types = new Set<number>();
    book.eachSheet((sheet) => sheet.eachRow((row) => row.eachCell((cell) => types.add(cell.type))));
    expect([...types]).toEqual([ExcelJS.ValueType.String]);
    expect(book.getWorksheet('list')!.getCell('B3').value).toBe('=1+1');
  });
});

const LIST = 'key,value\nformat,wallcourse/prices@1\ncode,C\ncurrency,USD\ninForceFrom,2026-01-01\nvalidDays,30\n';

/** sheet, row, column and what was read, of every error of a list with these tables. */
async function wrong(...tables: readonly (readonly [string, string])[]): Promise<readonly string[]> {
  const read = await readPriceFiles([file('list.csv', LIST), ...tables.map(([name, text]) => file(name, text))]);
  if (read.ok) return [];
  expect(read.error.errors.every(({ fix }) => fix.length > 10)).toBe(true);
  return read.error.errors.map(({ sheet, row, column, read: told }) => `${sheet} ${row} ${column}: ${told}`);
}

describe('what is wrong with a table is told at its cell', () => {
  it.each([
    ['a price below nought', 'sku;unit;price\nA;each;-1\n', ['t 2 C (price): -1']],
    ['a price that is left out', 'sku,unit,price\nA,each,\n', ['t 2 C (price): ']],
    ['an item priced twice', 'sku,unit,price\nA,each,1\n\nA,each,2\n', ['t 4 A (sku): A']],
    ['breaks out of order', 'sku,unit,price,from\nA,each,1,\nA,,0.9,50\nA,,0.8,20\n', ['t 4 D (from): 20']],
    ['a break without its item', 'sku,unit,price,from\nA,each,1,\nB,,0.9,50\n', ['t 3 A (sku): B']],
    ['a break of a customer without a price', 'sku,unit,price,customer,from\nA,each,1,,\nA,,0.9,Own,50\n', ['t 3 E (from): 50']],
    ['a customer priced twice', 'sku,unit,price,customer\nA,each,1,\nA,,0.9,Own\nA,,0.8,Own\n', ['t 4 D (customer): Own']],
    ['a tier that nobody is in', 'sku,unit,price,tier\nA,each,1,\nA,,0.9,gold\n', ['t 3 D (tier): gold']],
    ['another bundle on a row of a break', 'sku,unit,price,bundle,from\nA,each,1,12,\nA,,0.9,10,50\n', ['t 3 D (bundle): 10']],
    ['a column nobody knows', 'sku,unit,price,colour\nA,each,1,\n', ['t 1 D: colour']],
    ['a sheet nobody knows', 'mark,length\nA,1\n', ['t 1 null: mark, length']],
    ['a discount of 100 %', 'group,rate\nforms,1\n', ['t 2 B (rate): 1']],
    ['a tax said twice', 'place,name,rate\nX,vat,0.1\nX,vat,0.2\n', ['t 3 B (name): vat']],
    ['freight neither taxed nor not', 'place,rate,freight\nX,0.1,perhaps\n', ['t 2 C (freight): perhaps']],
  ])('%s', async (_, text, expected) => {
    expect(await wrong(['t', text])).toEqual(expected);
  });

  it('a setting, a second place in a zone and a truck that is missing', async () => {
    expect(await wrong(['l', 'key,value\nfreight.truck.pieces,many\ncolour,red\ncode,D\n'], ['z', 'zone,place,perTruck\nA,X,1\nB,X,1\n'])).toEqual([
      'l 3 A (key): colour', 'l 4 A (key): code', 'l 2 B (value): many', 'z 3 B (place): X',
    ]);
  });

  it('a date, an error and a formula nobody calculated in a workbook are no text', async () => {
    const book = new ExcelJS.Workbook();
    const sheet = book.addWorksheet('prices');
    sheet.addRows([['sku', 'unit', 'price'], ['A', 'each', 23.4], ['B', 'each', new Date('2026-01-01')], ['C', 'each', { formula: 'B1*2' }], ['D', 'each', 0.1 + 0.2]]);
    const read = await readPriceFiles([{ name: 'p.xlsx', bytes: new Uint8Array(await book.xlsx.writeBuffer()) }, file('list.csv', LIST)]);
    const told = read.ok ? [] : read.error.errors.map(({ sheet: name, row, column, read: text }) => `${name} ${row} ${column}: ${text}`);
    expect(told).toEqual(expect.arrayContaining(['prices 3 C: 46023 (a date)', 'prices 4 C: ', 'prices 5 C (price): 0.30000000000000004']));
    expect(told.some((line) => line.includes(' 2 '))).toBe(false);
  });

  it('files that hold no list are refused with their name', async () => {
    for (const [name, text, code] of [['a.json', '{', 'unreadable'], ['b.csv', 'sku,price\n"A,1\n', 'unreadable'], ['c.csv', '', 'unreadable']] as const) {
      const read = await readPriceFiles([file(name, text)]);
      expect(read).toMatchObject({ ok: false, error: { code, errors: [{ sheet: name }] } });
    }
  });
});
