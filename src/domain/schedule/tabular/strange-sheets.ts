import type { InputError } from '../../evidence/input-error.js';
import { ROWS_TO_HEADER } from './header-row.js';
import { HEADER_EXAMPLES, tableOfName } from './sheet-names.js';
import type { StrangeSheet } from './table.js';

export interface SortedSheets {
  /** Sheets and files that must be tables and are none. */
  readonly errors: readonly InputError[];
  /** Sheets of other kinds, which a workbook may hold; those that are empty are left out. */
  readonly others: readonly StrangeSheet[];
}

/**
 * Parts the sheets that are no table. A workbook may hold sheets of other kinds, which are listed; one whose name promises a table is
 * an error, or what it holds would go uncounted, and so is a file of its own.
 */
export function sortStrangeSheets(sheets: readonly StrangeSheet[]): SortedSheets {
  const errors: InputError[] = [];
  const others: StrangeSheet[] = [];
  for (const sheet of sheets) {
    const fix = sheet.name === null ? ofAnyKind() : sheet.headers.length > 0 ? ofKindNamed(sheet.name) : null;
    if (fix !== null) errors.push(errorOf(sheet, fix));
    else if (sheet.headers.length > 0) others.push(sheet);
  }
  return { errors, others };
}

const errorOf = ({ sheet, row, headers }: StrangeSheet, fix: string): InputError => ({
  sheet,
  row,
  column: null,
  pointer: null,
  read: headers.join(', '),
  fix,
});

const ofAnyKind = (): string =>
  `a header row of walls, openings, features, storeys or job settings in the first ${ROWS_TO_HEADER} rows, such as ${HEADER_EXAMPLES.walls}`;

function ofKindNamed(name: string): string | null {
  const kind = tableOfName(name);
  if (!kind) return null;
  return `a header row of ${kind} in the first ${ROWS_TO_HEADER} rows, such as ${HEADER_EXAMPLES[kind]}; a sheet of another kind has another name`;
}
