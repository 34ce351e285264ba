/** Least breaking load of a tie of two strands of annealed wire, by gauge [lb]. en5151-forms Table 5. */
const DOUBLE_STRAND_LB: Readonly<Record<string, number>> = { 8: 1700, 9: 1420, 10: 1170, 11: 930 };

/** Diameters of steel wire by Washburn & Moen gauge [in]. steel-wire-gauges. */
const DIAMETERS_IN: Readonly<Record<string, number>> = {
  8: 0.162, 9: 0.1483, 10: 0.135, 11: 0.1205, 12: 0.1055, 14: 0.08, 16: 0.0625, 17: 0.054, 18: 0.0475,
};

/** Stress that the loads of the table mean over the areas of their wires, the least of the four, rounded down: calculated [psi]. */
export const IMPLIED_STRESS_PSI = 40_700;

/** Gauges whose strength is printed, and those for which it follows from the stress of these. */
export const WIRE_GAUGES: readonly string[] = Object.keys(DIAMETERS_IN);

/**
 * Least breaking load of a tie of annealed steel wire, untwisted.
 *
 * Gauges 8 to 11: half the printed load of a double strand for every strand. Thinner wire has no printed load: its area times the stress
 * that the printed loads mean.
 *
 * @equation  F = strands · ( F2 / 2, or 40 700 · π · d² / 4 )
 * @param gauge steel wire gauge, Washburn & Moen              [-]
 * @param strands wires side by side in the tie                 [-]
 * @returns   F, least breaking load, no safety in it           [lb]
 * @valid     gauges in WIRE_GAUGES; annealed form-tie wire
 * @source    en5151-forms Table 5; diameters from steel-wire-gauges
 * @example   gauge = '9', strands = 2 → 1420
 */
export function wireBreakingLoad(gauge: string, strands: number): number {
  const printed = DOUBLE_STRAND_LB[gauge];
  if (printed !== undefined) return (printed / 2) * strands;
  const d = DIAMETERS_IN[gauge] ?? Number.NaN;
  return ((IMPLIED_STRESS_PSI * Math.PI * d ** 2) / 4) * strands;
}

/**
 * Whether the load of a gauge is printed, or follows from the stress of the printed ones.
 *
 * @equation  printed for gauges 8 to 11
 * @param gauge steel wire gauge, Washburn & Moen              [-]
 * @returns   true where it is printed                          [-]
 * @valid     gauges in WIRE_GAUGES
 * @source    en5151-forms Table 5
 * @example   gauge = '16' → false
 */
export function isPrintedGauge(gauge: string): boolean {
  return Object.hasOwn(DOUBLE_STRAND_LB, gauge);
}
