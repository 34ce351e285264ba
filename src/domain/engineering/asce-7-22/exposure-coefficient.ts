import type { Exposure, ExposureConstants } from '../asce-7-16/exposure.js';
import { LEAST_HEIGHT_FT } from '../asce-7-16/exposure.js';

/** asce-7-22, from memory. */
const CONSTANTS: ExposureConstants = {
  factor: 2.41,
  byExposure: { B: { zg: 3280, alpha: 7.5 }, C: { zg: 2460, alpha: 9.8 }, D: { zg: 1935, alpha: 11.5 } },
};

/**
 * Velocity pressure exposure coefficient of the 2022 edition, which has other constants than the editions before.
 *
 * @equation  Kz = 2.41 · ( max( z, 15 ) / zg ) ^ ( 2 / α )
 * @param z   height above ground                               [ft]
 * @param exposure B, C or D                                    [-]
 * @returns   Kz                                                [1]
 * @valid     z ≤ zg
 * @source    asce-7-22 Table 26.10-1, from memory
 * @example   z = 15, exposure = 'C' → 0.851
 */
export function exposureCoefficient2022(z: number, exposure: Exposure): number {
  const { zg, alpha } = CONSTANTS.byExposure[exposure];
  return CONSTANTS.factor * (Math.max(z, LEAST_HEIGHT_FT) / zg) ** (2 / alpha);
}
