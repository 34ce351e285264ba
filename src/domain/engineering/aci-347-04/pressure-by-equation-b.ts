/**
 * Lateral pressure of concrete placed in a tall wall form, or fast.
 *
 * At R = 7 it equals Eq. A whatever the temperature: 43 400 + 2800 · 7 = 9000 · 7.
 *
 * @equation  p = Cw · Cc · (150 + 43 400 / T + 2800 · R / T)
 * @param Cw  unit weight coefficient                           [1]
 * @param Cc  chemistry coefficient                             [1]
 * @param R   rate of rise of the concrete in the form          [ft/h]
 * @param T   temperature of the concrete in the form           [°F]
 * @returns   p, lateral pressure, outward                      [psf]
 * @valid     walls over 14 ft with R < 7, all walls with 7 ≤ R ≤ 15; slump ≤ 7 in; internal vibration to ≤ 4 ft; 40 ≤ T ≤ 95
 * @source    aci-347-04 §2.2.2, as printed in salman-lecture-3 Eq. 3-3; ranges from hurd-2006
 * @example   Cw = 1, Cc = 1, R = 10, T = 90 → 943
 */
export function pressureByEquationB(Cw: number, Cc: number, R: number, T: number): number {
  return Cw * Cc * (150 + 43_400 / T + (2800 * R) / T);
}
