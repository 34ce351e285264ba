import { pipeline, Readable } from 'node:stream';
import { parse as parseStream } from 'csv-parse';
import { parse as parseStart } from 'csv-parse/sync';
import { FileRefusal } from '../file-refusal.js';
import { oneTable } from '../one-table.js';
import { headerRowOf, ROWS_TO_HEADER } from '../tabular/header-row.js';
import type { CellValue, SheetRow } from '../tabular/sheet-row.js';
import { textSlices, textStart } from '../text-encoding.js';

const DELIMITERS = [',', ';', '\t'] as const;
/** A row longer than this has a quotation mark that is never closed. */
const MAX_ROW_CHARACTERS = 2_000_000;
const FORMAT = {
  relax_column_count: true,
  relax_quotes: true,
  skip_empty_lines: false,
  record_delimiter: ['\r\n', '\n', '\r'],
  max_record_size: MAX_ROW_CHARACTERS,
};

/**
 * The rows of a CSV file, read slice by slice as they are asked for: comma, semicolon or tab (the one that makes most of the header row),
 * quoted fields, any line ends. An inch mark inside a field needs no quoting. Rows are numbered as a spreadsheet shows them.
 */
export const csvRows = (name: string, bytes: Uint8Array): AsyncGenerator<SheetRow> => oneTable(name, rowsOf(name, bytes));

async function* rowsOf(name: string, bytes: Uint8Array): AsyncGenerator<SheetRow> {
  const parser = parseStream({ ...FORMAT, delimiter: delimiterOf(textStart(bytes) ?? '') });
  pipeline(Readable.from(textSlices(name, bytes)), parser, () => undefined);
  let row = 0;
  try {
    for await (const record of parser) {
      row += 1;
      yield { row, cells: cellsOf(record as readonly string[]) };
    }
  } catch (error) {
    throw error instanceof FileRefusal
      ? error
      : new FileRefusal(
          'unreadable',
          name,
          '',
          'rows of cells, with every quotation mark that opens a cell closed again',
          row + 1,
        );
  }
}

function cellsOf(record: readonly string[]): ReadonlyMap<number, CellValue> {
  const cells = new Map<number, CellValue>();
  record.forEach((cell, index) => {
    const text = cell.trim();
    if (text !== '') cells.set(index + 1, text);
  });
  return cells;
}

/** The delimiter under which a header says most; comma where none says anything. */
export function delimiterOf(start: string): string {
  const weighed = DELIMITERS.map((delimiter) => ({ delimiter, weight: weightOf(firstRows(start, delimiter)) }));
  return weighed.toSorted((a, b) => b.weight - a.weight)[0]?.delimiter ?? ',';
}

/** The first rows that hold anything, under one delimiter; those before a fault where there is one. */
function firstRows(start: string, delimiter: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  const keep = (record: readonly string[]): null => {
    rows.push(record.map((cell) => cell.trim()).filter((cell) => cell !== ''));
    return null;
  };
  try {
    parseStart(start, {
      ...FORMAT,
      delimiter,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      to: ROWS_TO_HEADER,
      bom: true,
      on_record: keep,
    });
  } catch {
    return rows;
  }
  return rows;
}

/** Known columns count most, then how many there are. */
function weightOf(rows: readonly (readonly string[])[]): number {
  const header = headerRowOf(rows);
  return header ? 1000 + header.known * 1000 + Math.min(rows[header.index]?.length ?? 0, 900) : 0;
}
