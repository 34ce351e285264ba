/**
 * `pressureByEquationA` of the SI printing, whose constants are rounded for themselves.
 *
 * Within 0.2 % of the US customary equation over the span of temperatures. The floor of `minimumPressureSi` and the cap of
 * `liquidHeadSi` apply afterwards.
 *
 * @equation  p = Cw · Cc · (7.2 + 785 · R / (T + 17.8))
 * @param Cw  unit weight coefficient                           [1]
 * @param Cc  chemistry coefficient                             [1]
 * @param R   rate of rise of the concrete in the form          [m/h]
 * @param T   temperature of the concrete in the form           [°C]
 * @returns   p, lateral pressure, outward                      [kPa]
 * @valid     walls with R < 2.1 and placement height ≤ 4.2 m; slump ≤ 175 mm; internal vibration to ≤ 1.2 m; 40 ≤ °F ≤ 95
 * @source    aci-347-04 §2.2.2, SI printing, from memory; nunnally Eq. 12-1B prints T + 18, which is not followed
 * @example   Cw = 1, Cc = 1, R = 1, T = 10 → 35.44
 */
export function pressureByEquationASi(Cw: number, Cc: number, R: number, T: number): number {
  return Cw * Cc * (7.2 + (785 * R) / (T + 17.8));
}
