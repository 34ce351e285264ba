/**
 * Factored load of a beam under dead, floor and snow load: the greatest of the combinations that hold it.
 *
 * @equation  wu = max( 1.4 · D, 1.2 · D + 1.6 · L + 0.5 · S, 1.2 · D + 1.6 · S + 1.0 · L )
 * @param D   dead load                                         [lb/ft]
 * @param L   live load of floors                               [lb/ft]
 * @param S   snow on roofs                                     [lb/ft]
 * @returns   wu                                                [lb/ft]
 * @valid     no wind, no earthquake
 * @source    aci-318-14 §5.3.1, from memory
 * @example   D = 500, L = 300, S = 200 → 1220
 */
export function factoredLoad(D: number, L: number, S: number): number {
  return Math.max(1.4 * D, 1.2 * D + 1.6 * L + 0.5 * S, 1.2 * D + 1.6 * S + L);
}
