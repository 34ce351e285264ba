/**
 * Rate at which water evaporates from the surface of fresh concrete, SI printing: its constants are rounded for themselves, so it lies
 * up to about 5 % under the US customary one.
 *
 * @equation  E = 5 · ( ( Tc + 18 )^2.5 − r · ( Ta + 18 )^2.5 ) · ( V + 4 ) · 10⁻⁶
 * @param Tc  temperature of the concrete                       [°C]
 * @param Ta  temperature of the air                            [°C]
 * @param r   relative humidity, 0 to 1                         [1]
 * @param V   wind, half a metre above the surface              [km/h]
 * @returns   E                                                 [kg/m2/h]
 * @valid     temperatures of the chart, 4 °C and up; an estimate within 40 % either way
 * @source    uno-1998, as printed in evaporation-pages
 * @example   Tc = 31, Ta = 27, r = 0.5, V = 19 → 1.152
 */
export function evaporationRateSi(Tc: number, Ta: number, r: number, V: number): number {
  return (5 * ((Tc + 18) ** 2.5 - r * (Ta + 18) ** 2.5) * (V + 4)) / 1e6;
}
