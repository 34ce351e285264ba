/**
 * Least pressure for which a wall form is designed by the equations; the full liquid head still caps it.
 *
 * @equation  p = 600 · Cw
 * @param Cw  unit weight coefficient                           [1]
 * @returns   p, lateral pressure, outward                      [psf]
 * @valid     with Eq. A and Eq. B
 * @source    aci-347-04 §2.2.2, as printed in salman-lecture-3
 * @example   Cw = 1.04 → 624
 */
export function minimumPressure(Cw: number): number {
  return 600 * Cw;
}
