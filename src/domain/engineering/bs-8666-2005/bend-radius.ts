/** Least inside radius of a bend and least projection of an end, by diameter [mm]. bs-8666-2005 Table 2, read in a public chart. */
const BENDS: Readonly<Record<number, { readonly radius: number; readonly end: number }>> = {
  8: { radius: 16, end: 115 },
  10: { radius: 20, end: 120 },
  12: { radius: 24, end: 125 },
  16: { radius: 32, end: 130 },
  20: { radius: 70, end: 190 },
  25: { radius: 87, end: 240 },
  32: { radius: 112, end: 305 },
  40: { radius: 140, end: 380 },
};

/** Diameters that have a row [mm]. */
export const BENT_DIAMETERS_MM: readonly number[] = Object.keys(BENDS).map(Number);

/**
 * Least inside radius to which a bar is bent.
 *
 * @equation  diameter → row of the table
 * @param d   nominal diameter of the bar                       [mm]
 * @returns   r; null where the table has no row                [mm]
 * @valid     8, 10, 12, 16, 20, 25, 32 and 40 mm
 * @source    bs-8666-2005 Table 2, as printed in a public chart
 * @example   d = 12 → 24
 */
export function bendRadius(d: number): number | null {
  return BENDS[d]?.radius ?? null;
}

/**
 * Least projection of the end of a bent bar beyond its bend.
 *
 * @equation  diameter → row of the table
 * @param d   nominal diameter of the bar                       [mm]
 * @returns   P; null where the table has no row                [mm]
 * @valid     8, 10, 12, 16, 20, 25, 32 and 40 mm
 * @source    bs-8666-2005 Table 2, as printed in a public chart
 * @example   d = 16 → 130
 */
export function endProjection(d: number): number | null {
  return BENDS[d]?.end ?? null;
}
