/**
 * Horizontal projection of a face that leans out by an angle over a height. Any unit of length.
 *
 * @equation  o = h · tan α
 * @param h   height of the leaning face                        [m]
 * @param lean α, from the vertical                             [deg]
 * @returns   o, horizontal projection                          [m]
 * @valid     0 ≤ α < 90
 * @source    statics; geometry of a plane face
 * @example   h = 0.4, lean = 45 → 0.400
 */
export function leaningProjection(h: number, lean: number): number {
  return h * Math.tan((lean * Math.PI) / 180);
}
