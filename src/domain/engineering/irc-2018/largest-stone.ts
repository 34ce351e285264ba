/** Share of the narrowest form dimension that a stone may measure. */
const SHARE = 1 / 5;

/**
 * Largest stone of the mix that a form lets through. Any unit of length.
 *
 * @equation  s = b / 5
 * @param b   narrowest clear dimension between the form's faces [mm]
 * @returns   s                                                 [mm]
 * @valid     b > 0; beside it three quarters of the clear distance between bars, which is not counted here
 * @source    irc-2018 §R608.5.1.3, from memory; aci-318-14 likewise
 * @example   b = 152.4 → 30.48
 */
export function largestStone(b: number): number {
  return b * SHARE;
}
