import { shownText, type InputError } from '../../evidence/input-error.js';
import { FileRefusal } from '../file-refusal.js';
import { MAX_FEATURES, MAX_OPENINGS, MAX_STOREYS, MAX_UNKNOWN, MAX_WALLS } from '../schedule-limits.js';
import { UnusableCell } from '../unusable-cell.js';
import { COLUMNS, JOB_HEADERS, NEEDED, type RowKind, type TableKind } from './columns.js';
import { bracketed, plainHeader, readHeader } from './header.js';
import { headerRowOf, looksLikeData, ROWS_TO_HEADER } from './header-row.js';
import { columnLetters, type CellValue, type SheetRow } from './sheet-row.js';
import type { StrangeSheet, Table, TableColumn } from './table.js';

const MAX_ROWS: Readonly<Record<TableKind, number>> = {
  walls: MAX_WALLS,
  openings: MAX_OPENINGS,
  features: MAX_FEATURES,
  storeys: MAX_STOREYS,
  job: 500,
};

const MAX_COLUMNS = 256;
/** Cells of a row that an error shows. */
const SHOWN_CELLS = 8;

/** Rows already read of each kind, over all tables of an upload. */
export type RowCount = Map<TableKind, number>;

/** What a sheet is called in errors, and in its workbook where it is of one. */
export interface SheetName {
  readonly sheet: string;
  readonly name: string | null;
}

/**
 * Reads one sheet as a table. Its header stands in the first ten rows that hold anything and decides what the table holds.
 *
 * Rows above the header are titles and are skipped; one that holds data is an error, so that nothing is left uncounted in silence.
 * Reading stops at the first row past the limit of its kind, and after the first rows of a sheet that is no table.
 */
export async function readTable(from: SheetName, rows: AsyncIterable<SheetRow>, count: RowCount): Promise<Table | StrangeSheet> {
  const first: SheetRow[] = [];
  let table: OpenTable | undefined;
  for await (const row of rows) {
    if (row.cells.size === 0) continue;
    if (table) takeRow(table, row, count);
    else if (first.push(row) === ROWS_TO_HEADER) {
      table = openTable(from.sheet, first, count);
      if (!table) return strangeSheet(from, first);
    }
  }
  table ??= openTable(from.sheet, first, count);
  return table ? { ...table.header, rows: table.rows } : strangeSheet(from, first);
}

interface OpenTable {
  readonly header: Omit<Table, 'rows'>;
  readonly rows: SheetRow[];
}

/** The table whose header is among the first rows of a sheet, with the rows after it; undefined where none is. */
function openTable(sheet: string, first: readonly SheetRow[], count: RowCount): OpenTable | undefined {
  const found = headerRowOf(first.map(headerCells));
  if (!found) {
    const wide = first.find(({ cells }) => cells.size > MAX_COLUMNS);
    if (!wide) return undefined;
    throw new FileRefusal('invalid', sheet, `${wide.cells.size} columns`, `a table of at most ${MAX_COLUMNS} columns`, wide.row);
  }
  const row = first[found.index] as SheetRow;
  const header = found.kind === 'job' ? jobHeader(sheet, row) : tableHeader(found.kind, sheet, row);
  const errors = [...first.slice(0, found.index).flatMap((above) => dataAbove(sheet, above, row)), ...header.errors];
  const table: OpenTable = { header: { ...header, errors }, rows: [] };
  for (const below of first.slice(found.index + 1)) takeRow(table, below, count);
  return table;
}

/** A row too wide to be a header stands for no header at all. */
const headerCells = ({ cells }: SheetRow): readonly string[] => (cells.size > MAX_COLUMNS ? [] : [...cells.values()].map(cellText));

function dataAbove(sheet: string, { row, cells }: SheetRow, header: SheetRow): readonly InputError[] {
  const texts = [...cells.values()].slice(0, MAX_COLUMNS).map(cellText);
  if (!looksLikeData(texts)) return [];
  const fix = `the header row above all rows of data: it is row ${header.row}, and only titles may stand above it`;
  return [{ sheet, row, column: null, pointer: null, read: shownText(texts.slice(0, SHOWN_CELLS).join(', ')), fix }];
}

function takeRow({ header: { kind, sheet }, rows }: OpenTable, row: SheetRow, count: RowCount): void {
  const soFar = (count.get(kind) ?? 0) + 1;
  if (soFar > MAX_ROWS[kind]) {
    const most = MAX_ROWS[kind].toLocaleString('en-US');
    const fix = `at most ${most} ${kind}: split the schedule into several jobs`;
    throw new FileRefusal('too-large', sheet, `more than ${most} ${kind}`, fix, row.row);
  }
  count.set(kind, soFar);
  rows.push(row);
}

/** The widest of the first rows is most like a header: a title has a cell or two. */
function strangeSheet({ sheet, name }: SheetName, first: readonly SheetRow[]): StrangeSheet {
  const [widest] = first.toSorted((a, b) => b.cells.size - a.cells.size);
  const headers = [...(widest?.cells.values() ?? [])].slice(0, SHOWN_CELLS).map((cell) => shownText(cellText(cell)));
  return { sheet, name, row: widest?.row ?? 1, headers };
}

export const cellText = (cell: CellValue): string => (cell instanceof UnusableCell ? cell.text : String(cell));

function jobHeader(sheet: string, { row, cells }: SheetRow): Omit<Table, 'rows'> {
  const columns = new Map<string, TableColumn>();
  for (const [column, cell] of cells) {
    const text = cellText(cell);
    const name = plainHeader(bracketed(text).words);
    const field = (['key', 'value'] as const).find((each) => (JOB_HEADERS[each] as readonly string[]).includes(name));
    if (field && !columns.has(field)) columns.set(field, { field, column, shown: shownColumn(column, text), unit: null });
  }
  const unknown = [...cells]
    .filter(([column]) => ![...columns.values()].some((each) => each.column === column))
    .map(([, cell]) => shownText(cellText(cell)));
  return { kind: 'job', sheet, headerRow: row, columns, missing: new Set(), errors: [], headed: new Set(cells.keys()), unknown };
}

function tableHeader(kind: RowKind, sheet: string, { row, cells }: SheetRow): Omit<Table, 'rows'> {
  const columns = new Map<string, TableColumn>();
  const errors: InputError[] = [];
  const unknown: string[] = [];
  const fail = (column: string | null, read: string, fix: string): void =>
    void errors.push({ sheet, row, column, pointer: null, read, fix });
  for (const [column, cell] of cells) {
    const text = cellText(cell);
    const shown = shownColumn(column, text);
    const header = readHeader(kind, text);
    if (!header) {
      if (unknown.length < MAX_UNKNOWN) unknown.push(shownText(text));
      continue;
    }
    const { field, name } = header.rule;
    const first = columns.get(field);
    if (first) fail(shown, text, `one column for ${name}; ${first.shown} is that already`);
    else columns.set(field, { field, column, shown, unit: header.unit });
    if (header.fault) fail(shown, text, header.fault);
  }
  const missing = missingColumns(kind, columns);
  for (const { names } of missing)
    fail(null, [...columns.values()].map(({ shown }) => shown).join(', '), `${names} among the ${kind}`);
  return {
    kind,
    sheet,
    headerRow: row,
    columns,
    missing: new Set(missing.flatMap(({ fields }) => fields)),
    errors,
    headed: new Set(cells.keys()),
    unknown,
  };
}

interface MissingColumn {
  readonly fields: readonly string[];
  readonly names: string;
}

function missingColumns(kind: RowKind, columns: ReadonlyMap<string, unknown>): readonly MissingColumn[] {
  const needed = NEEDED[kind]
    .filter((field) => !columns.has(field))
    .map((field) => ({ fields: [field], names: `a column ${nameOf(kind, field)}` }));
  if (kind !== 'walls') return needed;
  const ends = ['from/0', 'from/1', 'to/0', 'to/1'];
  const absent = ends.filter((field) => !columns.has(field));
  if (absent.length === ends.length) {
    return columns.has('length')
      ? needed
      : [...needed, { fields: ['from', 'to', 'length', ...ends], names: 'columns from_x, from_y, to_x and to_y, or length,' }];
  }
  return [
    ...needed,
    ...absent.map((field) => ({ fields: [field, field.split('/')[0] ?? ''], names: `a column ${nameOf(kind, field)}` })),
  ];
}

const nameOf = (kind: RowKind, field: string): string => {
  const rule = COLUMNS[kind].find((each) => each.field === field);
  return rule ? [rule.name, ...rule.also.slice(0, 2)].join(' or ') : field;
};

const shownColumn = (column: number, header: string): string => `${columnLetters(column)} (${shownText(header)})`;
