import { COLUMNS, NEEDED, type RowKind } from '../tabular/columns.js';
import { COLUMN_NOTES, JOB_NOTES, type ColumnNote } from './column-notes.js';
import type { DocumentTables, WrittenCell } from './document-tables.js';

/** A drop-down: words, or the names in column A of another sheet. */
export type Choices = { readonly words: readonly string[] } | { readonly namesOn: RowKind } | null;

export interface PlannedColumn {
  readonly name: string;
  readonly note: string;
  readonly choices: Choices;
  readonly needed: boolean;
}

/** A sheet before it is written: its columns, its rows, and the cells that have a drop-down or a note of their own. */
export interface SheetPlan {
  readonly name: string;
  readonly columns: readonly PlannedColumn[];
  readonly rows: readonly (readonly WrittenCell[])[];
  /** Notes and drop-downs by row, of key and value tables. */
  readonly byRow: readonly Pick<PlannedColumn, 'note' | 'choices'>[];
}

/** What a drop-down offers of the supplier's own. */
export interface Offered {
  readonly cores: readonly string[];
  readonly ranges: readonly string[];
}

const SHEETS = ['walls', 'openings', 'features', 'storeys'] as const;
/** A drop-down of words holds 255 characters with its commas, and a comma parts two words. */
const MAX_WORDS = 255;

export function sheetPlans({ sheets, job }: DocumentTables, offered: Offered): readonly SheetPlan[] {
  const settings: SheetPlan = {
    name: 'job',
    columns: [
      { name: 'key', note: 'The name of a setting; it stays as it is.', choices: null, needed: true },
      { name: 'value', note: 'What is set. Rows that are not used may be deleted.', choices: null, needed: true },
    ],
    rows: job.map(({ key, value }) => [key, value]),
    byRow: job.map(({ field }) => ({ note: JOB_NOTES[field]?.note ?? '', choices: choicesOf(JOB_NOTES[field], offered) })),
  };
  return [...SHEETS.map((kind) => ({ name: kind, columns: columnsOf(kind, offered), rows: sheets[kind].rows, byRow: [] })), settings];
}

const columnsOf = (kind: RowKind, offered: Offered): readonly PlannedColumn[] =>
  COLUMNS[kind].map(({ field, name }) => {
    const told = COLUMN_NOTES[kind][field];
    return { name, note: told?.note ?? '', choices: choicesOf(told, offered), needed: NEEDED[kind].includes(field) };
  });

function choicesOf(told: ColumnNote | undefined, offered: Offered): Choices {
  const choices = told?.choices;
  if (choices === undefined) return null;
  if (choices === 'walls' || choices === 'storeys') return { namesOn: choices };
  const words = typeof choices === 'string' ? offered[choices] : choices;
  const fits = words.length > 0 && words.join(',').length <= MAX_WORDS && words.every((word) => !/[,"]/.test(word));
  return fits ? { words } : null;
}
