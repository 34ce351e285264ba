import { parse } from 'csv-parse/sync';
import { FileRefusal } from '../../schedule/file-refusal.js';
import type { SheetRow } from '../../schedule/tabular/sheet-row.js';
import { textSlices } from '../../schedule/text-encoding.js';
import type { PriceTables } from './list-tables.js';
import { SHEET_COLUMNS, sheetOfHeader, type PriceSheet } from './sheet-columns.js';

const DELIMITERS = [',', ';', '\t'] as const;
const HELD = /^'+[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;
const COMMAND = /^'*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/;

/** One sheet as CSV (RFC 4180), in UTF-8 with its mark. A text that a spreadsheet would take for a formula is held by an apostrophe before it. */
export function priceCsv(tables: PriceTables, sheet: PriceSheet): string {
  const line = (cells: readonly string[]): string => `${cells.map(quoted).join(',')}\r\n`;
  return `\ufeff${[SHEET_COLUMNS[sheet], ...tables[sheet]].map(line).join('')}`;
}

function quoted(text: string): string {
  const held = COMMAND.test(text) ? `'${text}` : text;
  return /[",;\t\r\n]/.test(held) ? `"${held.replaceAll('"', '""')}"` : held;
}

/** The rows of a CSV file: comma, semicolon or tab, the first of them that makes its first line a header. An apostrophe that holds a text is taken away. */
export function priceCsvRows(name: string, bytes: Uint8Array): readonly SheetRow[] {
  const text = [...textSlices(name, bytes)].join('');
  const [header = ''] = text.trimStart().split(/\r\n|\n|\r/, 1);
  const delimiter = DELIMITERS.find((each) => sheetOfHeader(header.split(each).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'))) !== null) ?? ',';
  return records(name, text, delimiter).map((record, index) => ({
    row: index + 1,
    cells: new Map(record.flatMap((cell, column) => (cell.trim() === '' ? [] : [[column + 1, released(cell.trim())] as const]))),
  }));
}

function records(name: string, text: string, delimiter: string): readonly (readonly string[])[] {
  try {
    return parse(text, { delimiter, relax_column_count: true, skip_empty_lines: false, record_delimiter: ['\r\n', '\n', '\r'], bom: true });
  } catch {
    throw new FileRefusal('unreadable', name, '', 'rows of cells, with every quotation mark that opens a cell closed again');
  }
}

const released = (text: string): string => (HELD.test(text) ? text.slice(1) : text);
