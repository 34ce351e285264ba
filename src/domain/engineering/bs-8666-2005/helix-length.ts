/** Over this pitch, as a part of the outside diameter, the rise of a helix counts. bs-8666-2005 Table 3, from memory. */
export const PITCH_THAT_COUNTS = 1 / 5;

/**
 * Length of straight bar of a helix, code 77: the rise of each turn counts where the pitch is over a fifth of the diameter.
 *
 * @equation  L = C · π · ( A − d ); with B > A / 5: C · √( ( π · ( A − d ) )² + B² )
 * @param A   outside diameter                                  [mm]
 * @param B   pitch                                             [mm]
 * @param C   number of turns                                   [-]
 * @param d   nominal diameter of the bar                       [mm]
 * @returns   L                                                 [mm]
 * @valid     A over d
 * @source    bs-8666-2005 Table 3; the equation with the pitch from memory
 * @example   A = 500, B = 150, C = 10, d = 12 → 15404.178233
 */
export function helixLength(A: number, B: number, C: number, d: number): number {
  const around = Math.PI * (A - d);
  return B > A * PITCH_THAT_COUNTS ? C * Math.hypot(around, B) : C * around;
}
