/** Cf of a solid wall on the ground, Cases A and B, by length over height. 1.30 as printed in wind-wall-sheet, the others from memory. */
const BY_ASPECT = [
  [0.05, 1.8], [0.1, 1.7], [0.2, 1.65], [0.5, 1.55], [1, 1.45], [2, 1.4], [4, 1.35], [5, 1.35], [10, 1.3],
] as const;

/** The highest of the table: for a wall whose length is not known. */
export const HIGHEST_FORCE_COEFFICIENT = 1.8;

/**
 * Net force coefficient of a solid freestanding wall that stands on the ground, wind square to it (Cases A and B).
 *
 * @equation  Cf of the table by B / s, straight lines between
 * @param aspect B / s, length of the wall over its height      [1]
 * @returns   Cf                                                [1]
 * @valid     solid wall from the ground up (s / h = 1)
 * @source    asce-7-16 Fig. 29.3-1, from memory; 1.30 of long walls as printed in wind-wall-sheet
 * @example   aspect = 104.4 → 1.30
 */
export function wallForceCoefficient(aspect: number): number {
  return alongTable(BY_ASPECT, aspect);
}

/** Cf over the first height from the windward end, Case C, by length over height. 4.30 as printed in wind-wall-sheet, the others from memory. */
const END_ZONE = [
  [2, 2.25], [3, 2.6], [4, 2.9], [5, 3.1], [6, 3.3], [7, 3.4], [8, 3.55], [9, 3.65], [10, 3.75], [13, 4], [45, 4.3],
] as const;

/** For a wall from the ground up: 1.8 − s / h with s / h = 1. */
const GROUND_FACTOR = 0.8;

/** Case C is asked for from this length over height on. */
export const END_ZONE_ASPECT = 2;

/**
 * Net force coefficient over the first height of wall from a free end, wind on the skew (Case C).
 *
 * @equation  Cf of the table by B / s, times 1.8 − s / h = 0.8
 * @param aspect B / s, length of the wall over its height      [1]
 * @returns   Cf of the end zone, without the relief of a return corner [1]
 * @valid     B / s ≥ 2; solid wall from the ground up (s / h = 1)
 * @source    asce-7-16 Fig. 29.3-1, from memory; 4.30 and the factor as printed in wind-wall-sheet
 * @example   aspect = 104.4 → 3.44
 */
export function endZoneCoefficient(aspect: number): number {
  return GROUND_FACTOR * alongTable(END_ZONE, aspect);
}

/** Straight lines between the entries; the first and last column are open (`≤`, `≥`). Interpolation as the figure's note allows, from memory. */
function alongTable(rows: readonly (readonly [x: number, y: number])[], x: number): number {
  const above = rows.findIndex(([at]) => x <= at);
  if (above < 0) return rows.at(-1)?.[1] ?? Number.NaN;
  const [x2, y2] = rows[above] ?? [0, Number.NaN];
  const [x1, y1] = rows[above - 1] ?? [x2 - 1, y2];
  return x <= x1 ? y2 : y1 + ((x - x1) / (x2 - x1)) * (y2 - y1);
}
