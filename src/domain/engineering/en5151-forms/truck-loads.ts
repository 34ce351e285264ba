/** A quotient this little over a whole number is that number. */
const WHOLE = 1e-9;

/**
 * Truck loads for a volume, the last one begun counted whole. Any unit of volume.
 *
 * @equation  N = ⌈ V / v ⌉
 * @param V   volume to place                                   [m3]
 * @param v   load of a truck                                   [m3]
 * @returns   N                                                 [1]
 * @valid     v > 0
 * @source    statics; counting
 * @example   V = 14.8, v = 10 → 2
 */
export function truckLoads(V: number, v: number): number {
  return Math.ceil(V / v - WHOLE);
}
