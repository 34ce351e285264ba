/** √f'c is never taken greater. aci-318-14 §25.4.1.4. */
export const GREATEST_ROOT_PSI = 100;

/**
 * Development length of a straight deformed bar in tension, simplified, before its least length.
 *
 * @equation  ld = fy · ψt · ψe / ( 25 · λ · √f'c ) · db, 20 for #7 and larger; half as much again where bars stand close
 * @param db  diameter of the bar                               [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @param fy  yield strength of the bar                         [psi]
 * @param top more than 12 in of fresh concrete below the bar   [-]
 * @param close clear spacing under 2 · db or cover under db    [-]
 * @returns   ld                                                [in]
 * @valid     #3 to #11, uncoated, λ = 1, Grade 40 or 60 (ψg = 1); √f'c counted as at most 100
 * @source    aci-318-14 §25.4.2.2, from memory; its figures are those of pci-handbook
 * @example   db = 0.5, fc = 3000, fy = 60000, top = false, close = false → 21.91
 */
export function simplifiedDevelopment(db: number, fc: number, fy: number, top: boolean, close: boolean): number {
  const divisor = db < 0.8 ? 25 : 20;
  return ((fy * (top ? 1.3 : 1)) / (divisor * Math.min(GREATEST_ROOT_PSI, Math.sqrt(fc)))) * db * (close ? 1.5 : 1);
}
