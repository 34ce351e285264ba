/** What the two ends of a link add where they are bent as short as the standard allows: so many diameters, and not under so many millimetres. */
interface LeastEnds {
  readonly parts: Readonly<Record<string, number>>;
  readonly diameters: number;
  readonly leastMm: number;
}

/** Links whose ends C and D may be left at the least. bs-8666-2005 Table 3, read in public charts. */
export const LEAST_ENDS: Readonly<Record<string, LeastEnds>> = {
  '47': { parts: { A: 2, B: 1 }, diameters: 21, leastMm: 240 },
  '51': { parts: { A: 2, B: 2 }, diameters: 16, leastMm: 160 },
  '63': { parts: { A: 2, B: 3 }, diameters: 14, leastMm: 150 },
};

/**
 * Length of straight bar of a link whose ends C and D are the least that the standard allows.
 *
 * @equation  L = Σ ( multiple · dimension ) + max( nd · d, least )
 * @param code shape code of a link                             [-]
 * @param d   nominal diameter of the bar                       [mm]
 * @param dimensions outside dimensions A and B                 [mm]
 * @returns   L; null for other codes or where a dimension is missing [mm]
 * @valid     codes 47, 51 and 63; bends at the standard radius
 * @source    bs-8666-2005 Table 3, as printed in public charts
 * @example   code = '51', d = 12, dimensions.A = 500, dimensions.B = 300 → 1792
 */
export function leastEndsLength(code: string, d: number, dimensions: Readonly<Record<string, number>>): number | null {
  const found = LEAST_ENDS[code];
  if (found === undefined || Object.keys(found.parts).some((name) => dimensions[name] === undefined)) return null;
  const sides = Object.entries(found.parts).reduce((total, [name, times]) => total + times * (dimensions[name] ?? 0), 0);
  return sides + Math.max(found.diameters * d, found.leastMm);
}
