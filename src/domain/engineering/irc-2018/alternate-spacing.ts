/** Bars of the table [in²] and the widest spacing it prints [in]. irc-2018 Table R608.5.4(2). */
const AREAS: Readonly<Record<string, number>> = { '#4': 0.2, '#5': 0.31, '#6': 0.44 };
const WIDEST_IN = 48;
const TABLE_GRADE_PSI = 60_000;

/**
 * Widest spacing of another bar or grade in place of the one that a wall table prints.
 *
 * The rule gives each printed cell of the table's rows 8 to 37; the code prints the table, not the rule.
 *
 * @equation  s' = s · A' / A · fy' / 60 000, to the nearest inch, at most 48 in
 * @param spacing s, of the table's bar                         [in]
 * @param bar the table's bar                                   [-]
 * @param alternate the bar used instead                        [-]
 * @param fy  its yield strength                                [psi]
 * @returns   s'; null outside the table                        [in]
 * @valid     #4 to #6; Grade 40 or 60; 8 ≤ s ≤ 48 whole inches
 * @source    irc-2018 Table R608.5.4(2), the same as R404.1.2(9), rows 8 to 37 as printed in irc-web-copies
 * @example   spacing = 8, bar = '#4', alternate = '#5', fy = 60000 → 12
 */
export function alternateSpacing(spacing: number, bar: string, alternate: string, fy: number): number | null {
  const [from, to] = [AREAS[bar], AREAS[alternate]];
  if (from === undefined || to === undefined || (fy !== 40_000 && fy !== 60_000)) return null;
  if (!Number.isInteger(spacing) || spacing < 8 || spacing > WIDEST_IN) return null;
  return Math.min(WIDEST_IN, Math.round((spacing * to * fy) / (from * TABLE_GRADE_PSI)));
}
