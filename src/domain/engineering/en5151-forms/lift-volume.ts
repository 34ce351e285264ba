/**
 * Concrete of one lift all over the plan. Any coherent units.
 *
 * @equation  V = A · d
 * @param A   area of the concrete in plan                      [m2]
 * @param d   height of the lift                                [m]
 * @returns   V                                                 [m3]
 * @valid     walls of the same plan over the lift
 * @source    statics; geometry of a prism
 * @example   A = 40, d = 10 → 400
 */
export function liftVolume(A: number, d: number): number {
  return A * d;
}
