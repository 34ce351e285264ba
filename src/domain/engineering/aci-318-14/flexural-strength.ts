import { stressBlockDepth } from './stress-block-depth.js';

/**
 * Moment that a rectangular section with one layer of bars resists.
 *
 * @equation  φMn = φ · As · fy · ( d − a / 2 )
 * @param As  area of the tension bars                          [in2]
 * @param d   depth from the compression face to the bars       [in]
 * @param b   width of the compression face                     [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @param fy  yield strength of the bars                        [psi]
 * @param phi φ, strength reduction                             [1]
 * @returns   φMn, design strength                              [in·lb]
 * @valid     bars yield: see `tensionStrain`
 * @source    aci-318-14 §22.2, from memory; as printed in navfac-dm-2-8 p. 109
 * @example   As = 2.20, d = 27.125, b = 18, fc = 5000, fy = 66000, phi = 1 → 3800752
 */
export function flexuralStrength(As: number, d: number, b: number, fc: number, fy: number, phi: number): number {
  return phi * As * fy * (d - stressBlockDepth(As, b, fc, fy) / 2);
}
