/** Largest spacing that any rule leaves. aci-318-14 Table 9.7.6.2.2. */
const WIDEST_IN = 24;

/**
 * Spacing of vertical stirrups that carry a shear, within every limit of the code.
 *
 * @equation  s = min( Av · fyt · d / Vs, Av · fyt / max( 0.75 · √f'c · b, 50 · b ), d / 2, 24 in ); halves of the last two where Vs > 4 · √f'c · b · d
 * @param Vs  shear left to the stirrups, Vu / φ − Vc           [lb]
 * @param Av  area of both legs of a stirrup                    [in2]
 * @param fyt yield strength of the stirrups                    [psi]
 * @param b   width of the web                                  [in]
 * @param d   depth from the compression face to the bars       [in]
 * @param fc  f'c, strength of the concrete                     [psi]
 * @returns   s; null where Vs is over 8 · √f'c · b · d: the section is too small [in]
 * @valid     fyt ≤ 60 000
 * @source    aci-318-14 §22.5.10.5, §9.6.3.3, Table 9.7.6.2.2, §22.5.1.2, read in public formula pages
 * @example   Vs = 20000, Av = 0.22, fyt = 60000, b = 10, d = 20, fc = 4000 → 10.00
 */
export function stirrupSpacing(Vs: number, Av: number, fyt: number, b: number, d: number, fc: number): number | null {
  const unit = Math.min(100, Math.sqrt(fc)) * b * d;
  if (Vs > 8 * unit) return null;
  const widest = Math.min(d / 2, WIDEST_IN) / (Vs > 4 * unit ? 2 : 1);
  const least = (Av * fyt) / Math.max(0.75 * Math.sqrt(fc) * b, 50 * b);
  return Math.min(Vs > 0 ? (Av * fyt * d) / Vs : Number.POSITIVE_INFINITY, least, widest);
}
