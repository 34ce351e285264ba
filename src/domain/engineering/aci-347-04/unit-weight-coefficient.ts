import { LEAST_UNIT_WEIGHT_COEFFICIENT } from './limits.js';

/**
 * Coefficient of unit weight: 1 for ordinary concrete, less for light, more for heavy.
 *
 * The table is not continuous: at 150 pcf the coefficient is 1, just above it is 150/145 = 1.0345. It is followed as printed.
 *
 * @equation  Cw = 0.5 · (1 + w / 145) ≥ 0.8 for w < 140; 1 for 140 ≤ w ≤ 150; w / 145 for w > 150
 * @param w   unit weight of the fresh concrete                 [pcf]
 * @returns   Cw, factor on the lateral pressure                [1]
 * @valid     w > 0
 * @source    aci-347-04 Table 2.1, as printed in salman-lecture-3 Table 3-1
 * @example   w = 153 → 1.0552
 */
export function unitWeightCoefficient(w: number): number {
  if (w > 150) return w / 145;
  if (w >= 140) return 1;
  return Math.max(LEAST_UNIT_WEIGHT_COEFFICIENT, 0.5 * (1 + w / 145));
}
