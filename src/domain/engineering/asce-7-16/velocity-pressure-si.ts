/**
 * Velocity pressure of the wind, SI printing.
 *
 * @equation  q = 0.613 · Kz · Kzt · Kd · V² · I / 1000
 * @param Kz  exposure coefficient at the top of the wall       [1]
 * @param Kzt topographic factor                                [1]
 * @param Kd  directionality factor, 1 where it stands elsewhere [1]
 * @param V   wind speed                                        [m/s]
 * @param I   importance factor of the 2005 edition, else 1     [1]
 * @returns   q, velocity pressure                              [kPa]
 * @valid     V ≥ 0
 * @source    asce-7-16 Eq. 26.10-1, SI printing in newtons
 * @example   Kz = 1, Kzt = 1, Kd = 1, V = 40, I = 1 → 0.981
 */
export function velocityPressureSi(Kz: number, Kzt: number, Kd: number, V: number, I: number): number {
  return (0.613 * Kz * Kzt * Kd * V ** 2 * I) / 1000;
}
