/** What a shape's length is made of: so many of each dimension, less so many inside radii and diameters [mm]. */
export interface ShapeLength {
  /** Multiples of the dimensions. */
  readonly parts: Readonly<Record<string, number>>;
  /** How many inside radii r, and nominal diameters d, are taken off. */
  readonly r: number;
  readonly d: number;
}

const shape = (parts: Readonly<Record<string, number>>, r = 0, d = 0): ShapeLength => ({ parts, r, d });

const U_SHAPE = shape({ A: 1, B: 1, C: 1 }, 1, 2);
const CRANK = shape({ A: 1, B: 1, C: 1 });
const OFFSET = shape({ A: 1, B: 1, C: 1 }, 0.5, 1);
const THREE_BENDS = shape({ A: 1, B: 1, C: 1, D: 1 }, 1.5, 3);
const FOUR_BENDS = shape({ A: 1, B: 1, C: 1, D: 1, E: 1 }, 2, 4);

/**
 * Lengths of the shape codes that are sums: outside dimensions, less what the bends save. bs-8666-2005 Table 3, read in public charts.
 *
 * Code 12 takes off its own radius R, codes 75 and 77 are arcs: `cuttingLength` knows them.
 */
export const SHAPE_LENGTHS: Readonly<Record<string, ShapeLength>> = {
  '00': shape({ A: 1 }),
  '01': shape({ A: 1 }),
  '11': shape({ A: 1, B: 1 }, 0.5, 1),
  '12': shape({ A: 1, B: 1, R: -0.43 }, 0, 1.2),
  '13': shape({ A: 1, B: 0.57, C: 1 }, 0, 1.6),
  '14': shape({ A: 1, C: 1 }, 0, 4),
  '15': shape({ A: 1, C: 1 }),
  '21': U_SHAPE,
  '22': THREE_BENDS,
  '23': U_SHAPE,
  '24': CRANK,
  '25': shape({ A: 1, B: 1, E: 1 }),
  '26': CRANK,
  '27': OFFSET,
  '28': OFFSET,
  '29': U_SHAPE,
  '31': THREE_BENDS,
  '32': THREE_BENDS,
  '33': shape({ A: 2, B: 1.7, C: 2 }, 0, 4),
  '41': FOUR_BENDS,
  '44': FOUR_BENDS,
  '46': shape({ A: 1, B: 2, C: 1, E: 1 }),
  '51': shape({ A: 2, B: 2, C: 2 }, 2.5, 5),
  '63': shape({ A: 2, B: 3, C: 2 }, 3, 6),
  '67': shape({ A: 1 }),
  '75': shape({ A: Math.PI, B: 1 }, 0, Math.PI),
};

/**
 * Dimensions that a bar schedule gives besides those the length is made of: they fix the bend, not the length. bs-8666-2005 Table 3, from memory.
 *
 * D of the links 51 and 63 equals C; the pitch B of the helix 77 counts only where it is steep.
 */
export const ALSO_DRAWN: Readonly<Record<string, readonly string[]>> = {
  '14': ['B', 'D'], '15': ['B', 'D'], '24': ['D', 'E'], '25': ['C', 'D'], '26': ['D'], '27': ['D'], '28': ['D'], '29': ['D'],
  '46': ['D'], '51': ['D'], '63': ['D'], '67': ['B', 'C', 'R'], '77': ['B'],
};
