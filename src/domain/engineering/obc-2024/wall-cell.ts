import { GROUND_HEIGHTS_M, GROUND_TABLES } from './ground-tables.js';

/** A cell of the foundation wall tables and its row, or in what the wall is beyond them. */
export interface GroundCell {
  readonly cell: string | null;
  readonly beyond: 'thickness' | 'height' | 'ground' | null;
  readonly heightRowM: number;
  readonly groundRowM: number;
}

/**
 * Vertical bars of a flat foundation wall: the cell of the next row up in ground and of the next column in height. Nothing lies between.
 *
 * @equation  thickness, height, ground → cell
 * @param thickness concrete of the wall                        [mm]
 * @param height unsupported height                             [m]
 * @param ground height of the ground above the floor           [m]
 * @returns   the cell as printed and its row                   [-]
 * @valid     150, 190 and 240 mm; to 3.00 m; stable soil of at least 75 kPa, no surcharge
 * @source    obc-2024 Tables 9.15.4.5.-A to -C
 * @example   thickness = 190, height = 2.75, ground = 2.3 → cell = '10M @ 300'
 */
export function groundCell(thickness: number, height: number, ground: number): GroundCell {
  const rows = GROUND_TABLES[thickness];
  const column = GROUND_HEIGHTS_M.findIndex((each) => height <= each);
  const row = rows?.find(([each]) => ground <= each);
  const found = { heightRowM: GROUND_HEIGHTS_M[column] ?? 0, groundRowM: row?.[0] ?? 0 };
  const beyond = (what: GroundCell['beyond']): GroundCell => ({ ...found, cell: null, beyond: what });
  if (rows === undefined) return beyond('thickness');
  if (column < 0) return beyond('height');
  const cell = row === undefined ? null : ([row[1], row[2], row[3]][column] ?? null);
  return cell === null ? beyond('ground') : { ...found, cell, beyond: null };
}
