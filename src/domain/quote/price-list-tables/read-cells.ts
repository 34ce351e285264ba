import type { InputErrorList } from '../../evidence/input-error.js';
import { columnLetters } from '../../schedule/tabular/sheet-row.js';
import { WHOLE_FIELDS, type PriceSheet } from './sheet-columns.js';

/** One table as it was read: where it stood, its header, and the texts of its rows by column name. */
export interface PriceTable {
  /** What errors call it: the sheet of a workbook, or the file. */
  readonly name: string;
  readonly sheet: PriceSheet;
  /** Column number from 1 by its name. */
  readonly columns: ReadonlyMap<string, number>;
  readonly rows: readonly PriceRow[];
}

export interface PriceRow {
  /** As a spreadsheet numbers it. */
  readonly row: number;
  readonly cells: ReadonlyMap<string, string>;
}

export interface TablePlace {
  readonly table: PriceTable;
  readonly row: number;
}

/** `C (price)`, as a spreadsheet letters the column; null where it is not there. */
export function columnName({ columns }: PriceTable, name: string): string | null {
  const number = columns.get(name);
  return number === undefined ? null : `${columnLetters(number)} (${name})`;
}

/** The document's value of a cell: a whole number or yes and no where the field is one; else the text, which is then told as wrong. */
export function fieldValue(field: string, text: string): unknown {
  if (WHOLE_FIELDS.has(field)) return /^\d{1,10}$/.test(text) ? Number(text) : text;
  return text;
}

/** Yes or no. */
export function flagValue(text: string): unknown {
  const word = text.toLowerCase();
  return ['yes', 'true'].includes(word) ? true : ['no', 'false'].includes(word) ? false : text;
}

/** Notes one thing wrong with a cell of a table. */
export function cellError(errors: InputErrorList, { table, row }: TablePlace, column: string, read: string, fix: string): void {
  errors.add({ sheet: table.name, row, column: columnName(table, column), pointer: null, read, fix });
}
