/**
 * `minimumPressure` of the SI printing, which rounds 600 psf (28.7 kPa) up.
 *
 * @equation  p = 30 · Cw
 * @param Cw  unit weight coefficient                           [1]
 * @returns   p, lateral pressure, outward                      [kPa]
 * @valid     with Eq. A and Eq. B in SI
 * @source    aci-347-04 §2.2.2, SI printing, from memory; nunnally prints 28.7 kPa for 600 psf
 * @example   Cw = 1.04 → 31.2
 */
export function minimumPressureSi(Cw: number): number {
  return 30 * Cw;
}
