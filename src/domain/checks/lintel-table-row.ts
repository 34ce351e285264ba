import { LINTEL_TABLES, type LintelTable } from '../engineering/obc-2024/lintel-tables.js';

export const LINTEL_TABLE_SOURCE = 'obc-2024 Tables 9.20.17.4.-A to -C';
/** Openings over this take stirrups. obc-2024 9.20.17, read [mm]. */
const STIRRUPS_OVER_MM = 1200;
const SAME = 1e-9;

/** The lightest bars whose longest opening is not under a span, and the longest openings of all the tables [m]. */
export interface LintelTableRow {
  readonly table: LintelTable | null;
  readonly longestM: number;
  /** By table; null where a table does not answer. */
  readonly spansM: readonly (number | null)[];
}

/**
 * The first of the Ontario tables, lightest bars first, that reaches a span.
 *
 * @param spanM  clear opening                                  [m]
 * @param longestOf longest opening by the table of this place  [m]
 */
export function lintelTableRow(spanM: number, longestOf: (table: number) => number | null): LintelTableRow {
  const spansM = LINTEL_TABLES.map((_, table) => longestOf(table));
  const chosen = spansM.findIndex((longest) => longest !== null && longest >= spanM - SAME);
  return { table: LINTEL_TABLES[chosen] ?? null, longestM: spansM[chosen] ?? 0, spansM };
}

/** Stirrups of the tables for a clear opening [mm]. */
export const tableStirrups = (clearMm: number): string => (clearMm > STIRRUPS_OVER_MM ? '10M @ d/2' : 'none');
