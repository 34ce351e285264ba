/** Lap of bars in tension by bar and yield strength [in]. irc-2018 Table R608.5.4(1), read in a public web copy. */
const LAPS: Readonly<Record<string, { readonly ksi40: number; readonly ksi60: number }>> = {
  '#4': { ksi40: 20, ksi60: 30 },
  '#5': { ksi40: 25, ksi60: 38 },
  '#6': { ksi40: 30, ksi60: 45 },
};

/**
 * Lap of vertical and horizontal bars of a prescriptive wall.
 *
 * The table follows 40 and 60 bar diameters, rounded; there is nothing between its two grades.
 *
 * @equation  bar and grade → row and column
 * @param bar nominal bar                                       [-]
 * @param fy  yield strength of the bar                         [psi]
 * @returns   lap; null where the table has no cell             [in]
 * @valid     #4 to #6; Grade 40 or 60
 * @source    irc-2018 Table R608.5.4(1)
 * @example   bar = '#5', fy = 60000 → 38
 */
export function prescriptiveLap(bar: string, fy: number): number | null {
  const row = LAPS[bar];
  if (row === undefined || (fy !== 40_000 && fy !== 60_000)) return null;
  return fy === 40_000 ? row.ksi40 : row.ksi60;
}
