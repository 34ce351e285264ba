/**
 * Moment that a wall of plain concrete resists before it cracks.
 *
 * @equation  φMn = φ · 5 · √f'c · b · t² / 6
 * @param b   width                                             [in]
 * @param t   thickness of the concrete                         [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @param phi φ, 0.60; 0.65 in older editions                   [1]
 * @returns   φMn                                               [in·lb]
 * @valid     normal weight concrete
 * @source    aci-318-14 §14.5.2.1, from memory
 * @example   b = 12, t = 7.5, fc = 2500, phi = 0.65 → 18281
 */
export function plainConcreteMoment(b: number, t: number, fc: number, phi: number): number {
  return (phi * 5 * Math.sqrt(fc) * b * t * t) / 6;
}
