import { COLDEST_CONCRETE_F, WARMEST_CONCRETE_F } from './limits.js';
import type { OutsideLimit } from './fresh-concrete-wall.js';

/**
 * The limits of the wall equations that a concrete leaves; empty inside them.
 *
 * @equation  40 ≤ T ≤ 95
 * @param T   temperature of the concrete in the form           [°F]
 * @returns   limits left, with the value and the side          [-]
 * @valid     any T
 * @source    aci-347-04 §2.2.2 (coldest column of its table), from memory; aci-305-1-14 §3.3 (warmest)
 * @example   T = 30 → 0.limit = 40
 */
export function outsideLimits(T: number): readonly OutsideLimit[] {
  if (T < COLDEST_CONCRETE_F)
    return [{ quantity: 'concreteF', value: T, limit: COLDEST_CONCRETE_F, side: 'below', source: 'aci-347-04' }];
  if (T > WARMEST_CONCRETE_F)
    return [{ quantity: 'concreteF', value: T, limit: WARMEST_CONCRETE_F, side: 'above', source: 'aci-305-1-14' }];
  return [];
}
