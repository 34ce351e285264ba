import { TENSION_CONTROLLED_STRAIN } from './tension-strain.js';

/**
 * Strength reduction of flexure: less where the section fails with less warning.
 *
 * @equation  φ = 0.90 from εt = 0.005 on; 0.65 + 0.25 · ( εt − εy ) / ( 0.005 − εy ) below it; 0.65 up to εy
 * @param et  εt, strain of the bars when the concrete crushes  [1]
 * @param ey  εy, strain at which the bars yield                [1]
 * @returns   φ                                                 [1]
 * @valid     no spiral
 * @source    aci-318-14 Table 21.2.2, from memory
 * @example   et = 0.004, ey = 0.002 → 0.817
 */
export function flexureReduction(et: number, ey: number): number {
  if (et >= TENSION_CONTROLLED_STRAIN) return 0.9;
  return et <= ey ? 0.65 : 0.65 + (0.25 * (et - ey)) / (TENSION_CONTROLLED_STRAIN - ey);
}
