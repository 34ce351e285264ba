import { moneyText } from '../quantity/money.js';
import type { Quote, QuoteLine, QuoteTax, TaxEntry } from '../quote/quote.js';
import { INK, lineHeight } from './pdf-pages.js';
import type { PdfPages } from './pdf-pages.js';
import type { QuotePdfInput } from './quote-pdf-input.js';
import { wrapText } from './text-width.js';

const PAD = 3.2;
const GAP = 8;
const TOTALS_HEIGHT = 74;

/** Right edges of the figures and left edges of the words, from the page's own width. */
interface Columns {
  readonly n: number;
  readonly sku: number;
  readonly text: number;
  readonly textWidth: number;
  readonly skuWidth: number;
  readonly quantity: number;
  readonly unit: number;
  readonly price: number;
  readonly amount: number;
}

function columnsOf(pages: PdfPages): Columns {
  const { left, right } = pages;
  const amount = right - 4;
  const price = amount - 78;
  const unit = price - 88;
  const quantity = unit - 6;
  const sku = left + 24 + GAP;
  const text = sku + 82;
  return { n: left + 22, sku, skuWidth: 82 - GAP, text, textWidth: quantity - 42 - text, quantity, unit, price, amount };
}

/** The table of lines, its header repeated on every page it reaches, then subtotal, tax and total. */
export function writeLines(pages: PdfPages, input: QuotePdfInput): void {
  const { quote } = input;
  const columns = columnsOf(pages);
  pages.heading('What is quoted', 60);
  writeTableHead(pages, columns, quote.currency);
  const last = quote.lines.length - 1;
  quote.lines.forEach((line, i) => {
    const rows = wordsOf(line, columns);
    const height = Math.max(rows.text.length, rows.sku.length) * lineHeight() + 2 * PAD;
    if (pages.ensure(i === last ? height + totalsHeight(quote) : height)) writeTableHead(pages, columns, quote.currency);
    writeRow(pages, columns, line, rows, quote.currency, height);
  });
  writeTotals(pages, input);
}

function writeTableHead(pages: PdfPages, columns: Columns, currency: string): void {
  const height = lineHeight(8) + 2 * PAD;
  pages.doc.rect(pages.left, pages.y, pages.width, height).fill(INK.accent);
  const style = { size: 8, bold: true, colour: '#ffffff' };
  const top = pages.y + PAD;
  pages.write('No.', columns.n, top, { ...style, anchor: 'end' });
  pages.write('Item', columns.sku, top, style);
  pages.write('Description', columns.text, top, style);
  pages.write('Quantity', columns.quantity, top, { ...style, anchor: 'end' });
  pages.write('Unit', columns.unit, top, style);
  pages.write('Unit price', columns.price, top, { ...style, anchor: 'end' });
  pages.write(`Amount ${currency}`, columns.amount, top, { ...style, anchor: 'end' });
  pages.y += height;
}

interface RowWords {
  readonly sku: readonly string[];
  readonly text: readonly string[];
}

const wordsOf = (line: QuoteLine, columns: Columns): RowWords => ({
  sku: wrapText(line.sku, 8.5, columns.skuWidth, true),
  text: wrapText(line.text, 8.5, columns.textWidth),
});

/** Figures stand on the last line of the words, so that the words of one line are read in one go. */
function writeRow(pages: PdfPages, columns: Columns, line: QuoteLine, rows: RowWords, currency: string, height: number): void {
  const top = pages.y + PAD;
  const lastTop = top + (Math.max(rows.text.length, rows.sku.length) - 1) * lineHeight();
  pages.write(String(line.n), columns.n, top, { anchor: 'end', colour: INK.muted });
  rows.sku.forEach((part, i) => pages.write(part, columns.sku, top + i * lineHeight(), { bold: true }));
  rows.text.forEach((part, i) => pages.write(part, columns.text, top + i * lineHeight()));
  pages.write(grouped(line.quantity), columns.quantity, lastTop, { anchor: 'end' });
  pages.write(line.unit, columns.unit, lastTop, { colour: INK.muted });
  pages.write(line.unitPrice, columns.price, lastTop, { anchor: 'end' });
  pages.write(amount(line.amountMinor, currency), columns.amount, lastTop, { anchor: 'end' });
  pages.y += height;
  pages.rule(pages.y, INK.rule, 0.4);
}

const grouped = (quantity: number): string => {
  const [whole = '', part] = String(quantity).split('.');
  return `${whole.replace(/\B(?=(\d{3})+$)/g, ',')}${part === undefined ? '' : `.${part}`}`;
};

/** The amount without its currency, which stands in the column's head. */
const amount = (minor: number, currency: string): string => moneyText(minor, currency).slice(currency.length + 1);

function writeTotals(pages: PdfPages, { quote }: QuotePdfInput): void {
  pages.ensure(totalsHeight(quote));
  const columns = columnsOf(pages);
  const label = pages.left + pages.width * 0.5;
  const row = (words: string, minor: number, strong: boolean): void => {
    const size = strong ? 11 : 9;
    if (strong) pages.doc.rect(label - 8, pages.y - 1, pages.right - label + 8, lineHeight(size) + 6).fill(INK.shade);
    pages.write(words, label, pages.y + 2, { size, bold: strong });
    pages.write(moneyText(minor, quote.currency), columns.amount, pages.y + 2, { size, bold: strong, anchor: 'end' });
    pages.y += lineHeight(size) + (strong ? 8 : 3);
  };
  pages.y += 6;
  row('Subtotal', quote.subtotalMinor, false);
  for (const { words, minor } of taxRows(quote)) row(words, minor, false);
  row('Total', quote.totalMinor, true);
  const { range, priceList, engine } = quote;
  const basis =
    `Counted on range ${range.code} version ${range.version}, engine ${engine}; ` +
    `prices of list ${priceList.code} in force from ${priceList.inForceFrom}.`;
  pages.paragraph(basis, pages.left, pages.width, { size: 7.5, colour: INK.muted });
}

/** Room for subtotal, each tax and total. */
const totalsHeight = ({ taxes }: Pick<Quote, 'taxes'>): number => TOTALS_HEIGHT + Math.max(0, taxes.length - 1) * (lineHeight(9) + 3);

/** Each tax on a row of its own; where none is charged, one row that says why. */
function taxRows({ tax, taxes, taxMinor }: Pick<Quote, 'tax' | 'taxes' | 'taxMinor'>): readonly { readonly words: string; readonly minor: number }[] {
  if (taxes.length === 0) return [{ words: taxWords(tax), minor: taxMinor }];
  return taxes.map((each) => ({ words: entryWords(each), minor: each.amountMinor }));
}

/** `Sales tax 8.25 %, Alder County`. */
const entryWords = ({ name, rate, place }: TaxEntry): string => `${name.charAt(0).toUpperCase()}${name.slice(1)} ${percent(rate)} %, ${place}`;

/** `Tax 8.25 %, Alder County`; where none is charged, why. */
export function taxWords(tax: QuoteTax): string {
  if (tax.rate !== null) return `Tax ${percent(tax.rate)} %, ${tax.place}`;
  if (tax.reason === 'exempt') return `No tax charged: exempt, certificate ${tax.certificate}`;
  return tax.reason === 'place-not-stated'
    ? 'No tax charged: place not stated'
    : `No tax charged: ${tax.place} is not on the list`;
}

/** A decimal rate as a percentage, exactly: `0.0825` is `8.25`. */
export function percent(rate: string): string {
  const [whole = '0', part = ''] = rate.split('.');
  const digits = part.padEnd(2, '0');
  const shifted = `${whole}${digits.slice(0, 2)}`.replace(/^0+(?=\d)/, '');
  const rest = digits.slice(2).replace(/0+$/, '');
  return rest === '' ? shifted : `${shifted}.${rest}`;
}
