/** Coldest concrete of the method [°C]: from memory. */
export const COLDEST_C = 5;
/** Warmest concrete of the method [°C]: from memory. */
export const WARMEST_C = 30;

/**
 * Temperature coefficient of the method: colder concrete stays liquid for longer.
 *
 * @equation  K = ( 36 / ( T + 16 ) )²
 * @param T   temperature of the concrete at placing            [°C]
 * @returns   K                                                 [1]
 * @valid     5 ≤ T ≤ 30, from memory
 * @source    ciria-108, as printed in ciria-forum-sheet and ciria-sheet
 * @example   T = 12.5 → 1.60
 */
export function temperatureFactor(T: number): number {
  return (36 / (T + 16)) ** 2;
}
