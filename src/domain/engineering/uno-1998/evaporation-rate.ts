/**
 * Rate at which water evaporates from the surface of fresh concrete, US customary printing.
 *
 * Negative where water condenses on cold concrete instead.
 *
 * @equation  E = ( Tc^2.5 − r · Ta^2.5 ) · ( 1 + 0.4 · V ) · 10⁻⁶
 * @param Tc  temperature of the concrete                       [°F]
 * @param Ta  temperature of the air                            [°F]
 * @param r   relative humidity, 0 to 1                         [1]
 * @param V   wind, half a metre above the surface              [mph]
 * @returns   E                                                 [lb/ft2/h]
 * @valid     temperatures of the chart, 40 °F and up; an estimate within 40 % either way
 * @source    uno-1998, US customary form from memory; exactly converted it is the equation of evaporation-meter-note
 * @example   Tc = 87, Ta = 80, r = 0.5, V = 12 → 0.2435
 */
export function evaporationRate(Tc: number, Ta: number, r: number, V: number): number {
  return ((Tc ** 2.5 - r * Ta ** 2.5) * (1 + 0.4 * V)) / 1e6;
}
