/**
 * Pressure of fresh concrete that acts as a liquid over its whole depth: no wall form ever carries more, placed from the top.
 *
 * @equation  p = w · h
 * @param w   unit weight of the fresh concrete                 [pcf]
 * @param h   depth of fresh concrete above the point           [ft]
 * @returns   p, lateral pressure, outward                      [psf]
 * @valid     placed from the top; pumping from the base adds a surge that is not in it
 * @source    aci-347-04 §2.2.2, as printed in salman-lecture-3 Eq. 3-1 and cc-form-pressure
 * @example   w = 150, h = 8 → 1200
 */
export function liquidHead(w: number, h: number): number {
  return w * h;
}
