import { CENTRE_TABLES, type CentreTable } from './centre-tables.js';
import { INSIDE_FACE_TABLE, type WallTableRow } from './inside-face-table.js';

/** Tables of the code by their number; 8 is the one with bars near the inside face. */
export type BasementTable = CentreTable | 8;

/** A cell of a basement wall table and the row it stands in, or in what the wall is beyond the table. */
export interface BasementCell {
  readonly cell: string | null;
  readonly beyond: 'nominal' | 'height' | 'backfill' | 'soil' | null;
  readonly heightRowFt: number;
  readonly backfillRowFt: number;
  readonly soilRowPsfPerFt: number;
}

const SOILS = [30, 45, 60];

/**
 * The table that covers a basement wall.
 *
 * @equation  family, nominal, place of the bars → table
 * @param family flat, waffle-grid or screen-grid               [-]
 * @param nominal nominal thickness                             [in]
 * @param position inside-face or center; grids have their bars at the center [-]
 * @returns   number of the table in R404.1.2; null where none covers the wall [-]
 * @valid     flat 6 to 12 in (6 to 10 in with bars at the center), waffle 6 and 8 in, screen 6 in
 * @source    irc-2018 R404.1.2
 * @example   family = 'flat', nominal = 8, position = 'inside-face' → 8
 */
export function basementTable(family: string, nominal: number, position: string): BasementTable | null {
  if (family === 'flat' && position === 'inside-face') return INSIDE_FACE_TABLE[nominal] === undefined ? null : 8;
  const numbers: Readonly<Record<string, CentreTable>> = { 'flat 6': 2, 'flat 8': 3, 'flat 10': 4, 'waffle-grid 6': 5, 'waffle-grid 8': 6, 'screen-grid 6': 7 };
  return numbers[`${family} ${nominal}`] ?? null;
}

/**
 * Vertical bars of a basement wall: the cell of the next row up in height and in backfill, and of the next soil column. Nothing lies between.
 *
 * @equation  table, nominal, height, backfill, soil → cell
 * @param table number of the table in R404.1.2                 [-]
 * @param nominal nominal thickness                             [in]
 * @param height unsupported height                             [ft]
 * @param backfill height of the unbalanced backfill            [ft]
 * @param soil lateral load                                     [psf/ft]
 * @returns   the cell as printed and its row                   [-]
 * @valid     to 10 ft of height, to the last backfill row of the height, to 60 psf/ft
 * @source    irc-2018 Table R404.1.2(8), as printed in irc-web-copies; (2) to (7) from memory
 * @example   table = 8, nominal = 8, height = 9, backfill = 8, soil = 30 → cell = '#5 @ 41'
 */
export function basementCell(table: BasementTable, nominal: number, height: number, backfill: number, soil: number): BasementCell {
  const rows: readonly WallTableRow[] | undefined = table === 8 ? INSIDE_FACE_TABLE[nominal] : CENTRE_TABLES[table];
  const heightRowFt = rows?.find(([each]) => height <= each)?.[0] ?? 0;
  const row = rows?.find(([each, fill]) => each === heightRowFt && backfill <= fill);
  const column = SOILS.findIndex((each) => soil <= each);
  const found = { heightRowFt, backfillRowFt: row?.[1] ?? 0, soilRowPsfPerFt: SOILS[column] ?? 0 };
  const beyond = (what: BasementCell['beyond']): BasementCell => ({ ...found, cell: null, beyond: what });
  if (rows === undefined) return beyond('nominal');
  if (heightRowFt === 0) return beyond('height');
  if (row === undefined) return beyond('backfill');
  const cell = column < 0 ? undefined : [row[2], row[3], row[4]][column];
  return cell === undefined ? beyond('soil') : { ...found, cell, beyond: null };
}
