import type { Consistency } from './consistency.js';

/** ( by rate · v + fixed ) · K1 for F1 to F4; fixed + by rate · v · K1 for F5 and F6. Concrete of 25 kN/m³. From memory. */
const ROWS: Readonly<Record<Exclude<Consistency, 'SCC'>, { readonly byRate: number; readonly fixed: number; readonly all: boolean; readonly least: number }>> = {
  F1: { byRate: 5, fixed: 21, all: true, least: 25 },
  F2: { byRate: 10, fixed: 19, all: true, least: 25 },
  F3: { byRate: 14, fixed: 18, all: true, least: 25 },
  F4: { byRate: 17, fixed: 17, all: true, least: 25 },
  F5: { byRate: 30, fixed: 25, all: false, least: 30 },
  F6: { byRate: 38, fixed: 25, all: false, least: 30 },
};

/**
 * Greatest characteristic pressure of concrete of a class of consistency, before the liquid head caps it.
 *
 * @equation  σ = ( 5 v + 21, 10 v + 19, 14 v + 18, 17 v + 17 ) · K1 ≥ 25 (F1 to F4); 25 + ( 30, 38 ) · v · K1 ≥ 30 (F5, F6)
 * @param consistency F1 to F6                                  [-]
 * @param v   rate of rise                                      [m/h]
 * @param K1  factor of the setting time                        [1]
 * @returns   σ                                                 [kPa]
 * @valid     v ≤ 7 for F1 to F4; placed from the top, internal vibration; concrete of 25 kN/m³ at 15 °C
 * @source    din-18218-2010, from memory; the limit of v in din-18218-1980-summary
 * @example   consistency = 'F3', v = 2, K1 = 1 → 46
 */
export function classPressure(consistency: Exclude<Consistency, 'SCC'>, v: number, K1: number): number {
  const { byRate, fixed, all, least } = ROWS[consistency];
  return Math.max(least, all ? (byRate * v + fixed) * K1 : fixed + byRate * v * K1);
}

/**
 * Rate of rise at which a class of consistency reaches a pressure: its equation turned round.
 *
 * @equation  v = ( σ / K1 − fixed ) / by rate (F1 to F4); ( σ − 25 ) / ( by rate · K1 ) (F5, F6)
 * @param consistency F1 to F6                                  [-]
 * @param pressure σ                                            [kPa]
 * @param K1  factor of the setting time                        [1]
 * @returns   v; null where no rate is slow enough, or σ is under the least of the class [m/h]
 * @valid     as classPressure
 * @source    din-18218-2010, from memory
 * @example   consistency = 'F3', pressure = 46, K1 = 1 → 2.0
 */
export function rateForClassPressure(consistency: Exclude<Consistency, 'SCC'>, pressure: number, K1: number): number | null {
  const { byRate, fixed, all, least } = ROWS[consistency];
  const v = all ? (pressure / K1 - fixed) / byRate : (pressure - fixed) / (byRate * K1);
  return pressure >= least && v > 0 ? v : null;
}
