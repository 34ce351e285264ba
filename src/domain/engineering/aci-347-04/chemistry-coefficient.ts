/** Rows of the standard's table: what binds the concrete. */
export type CementGroup = 'portland-i-ii-iii' | 'other-or-low-blend' | 'high-blend';

/** Cc by cement, without and with a retarding admixture. aci-347-04 Table 2.2, from memory. */
const COEFFICIENTS: Readonly<Record<CementGroup, { readonly plain: number; readonly retarded: number }>> = {
  'portland-i-ii-iii': { plain: 1.0, retarded: 1.2 },
  'other-or-low-blend': { plain: 1.2, retarded: 1.4 },
  'high-blend': { plain: 1.4, retarded: 1.4 },
};

/**
 * Coefficient of chemistry: cements that set later and admixtures that delay setting keep the concrete liquid for longer.
 *
 * Groups: Types I, II and III; other types, and blends with under 70 % slag or under 40 % fly ash; blends with more.
 *
 * @equation  Cc = 1.0, 1.2 with retarder (Types I to III); 1.2, 1.4 with retarder (other types, low blends); 1.4 (high blends)
 * @param cement   row of the table                             [-]
 * @param retarder any admixture that delays setting            [-]
 * @returns   Cc, factor on the lateral pressure                [1]
 * @valid     cement of a known group
 * @source    aci-347-04 Table 2.2, from memory
 * @example   cement = 'other-or-low-blend', retarder = true → 1.4
 */
export function chemistryCoefficient(cement: CementGroup, retarder: boolean): number {
  const row = COEFFICIENTS[cement];
  return retarder ? row.retarded : row.plain;
}
