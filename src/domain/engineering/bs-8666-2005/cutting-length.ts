import { SHAPE_LENGTHS } from './shape-lengths.js';

/** Codes whose length is worked out here. Code 47 has two forms and 99 is whatever its sketch says. */
export const SHAPE_CODES: readonly string[] = [...Object.keys(SHAPE_LENGTHS), '77'].sort();

/**
 * The dimensions that a shape code measures, in their order; null for a code without a formula.
 *
 * @equation  code → names of the dimensions
 * @param code shape code                                       [-]
 * @returns   names                                             [-]
 * @valid     codes of SHAPE_CODES
 * @source    bs-8666-2005 Table 3, as printed in public charts
 * @example   code = '21' → length = 3
 */
export function shapeDimensions(code: string): readonly string[] | null {
  if (code === '77') return ['A', 'C'];
  const found = SHAPE_LENGTHS[code];
  return found === undefined ? null : Object.keys(found.parts);
}

/**
 * Length of straight bar that a bent one is cut from.
 *
 * @equation  L = Σ ( multiple · dimension ) − nr · r − nd · d; helix 77: C · π · ( A − d )
 * @param code shape code                                       [-]
 * @param d   nominal diameter of the bar                       [mm]
 * @param r   inside radius of its bends                        [mm]
 * @param dimensions outside dimensions by letter; C of code 77 is a number of turns [mm]
 * @returns   L; null for a code without a formula or where a dimension is missing [mm]
 * @valid     codes of SHAPE_CODES; bends at the standard radius
 * @source    bs-8666-2005 Table 3, as printed in public charts
 * @example   code = '21', d = 12, r = 24, dimensions.A = 600, dimensions.B = 200, dimensions.C = 600 → 1352
 */
export function cuttingLength(code: string, d: number, r: number, dimensions: Readonly<Record<string, number>>): number | null {
  const needed = shapeDimensions(code);
  if (needed === null || needed.some((name) => dimensions[name] === undefined)) return null;
  const of = (name: string): number => dimensions[name] ?? 0;
  if (code === '77') return of('C') * Math.PI * (of('A') - d);
  const found = SHAPE_LENGTHS[code];
  if (found === undefined) return null;
  const sum = Object.entries(found.parts).reduce((total, [name, times]) => total + times * of(name), 0);
  return sum - found.r * r - found.d * d;
}
