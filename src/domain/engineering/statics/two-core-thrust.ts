/**
 * Thrust on the forms of a corner, or of a wall straight on, where two cores meet, per unit height of wall.
 *
 * The vector sum of the pressure on the two cross-sections; with one core it is the bend thrust. Any coherent units.
 *
 * @equation  T = p · √( t1² + t2² − 2 · t1 · t2 · cos θ )
 * @param p   lateral pressure of the concrete at this height   [kPa]
 * @param t1  clear width of the core before the corner         [m]
 * @param t2  clear width of the core after it                  [m]
 * @param turn change of direction θ, 0 = straight on           [deg]
 * @returns   T, thrust per unit height                         [kN/m]
 * @valid     0 ≤ θ < 180
 * @source    statics; law of cosines on the forces p · t1 and p · t2
 * @example   p = 10, t1 = 0.3, t2 = 0.4, turn = 90 → 5.000
 */
export function twoCoreThrust(p: number, t1: number, t2: number, turn: number): number {
  return p * Math.sqrt(Math.max(0, t1 ** 2 + t2 ** 2 - 2 * t1 * t2 * Math.cos((turn * Math.PI) / 180)));
}
