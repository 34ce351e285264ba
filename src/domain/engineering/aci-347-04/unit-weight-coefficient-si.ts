import { LEAST_UNIT_WEIGHT_COEFFICIENT } from './limits.js';

/**
 * `unitWeightCoefficient` by the SI table, which rounds its classes to 2240 and 2400 kg/m³ and its divisor to 2320.
 *
 * The table is not continuous: at 2400 kg/m³ the coefficient is 1, just above it is 2400/2320 = 1.0345. 150 pcf is 2402.8 kg/m³, so a
 * unit weight written in pcf is read in the US customary table: it is the same class.
 *
 * @equation  Cw = 0.5 · (1 + ρ / 2320) ≥ 0.8 for ρ < 2240; 1 for 2240 ≤ ρ ≤ 2400; ρ / 2320 for ρ > 2400
 * @param rho ρ, unit weight of the fresh concrete as a mass    [kg/m3]
 * @returns   Cw, factor on the lateral pressure                [1]
 * @valid     ρ > 0
 * @source    aci-347-04 Table 2.1, SI printing, from memory
 * @example   rho = 2552 → 1.1
 */
export function unitWeightCoefficientSi(rho: number): number {
  if (rho > 2400) return rho / 2320;
  if (rho >= 2240) return 1;
  return Math.max(LEAST_UNIT_WEIGHT_COEFFICIENT, 0.5 * (1 + rho / 2320));
}
