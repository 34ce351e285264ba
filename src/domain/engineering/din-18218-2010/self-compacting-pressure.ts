/**
 * Greatest characteristic pressure of self-compacting concrete placed from the top, before the liquid head caps it.
 *
 * @equation  σ = ( 1 + 0.26 · v · tE ) · γ ≥ 30
 * @param v   rate of rise                                      [m/h]
 * @param tE  time from mixing to the end of setting            [h]
 * @param gamma γ, weight of the concrete                       [kN/m3]
 * @returns   σ                                                 [kPa]
 * @valid     placed from the top; pumped from below the liquid head counts
 * @source    din-18218-2010 Eq. (1), as printed in din-18218-article
 * @example   v = 2, tE = 7, gamma = 25 → 116.0
 */
export function selfCompactingPressure(v: number, tE: number, gamma: number): number {
  return Math.max(30, (1 + 0.26 * v * tE) * gamma);
}
