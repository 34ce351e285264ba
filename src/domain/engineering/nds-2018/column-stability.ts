/** Greatest slenderness of a wood column, le over d. nds-2018 §3.7.1. */
export const SLENDEREST_COLUMN = 50;

/**
 * Column stability factor: the share of the crushing strength that buckling leaves.
 *
 * @equation  Cp = ( 1 + a ) / 2c − √( ( ( 1 + a ) / 2c )² − a / c ), a = FcE / Fc*
 * @param fcE FcE, critical buckling stress                     [psi]
 * @param fcStar Fc*, compression strength adjusted but for Cp  [psi]
 * @param c   0.8 sawn, 0.9 glued laminated                     [1]
 * @returns   Cp                                                [1]
 * @valid     le / d ≤ 50
 * @source    nds-2018 Eq. 3.7-1
 * @example   fcE = 1126.8, fcStar = 1600, c = 0.8 → 0.561
 */
export function columnStability(fcE: number, fcStar: number, c: number): number {
  const a = fcE / fcStar;
  const half = (1 + a) / (2 * c);
  return half - Math.sqrt(half ** 2 - a / c);
}
