/**
 * Horizontal force at a raking brace's foot for each unit of length of wall. Any coherent units.
 *
 * @equation  Q = H · h / h1
 * @param H   load per length at the top of the wall            [lb/ft]
 * @param h   height of the wall                                [ft]
 * @param h1  height at which the brace meets the wall          [ft]
 * @returns   Q, per length of wall, either way                 [lb/ft]
 * @valid     0 < h1 ≤ h
 * @source    peurifoy-oberlender-4 Fig. 5-17; statics for h1 < h
 * @example   H = 125, h = 10, h1 = 10 → 125
 */
export function braceHorizontal(H: number, h: number, h1: number): number {
  return (H * h) / h1;
}
