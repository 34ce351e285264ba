const BOARDS_IN: Readonly<Record<number, number>> = {
  1: 0.75, 2: 1.5, 3: 2.5, 4: 3.5, 5: 4.5, 6: 5.5, 8: 7.25, 10: 9.25, 12: 11.25,
};
/** Lumber whose lesser nominal side is 5 in or more is dressed by half an inch only. */
const TIMBER_FROM = 5;

/**
 * Dressed side of lumber by its nominal sides.
 *
 * @equation  1 → 3/4, 2 → 1 1/2, 4 → 3 1/2, 6 → 5 1/2, 8 → 7 1/4 in; timbers half an inch less than nominal
 * @param nominal the side asked for                            [in]
 * @param least the lesser nominal side of the section          [in]
 * @returns   dressed side; null for no nominal size            [in]
 * @valid     1 to 12 in nominal
 * @source    nds-2018 supplement Table 1A, from memory; 4x6 as in peurifoy-oberlender-4 p. 132
 * @example   nominal = 6, least = 4 → 5.5
 */
export function dressedSize(nominal: number, least: number): number | null {
  const board = BOARDS_IN[nominal];
  if (board === undefined) return null;
  return least >= TIMBER_FROM ? nominal - 0.5 : board;
}
