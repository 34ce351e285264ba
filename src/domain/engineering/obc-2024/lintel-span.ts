import { LINTEL_TABLES, type LintelRow } from './lintel-tables.js';

/** Snow of the two columns [kPa]. */
const LIGHT_SNOW_KPA = 1.5;
const HEAVY_SNOW_KPA = 3.33;

/**
 * Longest clear opening under a lintel of flat walls. The tables' notes allow straight lines between snow loads and between depths.
 *
 * @equation  thickness, depth, snow, what stands above → span; linear between rows and between the two snow loads
 * @param table 0: 1-10M, 1: 1-15M, 2: 2-15M                    [-]
 * @param thickness concrete of the wall                        [mm]
 * @param depth depth of the lintel                             [mm]
 * @param supports roof, or storey-and-roof of the same walls   [-]
 * @param snow specified snow load; under 1.50 counts as 1.50   [kPa]
 * @returns   span; null outside the table or beside a cell that is not used [m]
 * @valid     140, 150, 160, 190, 200 or 240 mm; 200 to 600 mm deep; snow to 3.33 kPa; openings with bearing walls
 * @source    obc-2024 Tables 9.20.17.4.-A to -C
 * @example   table = 0, thickness = 140, depth = 300, supports = 'roof', snow = 3.33 → 1.50
 */
export function lintelSpan(table: number, thickness: number, depth: number, supports: string, snow: number): number | null {
  const rows = LINTEL_TABLES[table]?.rows[thickness];
  const above = rows?.findIndex((row) => row[0] >= depth) ?? -1;
  const [deep, shallow] = [rows?.[above], rows?.[above - 1]];
  if (deep === undefined || snow > HEAVY_SNOW_KPA) return null;
  const upper = atSnow(deep, supports, snow);
  if (deep[0] === depth) return upper;
  if (shallow === undefined || upper === null) return null;
  const lower = atSnow(shallow, supports, snow);
  return lower === null ? null : lower + ((upper - lower) * (depth - shallow[0])) / (deep[0] - shallow[0]);
}

/** Between the snow loads of a row; cells that are left out are 0. */
function atSnow(row: LintelRow, supports: string, snow: number): number | null {
  const [light, heavy] = supports === 'roof' ? [row[1], row[2]] : [row[3], row[4]];
  if (snow <= LIGHT_SNOW_KPA) return light === 0 ? null : light;
  if (snow === HEAVY_SNOW_KPA) return heavy === 0 ? null : heavy;
  if (light === 0 || heavy === 0) return null;
  return light + ((heavy - light) * (snow - LIGHT_SNOW_KPA)) / (HEAVY_SNOW_KPA - LIGHT_SNOW_KPA);
}
