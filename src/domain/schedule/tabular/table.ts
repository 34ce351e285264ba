import type { InputError } from '../../evidence/input-error.js';
import type { TableKind } from './columns.js';
import type { SheetRow } from './sheet-row.js';

/** A column of a table: where it stands, the field it fills and the unit its header gives to bare numbers. */
export interface TableColumn {
  readonly field: string;
  readonly column: number;
  /** `C (core)`. */
  readonly shown: string;
  readonly unit: string | null;
}

/** A table as it was read: its kind by its header row, its columns, its rows that hold something. */
export interface Table {
  readonly kind: TableKind;
  readonly sheet: string;
  readonly headerRow: number;
  readonly columns: ReadonlyMap<string, TableColumn>;
  /** Fields without a column, told once for the table. */
  readonly missing: ReadonlySet<string>;
  readonly rows: readonly SheetRow[];
  readonly errors: readonly InputError[];
  /** Columns under a header of any kind. */
  readonly headed: ReadonlySet<number>;
  /** Headers nobody knows. */
  readonly unknown: readonly string[];
}

/** A sheet none of whose first rows is the header of any table. */
export interface StrangeSheet {
  readonly sheet: string;
  /** Name of the sheet in its workbook; null where the file is no workbook. */
  readonly name: string | null;
  /** The row that is most like a header, and its first cells; empty where the sheet holds nothing. */
  readonly row: number;
  readonly headers: readonly string[];
}

export const isTable = (read: Table | StrangeSheet): read is Table => 'kind' in read;
