/**
 * Depth of the zone in which the concrete still acts as a liquid.
 *
 * @equation  z = p / w
 * @param p   greatest lateral pressure of the wall             [psf]
 * @param w   unit weight of the fresh concrete                 [pcf]
 * @returns   z, depth below the top of the fresh concrete      [ft]
 * @valid     w > 0
 * @source    aci-347-04 §2.2.2, from memory
 * @example   p = 825, w = 150 → 5.50
 */
export function hydrostaticDepth(p: number, w: number): number {
  return p / w;
}
