import { LIMITS } from './consistency.js';

/** From memory. */
const PER_KELVIN = 0.03;

/**
 * Factor on the pressure of concrete colder than the reference; warmer concrete is not counted as pressing less.
 *
 * @equation  1 + 0.03 · ( 15 − T ) below 15 °C, 1 above
 * @param T   temperature of the concrete                       [°C]
 * @returns   factor                                            [1]
 * @valid     5 ≤ T ≤ 30
 * @source    din-18218-2010, from memory
 * @example   T = 10 → 1.15
 */
export function coldFactor(T: number): number {
  return 1 + PER_KELVIN * Math.max(0, LIMITS.reference - T);
}
