import { FileRefusal } from '../file-refusal.js';
import { headerRowOf, ROWS_TO_HEADER } from '../tabular/header-row.js';
import { JOB_HEADERS, type TableKind } from '../tabular/columns.js';
import { bracketed, plainHeader, readHeader } from '../tabular/header.js';
import { cellText } from '../tabular/read-table.js';
import { columnLetters, type SheetRow } from '../tabular/sheet-row.js';
import type { CellBlock } from './cell-reference.js';
import type { SheetLayout } from './sheet-rows.js';

/** Rows and merged blocks that one refusal names. */
const NAMED = 12;
/** Cells of a row that are looked at for a header. */
const HEADER_CELLS = 256;

export interface VisibleSheet {
  readonly file: string;
  readonly name: string;
  readonly hidden: boolean;
}

/**
 * The rows of a sheet, refused where what a person sees of its table is not what is stored: a hidden sheet, hidden rows (a filter
 * hides them too), cells merged over several rows or several known columns. Each has two readings, counted or not, one value or
 * several; none is guessed.
 *
 * Sheets that are no table may hide and merge as they like, and so may titles, the header and columns that are not read.
 */
export async function* visibleRows(sheet: VisibleSheet, rows: AsyncIterable<SheetRow>, layout: SheetLayout): AsyncGenerator<SheetRow> {
  const first: SheetRow[] = [];
  let last = 0;
  for await (const row of rows) {
    if (row.cells.size > 0 && first.length < ROWS_TO_HEADER && first.push(row) === ROWS_TO_HEADER) refuseHidden(sheet, headerOf(first));
    last = row.row;
    yield row;
  }
  const header = headerOf(first);
  if (header === null) return;
  refuseHidden(sheet, header);
  refuseHiddenRows(sheet, layout.hiddenRows.filter((row) => row > header.row));
  refuseMerged(sheet, layout.merged.filter((block) => block.to.row > header.row && block.from.row <= last && isAmbiguous(block, header)));
}

interface ReadHeader {
  readonly row: number;
  /** Columns that are read. */
  readonly columns: readonly number[];
}

/** The header of the sheet; null where it is no table. */
function headerOf(first: readonly SheetRow[]): ReadHeader | null {
  const found = headerRowOf(first.map(({ cells }) => (cells.size > HEADER_CELLS ? [] : [...cells.values()].map(cellText))));
  const row = found && first[found.index];
  if (!row) return null;
  return { row: row.row, columns: [...row.cells].flatMap(([column, cell]) => (isRead(found.kind, cellText(cell)) ? [column] : [])) };
}

function isRead(kind: TableKind, header: string): boolean {
  if (kind !== 'job') return readHeader(kind, header) !== undefined;
  const name = plainHeader(bracketed(header).words);
  return ([...JOB_HEADERS.key, ...JOB_HEADERS.value] as readonly string[]).includes(name);
}

function isAmbiguous({ from, to }: CellBlock, { columns }: ReadHeader): boolean {
  const covered = columns.filter((column) => column >= from.column && column <= to.column).length;
  return covered > 1 || (covered === 1 && to.row > from.row);
}

function refuseHidden({ name, hidden, file }: VisibleSheet, header: ReadHeader | null): void {
  if (!hidden || header === null) return;
  const fix = 'a table that can be seen: unhide the sheet if it counts, delete it if it does not';
  throw new FileRefusal('invalid', name, `a hidden sheet of ${file}`, fix, header.row);
}

function refuseHiddenRows({ name }: VisibleSheet, rows: readonly number[]): void {
  const [row] = rows;
  if (row === undefined) return;
  const fix = 'rows that can be seen: clear the filter and unhide those that count, delete those that do not';
  throw new FileRefusal('invalid', name, `hidden ${rows.length === 1 ? 'row' : 'rows'} ${named(rows.map(String))}`, fix, row);
}

function refuseMerged({ name }: VisibleSheet, blocks: readonly CellBlock[]): void {
  const [block] = blocks.toSorted((a, b) => a.from.row - b.from.row || a.from.column - b.from.column);
  if (!block) return;
  const read = `merged cells ${named(blocks.map(({ written }) => written))}`;
  const fix = `one value in each cell below the header: unmerge column ${columnLetters(block.from.column)} and write the value in every row it holds for`;
  throw new FileRefusal('invalid', name, read, fix, block.from.row);
}

const named = (texts: readonly string[]): string =>
  texts.length > NAMED ? `${texts.slice(0, NAMED).join(', ')} and ${texts.length - NAMED} more` : texts.join(', ');
