/**
 * Vertical force at a raking brace's foot for each unit of length of wall: as the load reverses, its anchor is pulled up by it.
 *
 * Any coherent units.
 *
 * @equation  N = H · h / l1
 * @param H   load per length at the top of the wall            [lb/ft]
 * @param h   height of the wall                                [ft]
 * @param l1  distance of the foot from the wall                [ft]
 * @returns   N, per length of wall, up or down                 [lb/ft]
 * @valid     l1 > 0
 * @source    peurifoy-oberlender-4 Fig. 5-17; statics where the brace meets the wall below its top
 * @example   H = 125, h = 10, l1 = 6 → 208
 */
export function braceUplift(H: number, h: number, l1: number): number {
  return (H * h) / l1;
}
