/**
 * Least area of tension bars of a beam.
 *
 * @equation  As,min = max( 3 · √f'c, 200 ) · b · d / fy
 * @param b   width of the web                                  [in]
 * @param d   depth from the compression face to the bars       [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @param fy  yield strength of the bars                        [psi]
 * @returns   As,min; a third more than the moment needs is always enough [in2]
 * @valid     fy ≤ 80 000
 * @source    aci-318-14 §9.6.1.2, from memory
 * @example   b = 10, d = 20, fc = 4000, fy = 60000 → 0.667
 */
export function leastSteel(b: number, d: number, fc: number, fy: number): number {
  return (Math.max(3 * Math.sqrt(fc), 200) * b * d) / fy;
}
