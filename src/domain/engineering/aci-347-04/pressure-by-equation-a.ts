/**
 * Lateral pressure of slowly placed concrete on a wall form of ordinary height.
 *
 * The floor of `minimumPressure` and the cap of `liquidHead` apply afterwards.
 *
 * @equation  p = Cw · Cc · (150 + 9000 · R / T)
 * @param Cw  unit weight coefficient                           [1]
 * @param Cc  chemistry coefficient                             [1]
 * @param R   rate of rise of the concrete in the form          [ft/h]
 * @param T   temperature of the concrete in the form           [°F]
 * @returns   p, lateral pressure, outward                      [psf]
 * @valid     walls with R < 7 and placement height ≤ 14 ft; slump ≤ 7 in; internal vibration to ≤ 4 ft; 40 ≤ T ≤ 95
 * @source    aci-347-04 §2.2.2, as printed in salman-lecture-3 Eq. 3-2; ranges from hurd-2006
 * @example   Cw = 1, Cc = 1, R = 6, T = 80 → 825
 */
export function pressureByEquationA(Cw: number, Cc: number, R: number, T: number): number {
  return Cw * Cc * (150 + (9000 * R) / T);
}
