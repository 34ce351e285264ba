/**
 * Outward thrust on the forms of a corner, per unit height of wall.
 *
 * Pressure on the two legs does not cancel at a turn; the rest acts outward along the bisector, as on a pipe bend. Any coherent units:
 * psf and ft give lb/ft.
 *
 * @equation  T = 2 · p · t · sin( θ / 2 )
 * @param p   lateral pressure of the concrete at this height   [kPa]
 * @param t   clear width of the core                           [m]
 * @param turn change of direction θ, 0 = straight on           [deg]
 * @returns   T, thrust per unit height, positive outward       [kN/m]
 * @valid     0 ≤ θ < 180; one core on both sides of the corner
 * @source    statics; dipra-thrust-restraint prints T = 2 · P · A · sin( θ / 2 ) for pipe bends
 * @example   p = 30, t = 0.152, turn = 90 → 6.449
 */
export function bendThrust(p: number, t: number, turn: number): number {
  return 2 * p * t * Math.sin((turn * Math.PI) / 360);
}
