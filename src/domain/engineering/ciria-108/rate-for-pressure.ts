/**
 * Rate of rise at which the pressure on a form reaches a value: the pressure equation turned round.
 *
 * With y = √( H − C1 · √R ) the equation is P / D = H − y² + C2 · K · y; the greater root is the slower filling, on which pressure rises
 * with the rate.
 *
 * @equation  y = ( k + √( k² + 4 · ( H − P / D ) ) ) / 2, k = C2 · K, R = ( ( H − y² ) / C1 )²
 * @param P   pressure, under the liquid head of the form       [kPa]
 * @param D   weight of the concrete                            [kN/m3]
 * @param c1  C1, by section                                    [1]
 * @param c2  C2, by cement and admixture                       [1]
 * @param K   temperature coefficient                           [1]
 * @param H   height of the form                                [m]
 * @returns   R; null where even the slowest filling presses harder [m/h]
 * @valid     P ≤ D · H
 * @source    ciria-108, the equation of ciria-forum-sheet solved for R
 * @example   P = 86.82, D = 25, c1 = 1.5, c2 = 0.45, K = 1.5956, H = 9.05 → 1.00
 */
export function rateForPressure108(P: number, D: number, c1: number, c2: number, K: number, H: number): number | null {
  const k = c2 * K;
  const y = (k + Math.sqrt(k ** 2 + 4 * (H - P / D))) / 2;
  const risen = H - y ** 2;
  return risen > 0 ? (risen / c1) ** 2 : null;
}
