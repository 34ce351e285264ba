/**
 * Shear that the concrete of a beam carries.
 *
 * @equation  Vc = 2 · λ · √f'c · b · d, √f'c ≤ 100
 * @param b   width of the web                                  [in]
 * @param d   depth from the compression face to the bars       [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @param lambda λ, 1 for concrete of normal weight             [1]
 * @returns   Vc                                                [lb]
 * @valid     no axial force; 2019 asks for less where there are no least stirrups
 * @source    aci-318-14 §22.5.5.1, as printed in retaining-wall-sheet
 * @example   b = 1, d = 1, fc = 3000, lambda = 1 → 109.5
 */
export function concreteShear(b: number, d: number, fc: number, lambda: number): number {
  return 2 * lambda * Math.min(100, Math.sqrt(fc)) * b * d;
}
