import { COLUMNS, type RowKind } from '../tabular/columns.js';
import { JOB_FIELDS, jobKeyName } from './column-notes.js';

export type WrittenCell = string | number | null;
type Fields = Readonly<Record<string, unknown>>;

export interface DocumentTables {
  /** Of each sheet the header's names and the rows below it. */
  readonly sheets: Readonly<Record<RowKind, { readonly names: readonly string[]; readonly rows: readonly (readonly WrittenCell[])[] }>>;
  readonly job: readonly { readonly field: string; readonly key: string; readonly value: WrittenCell }[];
}

/** A document `wallcourse/schedule@1` as the rows of its tables; what is not written stays an empty cell. */
export function documentTables(document: Fields): DocumentTables {
  const table = (kind: RowKind): DocumentTables['sheets'][RowKind] => ({
    names: COLUMNS[kind].map(({ name }) => name),
    rows: ((document[kind] ?? []) as readonly Fields[]).map((row) => COLUMNS[kind].map(({ field }) => cellAt(row, field))),
  });
  const job = JOB_FIELDS.map((field) => ({ field, key: jobKeyName(field), value: field === 'measured' ? null : cellAt(document, field) }));
  return {
    sheets: { walls: table('walls'), openings: table('openings'), features: table('features'), storeys: table('storeys') },
    job: job.filter(({ value }) => value !== null),
  };
}

/** The value at a path such as `start/with/wall` or `from/0`. */
function cellAt(row: Fields, path: string): WrittenCell {
  let value: unknown = row;
  for (const key of path.split('/')) value = typeof value === 'object' && value !== null ? (value as Fields)[key] : undefined;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'string' || typeof value === 'number' ? value : null;
}
