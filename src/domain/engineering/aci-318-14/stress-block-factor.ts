/**
 * Share of the depth to the neutral axis that the block of compression fills.
 *
 * @equation  β1 = 0.85 − 0.05 · ( f'c − 4000 ) / 1000, from 0.65 to 0.85
 * @param fc  f'c, strength of the concrete                     [psi]
 * @returns   β1                                                [1]
 * @valid     f'c ≥ 2500
 * @source    aci-318-14 Table 22.2.2.4.3, from memory
 * @example   fc = 5000 → 0.80
 */
export function stressBlockFactor(fc: number): number {
  return Math.min(0.85, Math.max(0.65, 0.85 - (0.05 * (fc - 4000)) / 1000));
}
