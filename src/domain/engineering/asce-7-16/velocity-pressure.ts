/**
 * Velocity pressure of the wind.
 *
 * @equation  q = 0.00256 · Kz · Kzt · Kd · V² · I
 * @param Kz  exposure coefficient at the top of the wall       [1]
 * @param Kzt topographic factor                                [1]
 * @param Kd  directionality factor, 1 where it stands elsewhere [1]
 * @param V   wind speed                                        [mph]
 * @param I   importance factor of the 2005 edition, else 1     [1]
 * @returns   q, velocity pressure                              [psf]
 * @valid     V ≥ 0
 * @source    asce-7-16 Eq. 26.10-1, as printed in wind-wall-sheet and permit-wind-sheet
 * @example   Kz = 0.70, Kzt = 1, Kd = 0.85, V = 115, I = 1 → 20.1
 */
export function velocityPressure(Kz: number, Kzt: number, Kd: number, V: number, I: number): number {
  return 0.00256 * Kz * Kzt * Kd * V ** 2 * I;
}
