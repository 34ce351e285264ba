import { InputErrorList, type InputError } from '../../evidence/input-error.js';
import { failure, success, type Result } from '../../evidence/result.js';
import { contentKind } from '../../schedule/content-kind.js';
import { FileRefusal, type RefusalCode } from '../../schedule/file-refusal.js';
import type { SheetRow } from '../../schedule/tabular/sheet-row.js';
import { textSlices } from '../../schedule/text-encoding.js';
import { workbookSheets } from '../../schedule/xlsx/workbook.js';
import { readPriceList } from '../read-price-list.js';
import { listOfTables } from './list-of-tables.js';
import { priceCsvRows } from './price-csv.js';
import type { PriceTable } from './read-cells.js';
import { readPriceTable } from './read-price-table.js';

export interface PriceFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface PriceFilesRefusal {
  readonly code: RefusalCode;
  readonly errors: readonly InputError[];
}

const TAKEN = 'a price list: JSON, an .xlsx workbook or CSV files';

/**
 * The document of a price list that came as files: one JSON document, or tables in workbooks and CSV files, which make one list together.
 *
 * @returns a document that `readPriceList` takes; else every error, at most 200, those of tables with sheet, row and column
 */
export async function readPriceFiles(files: readonly PriceFile[]): Promise<Result<Readonly<Record<string, unknown>>, PriceFilesRefusal>> {
  try {
    const [first] = files;
    if (files.length === 1 && first && contentKind(first.bytes) === 'json') return checked(readJson(first), [], (error) => error);
    const errors = new InputErrorList();
    const tables: PriceTable[] = [];
    for (const file of files) for (const { name, rows } of await sheetsOf(file)) tables.push(...readPriceTable(name, rows, errors));
    const { document, errors: wrong, placed } = listOfTables(tables);
    return checked(document, [...errors.list(), ...wrong], placed);
  } catch (error) {
    if (!(error instanceof FileRefusal)) throw error;
    return failure({ code: error.code, errors: [{ sheet: error.sheet, row: error.row, column: null, pointer: null, read: error.read, fix: error.fix }] });
  }
}

function checked(document: unknown, before: readonly InputError[], placed: (error: InputError) => InputError): Result<Readonly<Record<string, unknown>>, PriceFilesRefusal> {
  const list = readPriceList(document);
  if (list.ok && before.length === 0) return success(document as Readonly<Record<string, unknown>>);
  const errors = new InputErrorList();
  for (const error of [...before, ...(list.ok ? [] : list.error.map(placed))]) errors.add(error);
  return failure({ code: 'invalid', errors: errors.list() });
}

async function sheetsOf({ name, bytes }: PriceFile): Promise<readonly { readonly name: string; readonly rows: readonly SheetRow[] }[]> {
  const kind = contentKind(bytes);
  if (kind === 'text') return [{ name, rows: priceCsvRows(name, bytes) }];
  if (kind === 'json') throw new FileRefusal('invalid', name, 'JSON beside other files', 'one JSON document by itself, or tables');
  if (kind !== 'zip') throw new FileRefusal(kind === 'empty' ? 'unreadable' : 'wrong-type', name, '', TAKEN);
  const sheets: { name: string; rows: SheetRow[] }[] = [];
  for (const sheet of await workbookSheets(name, bytes)) {
    const rows: SheetRow[] = [];
    for await (const row of sheet.rows()) rows.push(row);
    sheets.push({ name: sheet.name, rows });
  }
  return sheets;
}

function readJson({ name, bytes }: PriceFile): unknown {
  try {
    return JSON.parse([...textSlices(name, bytes)].join(''));
  } catch (error) {
    if (error instanceof FileRefusal) throw error;
    throw new FileRefusal('unreadable', name, '', 'JSON that parses');
  }
}
