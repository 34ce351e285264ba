/**
 * Area of bars whose design strength is just a moment: the smaller root of the quadratic.
 *
 * @equation  As = 0.85 · f'c · b / fy · ( d − √( d² − 2 · Mu / ( 0.85 · φ · f'c · b ) ) )
 * @param Mu  factored moment                                   [in·lb]
 * @param d   depth from the compression face to the bars       [in]
 * @param b   width of the compression face                     [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @param fy  yield strength of the bars                        [psi]
 * @param phi φ, strength reduction                             [1]
 * @returns   As; null where no area of bars is enough          [in2]
 * @valid     bars yield: see `tensionStrain`
 * @source    aci-318-14 §22.2, from memory; statics
 * @example   Mu = 3800752, d = 27.125, b = 18, fc = 5000, fy = 66000, phi = 1 → 2.20
 */
export function steelForMoment(Mu: number, d: number, b: number, fc: number, fy: number, phi: number): number | null {
  const block = 0.85 * fc * b;
  const rest = d * d - (2 * Mu) / (phi * block);
  return rest < 0 ? null : (block / fy) * (d - Math.sqrt(rest));
}
