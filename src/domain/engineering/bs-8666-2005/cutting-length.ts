import { helixLength } from './helix-length.js';
import { LEAST_ENDS, leastEndsLength } from './least-ends.js';
import { SHAPE_LENGTHS } from './shape-lengths.js';

/** Codes whose length is worked out here: code 47 with its least ends only; 99 is whatever its sketch says. */
export const SHAPE_CODES: readonly string[] = [...new Set([...Object.keys(SHAPE_LENGTHS), ...Object.keys(LEAST_ENDS), '77'])].sort();

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
  const found = SHAPE_LENGTHS[code] ?? LEAST_ENDS[code];
  return found === undefined ? null : Object.keys(found.parts);
}

/**
 * Length of straight bar that a bent one is cut from; a link without C has the least ends.
 *
 * @equation  L = Σ ( multiple · dimension ) − nr · r − nd · d; helix 77 by its turns; least ends by their own rule
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
  if (dimensions['C'] === undefined && LEAST_ENDS[code] !== undefined) return leastEndsLength(code, d, dimensions);
  const needed = shapeDimensions(code);
  if (needed === null || needed.some((name) => dimensions[name] === undefined)) return null;
  const of = (name: string): number => dimensions[name] ?? 0;
  if (code === '77') return helixLength(of('A'), of('B'), of('C'), d);
  const found = SHAPE_LENGTHS[code];
  if (found === undefined) return null;
  const sum = Object.entries(found.parts).reduce((total, [name, times]) => total + times * of(name), 0);
  return sum - found.r * r - found.d * d;
}
