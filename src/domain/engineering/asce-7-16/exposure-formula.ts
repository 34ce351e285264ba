import { CONSTANTS_7_16, LEAST_HEIGHT_FT, type Exposure } from './exposure.js';

/**
 * Velocity pressure exposure coefficient by its equation.
 *
 * @equation  Kz = 2.01 · ( max( z, 15 ) / zg ) ^ ( 2 / α )
 * @param z   height above ground                               [ft]
 * @param exposure B, C or D                                    [-]
 * @returns   Kz                                                [1]
 * @valid     z ≤ zg
 * @source    asce-7-16 Table 26.10-1, equation through public-code-listing; constants of B and C from memory
 * @example   z = 20, exposure = 'D' → 1.083
 */
export function exposureByFormula(z: number, exposure: Exposure): number {
  const { zg, alpha } = CONSTANTS_7_16.byExposure[exposure];
  return CONSTANTS_7_16.factor * (Math.max(z, LEAST_HEIGHT_FT) / zg) ** (2 / alpha);
}
