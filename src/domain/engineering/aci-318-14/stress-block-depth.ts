/**
 * Depth of the rectangular block of compression that balances bars at their yield.
 *
 * @equation  a = As · fy / ( 0.85 · f'c · b )
 * @param As  area of the tension bars                          [in2]
 * @param b   width of the compression face                     [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @param fy  yield strength of the bars                        [psi]
 * @returns   a, depth of the block                             [in]
 * @valid     bars yield: see `tensionStrain`
 * @source    aci-318-14 §22.2.2.4, from memory; as printed in navfac-dm-2-8 p. 109
 * @example   As = 2.20, b = 18, fc = 5000, fy = 66000 → 1.898
 */
export function stressBlockDepth(As: number, b: number, fc: number, fy: number): number {
  return (As * fy) / (0.85 * fc * b);
}
