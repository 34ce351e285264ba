/**
 * Axial force of a raking brace for each unit of length of wall. Any coherent units.
 *
 * @equation  P = H · h · l / ( h1 · l1 ), l = √( h1² + l1² )
 * @param H   load per length at the top of the wall            [lb/ft]
 * @param h   height of the wall                                [ft]
 * @param h1  height at which the brace meets the wall          [ft]
 * @param l1  distance of its foot from the wall                [ft]
 * @returns   P, compression or tension per length of wall      [lb/ft]
 * @valid     0 < h1 ≤ h, l1 > 0; the wall turns about its foot; the load reverses
 * @source    hanna-formwork, bracing; peurifoy-oberlender-4 Fig. 5-17 for h1 = h
 * @example   H = 125, h = 10, h1 = 10, l1 = 6 → 243
 */
export function braceAxial(H: number, h: number, h1: number, l1: number): number {
  return (H * h * Math.hypot(h1, l1)) / (h1 * l1);
}
