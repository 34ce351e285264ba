/**
 * Pressure at a depth: the liquid head down to the greatest pressure, constant below.
 *
 * @equation  p(z) = min(w · z, p)
 * @param w   unit weight of the fresh concrete                 [pcf]
 * @param p   greatest lateral pressure of the wall             [psf]
 * @param z   depth below the top of the fresh concrete         [ft]
 * @returns   p(z), lateral pressure, outward                   [psf]
 * @valid     z ≥ 0
 * @source    aci-347-04 §2.2.2, from memory
 * @example   w = 150, p = 825, z = 4 → 600
 */
export function pressureAtDepth(w: number, p: number, z: number): number {
  return Math.min(w * z, p);
}
