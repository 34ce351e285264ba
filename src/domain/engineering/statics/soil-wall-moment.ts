/**
 * Reaction at the top of a wall, held at top and foot, that soil loads up to a height: a triangle of pressure.
 *
 * Any coherent units: psf/ft and ft give lb/ft.
 *
 * @equation  Rt = w · H³ / ( 6 · L )
 * @param w   growth of the pressure with depth                 [psf/ft]
 * @param H   height of the soil above the foot                 [ft]
 * @param L   span between foot and top support                 [ft]
 * @returns   Rt, per unit length of wall                       [lb/ft]
 * @valid     0 ≤ H ≤ L; both ends free to turn; no surcharge, no water
 * @source    statics
 * @example   w = 30, H = 8, L = 8 → 320.0
 */
export function soilWallTop(w: number, H: number, L: number): number {
  return (w * H ** 3) / (6 * L);
}

/**
 * Reaction at the foot of the same wall.
 *
 * @equation  Rb = w · H² / 2 − Rt
 * @param w   growth of the pressure with depth                 [psf/ft]
 * @param H   height of the soil above the foot                 [ft]
 * @param L   span between foot and top support                 [ft]
 * @returns   Rb, per unit length of wall                       [lb/ft]
 * @valid     as `soilWallTop`
 * @source    statics
 * @example   w = 30, H = 8, L = 8 → 640.0
 */
export function soilWallFoot(w: number, H: number, L: number): number {
  return (w * H ** 2) / 2 - soilWallTop(w, H, L);
}

/**
 * Where the moment of the same wall is greatest, below the top support.
 *
 * @equation  x = L − H + H · √( H / ( 3 · L ) )
 * @param H   height of the soil above the foot                 [ft]
 * @param L   span between foot and top support                 [ft]
 * @returns   x, below the top support                          [ft]
 * @valid     as `soilWallTop`
 * @source    statics
 * @example   H = 8, L = 8 → 4.619
 */
export function soilWallMomentDepth(H: number, L: number): number {
  return L - H + H * Math.sqrt(H / (3 * L));
}

/**
 * Greatest moment of the same wall.
 *
 * @equation  M = w · H³ / 6 · ( ( L − H ) / L + 2 · H / ( 3 · L ) · √( H / ( 3 · L ) ) )
 * @param w   growth of the pressure with depth                 [psf/ft]
 * @param H   height of the soil above the foot                 [ft]
 * @param L   span between foot and top support                 [ft]
 * @returns   M, per unit length of wall                        [ft·lb/ft]
 * @valid     as `soilWallTop`
 * @source    statics; the form is printed in floodproofing-manual fig. 11.6
 * @example   w = 60, H = 6, L = 9 → 1172.55
 */
export function soilWallMoment(w: number, H: number, L: number): number {
  return ((w * H ** 3) / 6) * ((L - H) / L + ((2 * H) / (3 * L)) * Math.sqrt(H / (3 * L)));
}
