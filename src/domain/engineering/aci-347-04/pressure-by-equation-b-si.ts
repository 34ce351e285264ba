/**
 * `pressureByEquationB` of the SI printing, whose constants are rounded for themselves.
 *
 * Within 0.2 % of the US customary equation. At R = 2.1 it lies over Eq. A, 1156 + 244 · 2.1 against 785 · 2.1: the step is the
 * rounding's, in US customary units there is none.
 *
 * @equation  p = Cw · Cc · (7.2 + 1156 / (T + 17.8) + 244 · R / (T + 17.8))
 * @param Cw  unit weight coefficient                           [1]
 * @param Cc  chemistry coefficient                             [1]
 * @param R   rate of rise of the concrete in the form          [m/h]
 * @param T   temperature of the concrete in the form           [°C]
 * @returns   p, lateral pressure, outward                      [kPa]
 * @valid     walls over 4.2 m with R < 2.1, all walls with 2.1 ≤ R ≤ 4.5; slump ≤ 175 mm; internal vibration to ≤ 1.2 m;
 *            40 ≤ °F ≤ 95
 * @source    aci-347-04 §2.2.2, SI printing, from memory; nunnally Eq. 12-2B prints 1154 and T + 18, which is not followed
 * @example   Cw = 1, Cc = 1, R = 2, T = 20 → 50.69
 */
export function pressureByEquationBSi(Cw: number, Cc: number, R: number, T: number): number {
  return Cw * Cc * (7.2 + 1156 / (T + 17.8) + (244 * R) / (T + 17.8));
}
