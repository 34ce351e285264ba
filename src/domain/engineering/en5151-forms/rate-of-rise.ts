/**
 * Rate at which concrete rises in forms that one supply fills evenly. Any coherent units.
 *
 * @equation  R = Q / A
 * @param Q   volume delivered in an hour                       [m3/h]
 * @param A   area of the concrete in plan                      [m2]
 * @returns   R                                                 [m/h]
 * @valid     A > 0; the whole plan is filled round and round
 * @source    en5151-forms p. 7 and en5466a p. 3-13
 * @example   Q = 162, A = 80 → 2.0
 */
export function rateOfRise(Q: number, A: number): number {
  return Q / A;
}
