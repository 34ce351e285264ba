import { EQUATION_B_RISE_FT_PER_H, SLUMP_LIMIT_IN } from './limits.js';
import { shownNumber } from '../../evidence/shown-number.js';

/**
 * Why the standard asks for the full liquid head instead of its equations, one sentence a reason; empty where it does not.
 *
 * @equation  slump > 7 or R > 15
 * @param slump slump of the concrete                           [in]
 * @param R   rate of rise of the concrete in the form          [ft/h]
 * @returns   sentences to print beside the pressure            [-]
 * @valid     any slump and rate
 * @source    aci-347-04 §2.2.2, as printed in hurd-2006; above 15 ft/h from memory
 * @example   slump = 7, R = 15 → length = 0
 */
export function fullHeadNotes(slump: number, R: number): readonly string[] {
  const notes: string[] = [];
  if (slump > SLUMP_LIMIT_IN) {
    notes.push(`Slump ${shownNumber(slump)} in is over the ${SLUMP_LIMIT_IN} in limit of the wall equations: full liquid head.`);
  }
  if (R > EQUATION_B_RISE_FT_PER_H) {
    notes.push(
      `Rate of rise ${shownNumber(R)} ft/h is over the ${EQUATION_B_RISE_FT_PER_H} ft/h limit of the wall equations: full liquid head.`,
    );
  }
  return notes;
}
