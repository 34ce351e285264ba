/**
 * Load per length at the top of a wall that overturns it as much as an even pressure does. Any coherent units: psf and ft give lb/ft.
 *
 * @equation  H = q · h · r
 * @param q   pressure on the wall                              [psf]
 * @param h   height of the wall                                [ft]
 * @param r   height of the resultant over that of the wall     [1]
 * @returns   H, load per length at the top                     [lb/ft]
 * @valid     the wall turns about its foot; r = 0.5 for an even pressure
 * @source    nunnally p. 338, peurifoy-oberlender-4 Table 5-7; statics
 * @example   q = 25, h = 10, r = 0.5 → 125
 */
export function equivalentTopLoad(q: number, h: number, r: number): number {
  return q * h * r;
}
