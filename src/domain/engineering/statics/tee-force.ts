/**
 * Force per course on the far panel of a tee, where the through wall's near panel is cut out and the far one has lost its webs.
 *
 * Any coherent units: psf and ft give lb.
 *
 * @equation  F = p · t · c
 * @param p   lateral pressure of the concrete at this height   [kPa]
 * @param t   clear width of the branch's core                  [m]
 * @param c   course height                                     [m]
 * @returns   F, force away from the branch                     [kN]
 * @valid     square tee; on the skew t is the cut-out, core / sin φ
 * @source    statics; pressure times the area that has lost its webs
 * @example   p = 600, t = 0.5, c = 1.333333 → 400.0
 */
export function teeForce(p: number, t: number, c: number): number {
  return p * t * c;
}
