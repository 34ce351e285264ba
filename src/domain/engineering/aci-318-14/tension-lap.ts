/** No lap and no development is shorter [in]. aci-318-14 §25.4.2.1, §25.5.2.1. */
export const LEAST_LENGTH_IN = 12;

/**
 * Length of a lap of bars in tension. The least length is the lap's: the development it is worked from is the bare formula's.
 *
 * @equation  A: 1.0 · ld; B: 1.3 · ld; ≥ 12 in
 * @param ld  development length of the formula, without its least length [in]
 * @param lapClass A where half the bars at most lap and twice the steel needed is there, otherwise B [-]
 * @returns   length of the lap                                 [in]
 * @valid     bars up to #11
 * @source    aci-318-14 §25.5.2.1, from memory; its figures are those of pci-handbook
 * @example   ld = 21.909, lapClass = 'B' → 28.48
 */
export function tensionLap(ld: number, lapClass: 'A' | 'B'): number {
  return Math.max(LEAST_LENGTH_IN, (lapClass === 'A' ? 1 : 1.3) * ld);
}
