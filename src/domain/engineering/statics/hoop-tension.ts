/**
 * Tension along a curved wall's forms, per unit height, where webs hold the two faces together.
 *
 * The pressure pulls the outer face with p · Ro and pushes the inner one with p · Ri; the webs bring both together, and the difference
 * stays: the limit of the bend thrust for many small turns. Any coherent units.
 *
 * @equation  T = p · t
 * @param p   lateral pressure of the concrete at this height   [kPa]
 * @param t   clear width of the core                           [m]
 * @returns   T, tension per unit height                        [kN/m]
 * @valid     webs between the faces hold
 * @source    statics; p · ( Ro − Ri ) = p · t
 * @example   p = 30, t = 0.15 → 4.50
 */
export function hoopTension(p: number, t: number): number {
  return p * t;
}
