const LEAST = 30;

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
  return Math.max(LEAST, (1 + 0.26 * v * tE) * gamma);
}

/**
 * Rate of rise at which self-compacting concrete reaches a pressure: the equation turned round.
 *
 * @equation  v = ( σ / γ − 1 ) / ( 0.26 · tE )
 * @param pressure σ                                            [kPa]
 * @param tE  time from mixing to the end of setting            [h]
 * @param gamma γ, weight of the concrete                       [kN/m3]
 * @returns   v; null where no rate is slow enough              [m/h]
 * @valid     as selfCompactingPressure
 * @source    din-18218-2010 Eq. (1), as printed in din-18218-article
 * @example   pressure = 116, tE = 7, gamma = 25 → 2.0
 */
export function rateForSelfCompactingPressure(pressure: number, tE: number, gamma: number): number | null {
  const v = (pressure / gamma - 1) / (0.26 * tE);
  return pressure >= LEAST && v > 0 ? v : null;
}
