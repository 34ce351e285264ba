import { shownText, type InputError } from '../../evidence/input-error.js';
import { lengthUnitNamed } from '../../quantity/length-unit.js';
import { MAX_UNKNOWN } from '../schedule-limits.js';
import type { CellPlace } from '../places.js';
import type { DocumentSource } from '../document-source.js';
import { COLUMNS, JOB_KEYS, type RowKind, type TableKind } from './columns.js';
import { bracketed, plainHeader } from './header.js';
import { meantCell } from './meant-cell.js';
import { cellText } from './read-table.js';
import { alignReferences } from './references.js';
import { columnLetters, type CellValue, type SheetRow } from './sheet-row.js';
import type { Table } from './table.js';

const KINDS = ['storeys', 'walls', 'openings', 'features'] as const;

interface PlacedRow {
  readonly table: Table;
  readonly row: number;
}
type Fields = Record<string, unknown>;
type Unknown = { readonly sheet: string; readonly name: string };

/**
 * The document that tables stand for, with the place of every value. Tables of one kind are read one after the other.
 *
 * Tables must say whether openings are measured to the concrete or rough, in a column or once for the job (decisions 16).
 */
export function documentOfTables(tables: readonly Table[], format: string): DocumentSource {
  const errors: InputError[] = tables.flatMap((table) => table.errors);
  const unknown: Unknown[] = tables.flatMap(({ sheet, unknown: names }) => names.map((name) => ({ sheet, name })));
  const job = readJob(
    tables.filter(({ kind }) => kind === 'job'),
    errors,
    unknown,
  );
  const rows = new Map<RowKind, PlacedRow[]>();
  const document: Fields = { format, ...job.fields };
  for (const kind of KINDS) {
    const ofKind = tables.filter((table) => table.kind === kind);
    rows.set(
      kind,
      ofKind.flatMap((table) => table.rows.map(({ row }) => ({ table, row }))),
    );
    if (ofKind.length > 0) document[kind] = ofKind.flatMap((table) => table.rows.map((row) => fieldsOf(table, row, unknown)));
  }
  alignReferences(document);
  measureOpenings(document, rows.get('openings') ?? [], job, errors);
  return { document, places: { at: (pointer) => placeOf(pointer, rows, job.places) }, errors, unknown };
}

/** The columns' rules by the field they fill. */
const RULES = new Map(
  KINDS.map((kind) => [kind as TableKind, new Map(COLUMNS[kind].map((rule) => [rule.field, rule] as const))] as const),
);

function fieldsOf({ kind, columns, headed, sheet }: Table, { cells }: SheetRow, unknown: Unknown[]): Fields {
  const fields: Fields = {};
  for (const { field, column } of columns.values()) {
    const cell = cells.get(column);
    const rule = RULES.get(kind)?.get(field);
    const meant = cell !== undefined && rule ? meantCell(rule, cell) : cell;
    if (meant !== undefined) setField(fields, field.split('/'), meant);
  }
  for (const column of cells.keys()) if (!headed.has(column)) stray(unknown, { sheet, name: `column ${columnLetters(column)}` });
  return fields;
}

/** A cell under no header, listed once for its column. */
function stray(unknown: Unknown[], cell: Unknown): void {
  if (unknown.length < MAX_UNKNOWN && !unknown.some(({ sheet, name }) => sheet === cell.sheet && name === cell.name))
    unknown.push(cell);
}

function setField(fields: Fields, [first = '', ...rest]: readonly string[], value: CellValue): void {
  if (rest.length === 0) fields[first] = value;
  else if (/^\d$/.test(rest[0] ?? ''))
    fields[first] = Object.assign((fields[first] as unknown[] | undefined) ?? [undefined, undefined], { [rest[0] ?? '']: value });
  else setField((fields[first] ??= {}) as Fields, rest, value);
}

interface Job {
  readonly fields: Fields;
  readonly places: ReadonlyMap<string, CellPlace>;
  readonly measured: CellValue | undefined;
}

function readJob(tables: readonly Table[], errors: InputError[], unknown: Unknown[]): Job {
  const fields: Fields = {};
  const places = new Map<string, CellPlace>();
  let measured: CellValue | undefined;
  for (const table of tables) {
    const keyColumn = table.columns.get('key');
    const valueColumn = table.columns.get('value');
    for (const { row, cells } of table.rows) {
      const key = cells.get(keyColumn?.column ?? 0);
      const value = cells.get(valueColumn?.column ?? 0);
      const written = key === undefined ? '' : cellText(key);
      const { words, unit } = bracketed(written);
      const rule = JOB_KEYS.find(({ also }) => also.includes(plainHeader(words)));
      const place = { sheet: table.sheet, row, column: valueColumn?.shown ?? null };
      const fail = (fix: string): void => void errors.push({ ...place, pointer: null, read: shownText(written), fix });
      if (!rule) unknown.push({ sheet: table.sheet, name: shownText(written === '' ? `row ${row}` : written) });
      else if (value !== undefined && places.has(rule.field))
        fail(`one row for ${rule.field.replace('/', '.')}; row ${places.get(rule.field)?.row} is that already`);
      else if (value !== undefined) {
        const lengthUnit = rule.unit === 'length' && unit !== null ? lengthUnitNamed(unit) : undefined;
        if (rule.unit === 'length' && unit !== null && !lengthUnit)
          fail('a unit of length in the key: (in), (ft), (mm) or (m), or none');
        places.set(rule.field, {
          ...place,
          unit: rule.unit === 'length' ? (lengthUnit ?? null) : rule.unit === 'quantity' ? unit : null,
          told: false,
        });
        const meant = rule.words ? (meantCell({ ...rule, unit: null }, value) ?? value) : value;
        if (rule.field === 'measured') measured = meant;
        else setField(fields, rule.field.split('/'), meant);
      }
    }
  }
  return { fields, places, measured };
}

function measureOpenings(document: Fields, rows: readonly PlacedRow[], job: Job, errors: InputError[]): void {
  const openings = (document['openings'] as Fields[] | undefined) ?? [];
  const told = new Set<Table>();
  openings.forEach((opening, index) => {
    if (opening['measured'] !== undefined) return;
    if (job.measured !== undefined) {
      opening['measured'] = job.measured;
      return;
    }
    const { table, row } = rows[index] as PlacedRow;
    const column = table.columns.get('measured');
    if (!column && told.has(table)) return;
    told.add(table);
    const fix =
      'concrete (the hole in the concrete) or rough (the buck is added): a column measured, or the key measured of the job';
    errors.push({
      sheet: table.sheet,
      row: column ? row : table.headerRow,
      column: column?.shown ?? null,
      pointer: column ? `/openings/${index}/measured` : null,
      read: '',
      fix,
    });
  });
}

function placeOf(
  pointer: string,
  rows: ReadonlyMap<RowKind, readonly PlacedRow[]>,
  job: ReadonlyMap<string, CellPlace>,
): CellPlace {
  const match = /^\/(walls|openings|features|storeys)\/(\d+)(?:\/(.*))?$/.exec(pointer);
  if (!match) return job.get(pointer.slice(1)) ?? { sheet: null, row: null, column: null, unit: null, told: false };
  const placed = rows.get(match[1] as RowKind)?.[Number(match[2])];
  const field = match[3] ?? '';
  const column = placed?.table.columns.get(field);
  return {
    sheet: placed?.table.sheet ?? null,
    row: placed?.row ?? null,
    column: column?.shown ?? null,
    unit: column?.unit ?? null,
    told: placed?.table.missing.has(field) ?? false,
  };
}
