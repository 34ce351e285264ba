/**
 * Force at which a pinned bar, by bending alone, carries a load spread over the middle of its span, with a margin on its full plastic
 * moment. Any coherent units.
 *
 * Moment of a load F over c in the middle of a span L: F · ( 2 · L − c ) / 8. Plastic section of a round bar: d³ / 6.
 *
 * @equation  F = 8 · fy · d³ / 6 / Ω / ( 2 · L − c )
 * @param fy  yield strength of the bar                         [kPa]
 * @param d   diameter of the bar                               [m]
 * @param L   span between the webs that hold it                [m]
 * @param c   length of the load, the cut-out                   [m]
 * @param margin Ω, on the plastic moment                       [1]
 * @returns   F, greatest force                                 [kN]
 * @valid     L ≥ c; the webs hold the bar's ends
 * @source    statics; simply supported beam of a round bar
 * @example   fy = 600, d = 1, L = 2, c = 1, margin = 1 → 266.67
 */
export function pinBarForce(fy: number, d: number, L: number, c: number, margin: number): number {
  return (8 * fy * d ** 3) / 6 / margin / (2 * L - c);
}
