import { GREATEST_ROOT_PSI } from './simplified-development.js';

/** More confinement than this counts as this. aci-318-14 §25.4.2.3. */
export const GREATEST_CONFINEMENT = 2.5;

/**
 * Development length of a straight deformed bar in tension, general, before its least length.
 *
 * @equation  ld = 3 / 40 · fy / ( λ · √f'c ) · ψt · ψe · ψs / ( ( cb + Ktr ) / db ) · db, ( cb + Ktr ) / db ≤ 2.5
 * @param db  diameter of the bar                               [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @param fy  yield strength of the bar                         [psi]
 * @param top more than 12 in of fresh concrete below the bar   [-]
 * @param confinement ( cb + Ktr ) / db                         [1]
 * @returns   ld                                                [in]
 * @valid     #3 to #11, uncoated, λ = 1, Grade 40 or 60 (ψg = 1); √f'c counted as at most 100; ψs = 0.8 to #6
 * @source    aci-318-14 §25.4.2.3, aci-318-19 §25.4.2.4, read in a public formula page
 * @example   db = 0.5, fc = 3000, fy = 60000, top = false, confinement = 2.5 → 13.15
 */
export function generalDevelopment(db: number, fc: number, fy: number, top: boolean, confinement: number): number {
  const factors = (top ? 1.3 : 1) * (db < 0.8 ? 0.8 : 1);
  return ((0.075 * fy) / Math.min(GREATEST_ROOT_PSI, Math.sqrt(fc))) * (factors / Math.min(GREATEST_CONFINEMENT, confinement)) * db;
}
