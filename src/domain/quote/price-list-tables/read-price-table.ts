import type { InputErrorList } from '../../evidence/input-error.js';
import { columnLetters, type CellValue, type SheetRow } from '../../schedule/tabular/sheet-row.js';
import { UnusableCell } from '../../schedule/unusable-cell.js';
import type { PriceRow, PriceTable } from './read-cells.js';
import { NEEDED_COLUMNS, PRICE_SHEETS, SHEET_COLUMNS, sheetOfHeader } from './sheet-columns.js';

/**
 * One sheet as a table: the first row that holds anything is its header. Nothing is passed over: a sheet or a column that nobody
 * knows is an error, since a price that is not read would be a wrong price.
 *
 * @returns none where the sheet is empty or not known
 */
export function readPriceTable(name: string, rows: readonly SheetRow[], errors: InputErrorList): readonly PriceTable[] {
  const [header, ...below] = rows.filter(({ cells }) => cells.size > 0);
  if (!header) return [];
  const columns = new Map<string, number>();
  const wrong = (row: number, column: number | null, read: string, fix: string): void =>
    errors.add({ sheet: name, row, column: column === null ? null : columnLetters(column), pointer: null, read, fix });
  const sheet = sheetOfHeader([...header.cells.values()].map(textOf));
  if (!sheet) {
    wrong(header.row, null, [...header.cells.values()].map(textOf).join(', '), `a header of one of the sheets: ${PRICE_SHEETS.map((each) => `${each} (${NEEDED_COLUMNS[each].join(', ')})`).join('; ')}`);
    return [];
  }
  for (const [column, cell] of header.cells) {
    const text = textOf(cell);
    if (!SHEET_COLUMNS[sheet].includes(text)) wrong(header.row, column, text, `one of ${SHEET_COLUMNS[sheet].join(', ')}`);
    else if (columns.has(text)) wrong(header.row, column, text, 'each column once');
    else columns.set(text, column);
  }
  const names = new Map([...columns].map(([text, column]) => [column, text]));
  return [{ name, sheet, columns, rows: below.map((row) => readRow(row, names, wrong)) }];
}

function readRow({ row, cells }: SheetRow, names: ReadonlyMap<number, string>, wrong: (row: number, column: number, read: string, fix: string) => void): PriceRow {
  const texts = new Map<string, string>();
  for (const [column, cell] of cells) {
    const name = names.get(column);
    if (cell instanceof UnusableCell) wrong(row, column, cell.text, 'a text or a number: format the cell as text and type it again');
    else if (name === undefined) wrong(row, column, textOf(cell), 'an empty cell: its column has no name that is known');
    else texts.set(name, textOf(cell));
  }
  return { row, cells: texts };
}

/** Digits of a number as a spreadsheet holds it, never rounded: what is no decimal of a price is told. */
const textOf = (cell: CellValue): string => (cell instanceof UnusableCell ? cell.text : String(cell));
