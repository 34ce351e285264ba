import type { RowKind, TableKind } from './columns.js';
import { kindOfHeader, readHeader } from './header.js';

/** A header row stands in the first rows that hold anything; what stands above it is a title. */
export const ROWS_TO_HEADER = 10;

export interface HeaderRow {
  /** Among the rows that were looked at. */
  readonly index: number;
  readonly kind: TableKind;
  /** Columns of its kind that it names. */
  readonly known: number;
}

/**
 * The header among the first rows of a sheet: the row that names most columns of one kind, the first of equals.
 *
 * Below the first row a header holds no number, or a row of data (`W`, `H`, `36`) would pass for one.
 *
 * @param rows cells as text, rows without any left out
 */
export function headerRowOf(rows: readonly (readonly string[])[]): HeaderRow | undefined {
  let best: HeaderRow | undefined;
  for (const [index, cells] of rows.slice(0, ROWS_TO_HEADER).entries()) {
    if (index > 0 && cells.some(isNumeric)) continue;
    const kind = kindOfHeader(cells);
    if (kind === undefined) continue;
    const known = kind === 'job' ? 2 : knownColumns(kind, cells);
    if (!best || known > best.known) best = { index, kind, known };
  }
  return best;
}

const knownColumns = (kind: RowKind, cells: readonly string[]): number =>
  new Set(cells.flatMap((cell) => readHeader(kind, cell)?.rule.field ?? [])).size;

/** Starts as a number does: `36`, `-1.5 m`, `3'-0"`, `½"`. */
export const isNumeric = (cell: string): boolean => /^[-+\u2212]?\.?[\d½¼¾]/.test(cell);

/** A title holds fewer numbers than this; a row with as many is data. */
const NUMBERS_OF_DATA = 3;
export const looksLikeData = (cells: readonly string[]): boolean => cells.filter(isNumeric).length >= NUMBERS_OF_DATA;
