import { stressBlockDepth } from './stress-block-depth.js';
import { stressBlockFactor } from './stress-block-factor.js';

/** Strain of the concrete at its crushing. aci-318-14 §22.2.2.1, from memory. */
const CRUSHING_STRAIN = 0.003;

/** From here on a section is tension-controlled. aci-318-14 Table 21.2.2, from memory. */
export const TENSION_CONTROLLED_STRAIN = 0.005;
/** Under this strain of its bars no flexural member is allowed. aci-318-14 §9.3.3.1, from memory. */
export const LEAST_TENSION_STRAIN = 0.004;

/**
 * Strain of the bars when the concrete crushes: large where the section warns before it fails.
 *
 * @equation  εt = 0.003 · ( d − c ) / c, c = a / β1
 * @param As  area of the tension bars                          [in2]
 * @param d   depth from the compression face to the bars       [in]
 * @param b   width of the compression face                     [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @param fy  yield strength of the bars                        [psi]
 * @returns   εt                                                [1]
 * @valid     one layer of bars, no axial force
 * @source    aci-318-14 §22.2, from memory
 * @example   As = 0.44, d = 2.75, b = 12, fc = 2500, fy = 60000 → 0.0038
 */
export function tensionStrain(As: number, d: number, b: number, fc: number, fy: number): number {
  const c = stressBlockDepth(As, b, fc, fy) / stressBlockFactor(fc);
  return (CRUSHING_STRAIN * (d - c)) / c;
}
