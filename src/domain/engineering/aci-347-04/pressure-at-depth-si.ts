import { liquidHeadSi } from './liquid-head-si.js';

/**
 * `pressureAtDepth` in SI.
 *
 * @equation  p(z) = min(ρ · g · z, p)
 * @param rho ρ, unit weight of the fresh concrete as a mass    [kg/m3]
 * @param p   greatest lateral pressure of the wall             [kPa]
 * @param z   depth below the top of the fresh concrete         [m]
 * @returns   p(z), lateral pressure, outward                   [kPa]
 * @valid     z ≥ 0
 * @source    aci-347-04 §2.2.2, from memory
 * @example   rho = 2400, p = 40, z = 1 → 23.536
 */
export function pressureAtDepthSi(rho: number, p: number, z: number): number {
  return Math.min(liquidHeadSi(rho, z), p);
}
