import { exposureByFormula } from './exposure-formula.js';
import type { Exposure } from './exposure.js';

const HEIGHTS_FT = [15, 20, 25, 30] as const;

/** Kz as tabulated: C to 15 ft read in print, the others from memory. */
const TABULATED: Readonly<Record<Exposure, readonly number[]>> = {
  B: [0.57, 0.62, 0.66, 0.7],
  C: [0.85, 0.9, 0.94, 0.98],
  D: [1.03, 1.08, 1.12, 1.16],
};

/**
 * Velocity pressure exposure coefficient: the table to 30 ft, straight lines between its heights, the equation above.
 *
 * @equation  Kz of the table; above 30 ft 2.01 · ( z / zg ) ^ ( 2 / α )
 * @param z   height above ground                               [ft]
 * @param exposure B, C or D                                    [-]
 * @returns   Kz                                                [1]
 * @valid     z ≤ zg
 * @source    asce-7-16 Table 26.10-1, from memory; C to 15 ft as printed in wind-wall-sheet; asce-7-05 and asce-7-10 have the same
 * @example   z = 30, exposure = 'B' → 0.70
 */
export function exposureCoefficient(z: number, exposure: Exposure): number {
  const values = TABULATED[exposure];
  if (z <= HEIGHTS_FT[0]) return values[0] ?? Number.NaN;
  const above = HEIGHTS_FT.findIndex((height) => z <= height);
  if (above < 0) return exposureByFormula(z, exposure);
  const [low = 0, high = 0] = [HEIGHTS_FT[above - 1], HEIGHTS_FT[above]];
  const [from = 0, to = 0] = [values[above - 1], values[above]];
  return from + ((z - low) / (high - low)) * (to - from);
}
