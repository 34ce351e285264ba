import type { Consistency } from './consistency.js';

/** Gain of K1 for every hour of setting past five: from memory. */
const SLOPES: Readonly<Partial<Record<Consistency, number>>> = { F1: 0.03, F2: 0.053, F3: 0.077, F4: 0.14 };

/**
 * Factor of the setting time on the pressure of a class of consistency.
 *
 * @equation  K1 = 1 + 0.03 (F1), 0.053 (F2), 0.077 (F3), 0.14 (F4) · ( tE − 5 ); tE / 5 (F5, F6, SCC)
 * @param consistency class                                     [-]
 * @param tE  time from mixing to the end of setting            [h]
 * @returns   K1                                                [1]
 * @valid     5 ≤ tE ≤ 20
 * @source    din-18218-2010, from memory
 * @example   consistency = 'F4', tE = 10 → 1.70
 */
export function settingFactor(consistency: Consistency, tE: number): number {
  const slope = SLOPES[consistency];
  return slope === undefined ? tE / 5 : 1 + slope * (tE - 5);
}
