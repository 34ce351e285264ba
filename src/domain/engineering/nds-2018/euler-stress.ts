/**
 * Critical buckling stress of a wood column. Any unit of stress.
 *
 * @equation  FcE = 0.822 · E'min / ( le / d )²
 * @param eMin E'min, adjusted modulus for stability            [psi]
 * @param slenderness le / d                                    [1]
 * @returns   FcE                                               [psi]
 * @valid     le / d ≤ 50
 * @source    nds-2018 §3.7.1
 * @example   eMin = 580000, slenderness = 20.571 → 1127
 */
export function eulerStress(eMin: number, slenderness: number): number {
  return (0.822 * eMin) / slenderness ** 2;
}
