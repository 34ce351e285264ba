/** Gust factor of a rigid wall. asce-7-16 §26.11, as printed in wind-wall-sheet. */
export const RIGID_GUST_FACTOR = 0.85;

/** Directionality of a solid freestanding wall. asce-7-16 Table 26.6-1, as printed in wind-wall-sheet. */
export const WALL_DIRECTIONALITY = 0.85;

/** Height of the resultant over that of the wall: half and a twentieth. asce-7-16 Fig. 29.3-1, as printed in wind-wall-sheet. */
export const RESULTANT_HEIGHT = 0.55;

/**
 * Net pressure of the wind on a freestanding wall. Any unit of pressure.
 *
 * @equation  p = q · G · Cf
 * @param q   velocity pressure at the top of the wall          [psf]
 * @param G   gust factor                                       [1]
 * @param Cf  net force coefficient                             [1]
 * @returns   p, from one side to the other                     [psf]
 * @valid     rigid wall
 * @source    asce-7-16 Eq. 29.3-1, as printed in wind-wall-sheet
 * @example   q = 21.27, G = 0.85, Cf = 1.3 → 23.50
 */
export function wallWindPressure(q: number, G: number, Cf: number): number {
  return q * G * Cf;
}
