import { STANDARD_GRAVITY } from './standard-gravity.js';

/**
 * `liquidHead` in SI: pressure of fresh concrete that acts as a liquid over its whole depth.
 *
 * @equation  p = ρ · g · h
 * @param rho ρ, unit weight of the fresh concrete as a mass    [kg/m3]
 * @param h   depth of fresh concrete above the point           [m]
 * @returns   p, lateral pressure, outward; g = 9.80665 m/s²    [kPa]
 * @valid     placed from the top; pumping from the base adds a surge that is not in it
 * @source    aci-347-04 §2.2.2, as printed in salman-lecture-3 Eq. 3-1; which g: `STANDARD_GRAVITY`
 * @example   rho = 2400, h = 3 → 70.608
 */
export function liquidHeadSi(rho: number, h: number): number {
  return (rho * STANDARD_GRAVITY * h) / 1000;
}
