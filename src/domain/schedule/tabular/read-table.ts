import { shownText, type InputError } from '../../evidence/input-error.js';
import { FileRefusal } from '../file-refusal.js';
import { MAX_FEATURES, MAX_OPENINGS, MAX_STOREYS, MAX_UNKNOWN, MAX_WALLS } from '../schedule-limits.js';
import { UnusableCell } from '../unusable-cell.js';
import { COLUMNS, JOB_HEADERS, NEEDED, type RowKind, type TableKind } from './columns.js';
import { bracketed, kindOfHeader, plainHeader, readHeader } from './header.js';
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

/** Rows already read of each kind, over all tables of an upload. */
export type RowCount = Map<TableKind, number>;

/**
 * Reads one sheet as a table. Its first row that holds anything is the header and decides what the table holds.
 *
 * Reading stops at the first row past the limit of its kind, and after the header of a sheet that is no table: the rest is not read.
 */
export async function readTable(sheet: string, rows: AsyncIterable<SheetRow>, count: RowCount): Promise<Table | StrangeSheet> {
  let header: Omit<Table, 'rows'> | undefined;
  const read: SheetRow[] = [];
  for await (const row of rows) {
    if (row.cells.size === 0) continue;
    if (!header) {
      if (row.cells.size > MAX_COLUMNS)
        throw new FileRefusal(
          'invalid',
          sheet,
          `${row.cells.size} columns`,
          `a table of at most ${MAX_COLUMNS} columns`,
          row.row,
        );
      const kind = kindOfHeader([...row.cells.values()].map(cellText));
      if (!kind) return { sheet, headers: [...row.cells.values()].slice(0, 8).map((cell) => shownText(cellText(cell))) };
      header = kind === 'job' ? jobHeader(sheet, row) : tableHeader(kind, sheet, row);
      continue;
    }
    const soFar = (count.get(header.kind) ?? 0) + 1;
    if (soFar > MAX_ROWS[header.kind]) {
      const most = MAX_ROWS[header.kind].toLocaleString('en-US');
      throw new FileRefusal(
        'too-large',
        sheet,
        `more than ${most} ${header.kind}`,
        `at most ${most} ${header.kind}: split the schedule into several jobs`,
        row.row,
      );
    }
    count.set(header.kind, soFar);
    read.push(row);
  }
  return header ? { ...header, rows: read } : { sheet, headers: [] };
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
