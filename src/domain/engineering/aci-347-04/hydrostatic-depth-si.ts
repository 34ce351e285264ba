import { liquidHeadSi } from './liquid-head-si.js';

/**
 * `hydrostaticDepth` in SI.
 *
 * @equation  z = p / (ρ · g)
 * @param p   greatest lateral pressure of the wall             [kPa]
 * @param rho ρ, unit weight of the fresh concrete as a mass    [kg/m3]
 * @returns   z, depth below the top of the fresh concrete      [m]
 * @valid     ρ > 0
 * @source    aci-347-04 §2.2.2, from memory
 * @example   p = 35.304, rho = 2400 → 1.500
 */
export function hydrostaticDepthSi(p: number, rho: number): number {
  return p / liquidHeadSi(rho, 1);
}
