/**
 * Uplift of a form whose face leans over the concrete, per unit length of wall.
 *
 * Pressure acts square to the face; its vertical part is the pressure on the face's shadow on the ground. Any coherent units.
 *
 * @equation  U = p · o
 * @param p   lateral pressure of the concrete on the face      [kPa]
 * @param o   horizontal projection of the leaning face         [m]
 * @returns   U, uplift per unit length                         [kN/m]
 * @valid     p taken as even over the face: that at its foot is on the safe side
 * @source    statics
 * @example   p = 30, o = 0.1 → 3.00
 */
export function upliftPerLength(p: number, o: number): number {
  return p * o;
}
