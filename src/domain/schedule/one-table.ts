import { shownText } from '../evidence/input-error.js';
import { FileRefusal } from './file-refusal.js';
import { JOB_HEADERS, type RowKind, type TableKind } from './tabular/columns.js';
import { headerRowOf, isNumeric, ROWS_TO_HEADER } from './tabular/header-row.js';
import { bracketed, kindOfHeader, plainHeader, readHeader } from './tabular/header.js';
import { cellText } from './tabular/read-table.js';
import type { SheetRow } from './tabular/sheet-row.js';

/** Cells of a row that are looked at, and that an error shows. */
const HEADER_CELLS = 256;
const SHOWN_CELLS = 8;
/** Columns a row names to be a second header. A row of settings may name two by chance. */
const NAMED = { job: 3, table: 2 } as const;
const TOTAL = /^(?:grand |sub[- ]?)?totals?\b/i;

interface FoundHeader {
  readonly row: number;
  readonly kind: TableKind;
}

/**
 * The rows of a sheet or file, refused where it holds more than one table, one below or beside the other, or a row of totals: of a
 * second table nothing would be counted, and a total would be counted as one more of what it adds up.
 *
 * A sheet that is no table may hold what it likes. Rows with a number in them are no header.
 */
export async function* oneTable(sheet: string, rows: AsyncIterable<SheetRow>): AsyncGenerator<SheetRow> {
  const first: SheetRow[] = [];
  let header: FoundHeader | null = null;
  for await (const row of rows) {
    if (header) checkBelow(sheet, header, row);
    else if (row.cells.size > 0 && first.push(row) === ROWS_TO_HEADER) header = checkFirst(sheet, first);
    yield row;
  }
  if (!header) checkFirst(sheet, first);
}

/** The header among the first rows, once these have been checked. */
function checkFirst(sheet: string, first: readonly SheetRow[]): FoundHeader | null {
  const found = headerRowOf(first.map(textsOf));
  const row = found && first[found.index];
  if (!row) return null;
  const header = { row: row.row, kind: found.kind };
  const beside = found.kind === 'job' ? textsOf(row).filter((text) => !isJobHeader(text)) : [];
  if (named(beside) > NAMED.table)
    throw new FileRefusal('invalid', sheet, shown(row), 'one table to a sheet: move the columns key and value to a sheet of their own', row.row);
  first.slice(0, Math.max(0, found.index - 1)).forEach((above) => refuseHeader(sheet, header, above));
  first.slice(found.index + 1).forEach((below) => checkBelow(sheet, header, below));
  return header;
}

function checkBelow(sheet: string, header: FoundHeader, row: SheetRow): void {
  refuseHeader(sheet, header, row);
  const [label] = row.cells.values();
  if (typeof label !== 'string' || !TOTAL.test(label)) return;
  const fix = `rows of ${header.kind === 'job' ? 'settings' : header.kind} only: this row is a total; delete it`;
  throw new FileRefusal('invalid', sheet, shown(row), fix, row.row);
}

/** A second header, or the same one again. */
function refuseHeader(sheet: string, header: FoundHeader, row: SheetRow): void {
  if (row.cells.size < NAMED.table || row.cells.size > HEADER_CELLS) return;
  for (const cell of row.cells.values()) if (typeof cell !== 'string' || isNumeric(cell)) return;
  if (named(textsOf(row)) < (header.kind === 'job' ? NAMED.job : NAMED.table)) return;
  const fix = `one table to a sheet, with one header row: row ${header.row} is the header of ${header.kind}; move the other table to a sheet of its own`;
  throw new FileRefusal('invalid', sheet, shown(row), fix, row.row);
}

/** How many columns of one kind a row names as a header. */
function named(texts: readonly string[]): number {
  const kind = texts.length === 0 ? undefined : kindOfHeader(texts);
  if (kind === undefined) return 0;
  if (kind === 'job') return NAMED.job;
  return new Set(texts.flatMap((text) => readHeader(kind as RowKind, text)?.rule.field ?? [])).size;
}

const isJobHeader = (text: string): boolean => ([...JOB_HEADERS.key, ...JOB_HEADERS.value] as readonly string[]).includes(plainHeader(bracketed(text).words));
const textsOf = ({ cells }: SheetRow): readonly string[] => (cells.size > HEADER_CELLS ? [] : [...cells.values()].map(cellText));
const shown = (row: SheetRow): string => shownText(textsOf(row).slice(0, SHOWN_CELLS).join(', '));
