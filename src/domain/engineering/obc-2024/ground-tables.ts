/** Greatest height of the ground above the floor [m], and the cell for walls up to 2.44, 2.75 and 3.00 m; null: not covered. */
export type GroundRow = readonly [groundM: number, m244: string | null, m275: string | null, m300: string | null];

/**
 * Vertical bars of flat foundation walls with stay-in-place forms, by thickness of the concrete [mm]: `10M @ 400` is a 10M every 400 mm.
 *
 * obc-2024 Tables 9.15.4.5.-A to -C, read in a parsed transcription.
 */
export const GROUND_TABLES: Readonly<Record<number, readonly GroundRow[]>> = {
  150: [
    [1.35, '10M @ 400', '10M @ 400', '10M @ 400'],
    [1.6, '10M @ 400', '10M @ 380', '10M @ 380'],
    [2.0, '10M @ 380', '10M @ 380', '10M @ 380'],
    [2.2, '10M @ 250', '10M @ 250', '10M @ 250'],
    [2.35, null, '10M @ 250', '10M @ 250'],
    [2.6, null, '10M @ 250', '10M @ 250'],
    [3.0, null, null, '10M @ 250'],
  ],
  190: [
    [2.2, 'none', '10M @ 400', '10M @ 400'],
    [2.35, null, '10M @ 300', '10M @ 300'],
    [2.6, null, '10M @ 300', '15M @ 400'],
    [3.0, null, null, '15M @ 400'],
  ],
  240: [
    [2.2, 'none', 'none', 'none'],
    [2.6, null, '15M @ 400', '15M @ 400'],
    [3.0, null, null, '15M @ 400'],
  ],
};

/** Greatest heights of wall, the columns of the tables [m]. */
export const GROUND_HEIGHTS_M = [2.44, 2.75, 3] as const;
