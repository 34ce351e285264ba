/**
 * Output of mixers on the site.
 *
 * @equation  Q = capacity · 60 / batch · number
 * @param capacity of one batch                                 [ft3]
 * @param minutes a batch takes                                 [-]
 * @param mixers number of mixers                               [1]
 * @returns   Q in an hour                                      [ft3]
 * @valid     minutes > 0
 * @source    en5151-forms p. 7
 * @example   capacity = 16, minutes = 6, mixers = 2 → 320
 */
export function mixerOutput(capacity: number, minutes: number, mixers: number): number {
  return ((capacity * 60) / minutes) * mixers;
}
