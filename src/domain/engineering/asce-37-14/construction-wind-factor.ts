/** Six weeks, one, two and five years [h]; a year is 365 days. */
const STEPS = [
  { under: 6 * 168, factor: 0.75 },
  { under: 8760, factor: 0.8 },
  { under: 2 * 8760, factor: 0.85 },
  { under: 5 * 8760, factor: 0.9 },
] as const;

/** The factors end at five years [h]. */
export const LONGEST_CONSTRUCTION_H = 5 * 8760;

/**
 * Factor on the design wind speed for a wall that stands unfinished for a short time only.
 *
 * On a border of two periods the higher factor holds; five years are the last that have one.
 *
 * @equation  0.75 under 6 weeks, 0.80 to 1 year, 0.85 to 2 years, 0.90 to 5 years
 * @param hours how long the wall stands before its structure holds it [h]
 * @returns   factor on the speed; null over five years         [1]
 * @valid     to 5 years; not through a hurricane season without a plan to take down or carry on
 * @source    asce-37-14 §6.2, from memory; 0.80 as printed in tilt-up-bracing-guideline
 * @example   hours = 1344 → 0.80
 */
export function constructionWindFactor(hours: number): number | null {
  if (hours === LONGEST_CONSTRUCTION_H) return STEPS[STEPS.length - 1]!.factor;
  return STEPS.find(({ under }) => hours < under)?.factor ?? null;
}
