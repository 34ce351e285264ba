/**
 * Tension in one curved face that no web holds, per unit height: a thin cylinder under pressure. Any coherent units.
 *
 * @equation  T = p · R
 * @param p   lateral pressure of the concrete at this height   [kPa]
 * @param R   radius of the face                                [m]
 * @returns   T, tension per unit height                        [kN/m]
 * @valid     thin face, no webs; an upper bound where there are webs
 * @source    statics; thin cylinder, from memory
 * @example   p = 30, R = 1.5 → 45.0
 */
export function faceHoopTension(p: number, R: number): number {
  return p * R;
}
