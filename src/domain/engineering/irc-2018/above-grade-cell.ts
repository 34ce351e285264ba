import { FLAT_ABOVE_GRADE, WAFFLE_ABOVE_GRADE, type AboveGradeTable } from './above-grade-tables.js';

const HEIGHTS_FT = [8, 9, 10];
const EXPOSURES = ['B', 'C', 'D'];

/** A cell of a wall table and the row it stands in, or in what the wall is beyond the table. */
export interface AboveGradeCell {
  readonly cell: string | null;
  readonly beyond: 'family' | 'nominal' | 'height' | 'wind' | 'not-read' | null;
  readonly table: string;
  readonly status: 'found' | 'from memory';
  readonly windRowMph: number;
  readonly heightRowFt: number;
}

/**
 * Vertical bars of a wall above grade: the cell of the next row up in wind and in height. Nothing lies between rows.
 *
 * @equation  nominal, wind, exposure, height, bearing → cell
 * @param family flat, waffle-grid or screen-grid               [-]
 * @param nominal nominal thickness                             [in]
 * @param wind design wind speed                                [mph]
 * @param exposure B, C or D                                    [-]
 * @param height unsupported height                             [ft]
 * @param bearing top or side                                   [-]
 * @returns   the cell as printed, its row and its status       [-]
 * @valid     flat 4 to 10 in, waffle 6 and 8 in; to 10 ft; to 160 mph in B, 136 in C, 125 in D
 * @source    irc-2018 Tables R608.6(1), as printed in irc-web-copies, and R608.6(2), from memory
 * @example   family = 'flat', nominal = 4, wind = 130, exposure = 'B', height = 9, bearing = 'top' → cell = '#4 @ 39'
 */
export function aboveGradeCell(family: string, nominal: number, wind: number, exposure: string, height: number, bearing: string): AboveGradeCell {
  const table = family === 'flat' ? FLAT_ABOVE_GRADE : family === 'waffle-grid' ? WAFFLE_ABOVE_GRADE : null;
  const column = EXPOSURES.indexOf(exposure);
  const heightAt = HEIGHTS_FT.findIndex((each) => height <= each);
  const windAt = table === null ? -1 : table.winds.findIndex((row) => (row[column] ?? 0) >= wind);
  const found = { table: table?.number ?? '', status: table?.status ?? 'found', windRowMph: table?.winds[windAt]?.[column] ?? 0, heightRowFt: HEIGHTS_FT[heightAt] ?? 0 } as const;
  const beyond = (what: AboveGradeCell['beyond']): AboveGradeCell => ({ ...found, cell: null, beyond: what });
  const rows = table?.cells[nominal];
  if (table === null) return beyond('family');
  if (rows === undefined) return beyond('nominal');
  if (heightAt < 0) return beyond('height');
  if (windAt < 0) return beyond('wind');
  const cell = rows[windAt]?.[heightAt]?.[bearing === 'top' ? 0 : 1] ?? null;
  return cell === null ? beyond('not-read') : { ...found, cell, beyond: null };
}

/** Greatest wind of a table in an exposure. */
export const GREATEST_WIND_MPH: Readonly<Record<string, number>> = greatest(FLAT_ABOVE_GRADE);

function greatest({ winds }: AboveGradeTable): Readonly<Record<string, number>> {
  return Object.fromEntries(EXPOSURES.map((exposure, column) => [exposure, Math.max(...winds.map((row) => row[column] ?? 0))]));
}
