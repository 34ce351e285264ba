import { EQUATION_B_RISE_M_PER_H, SLUMP_LIMIT_MM } from './limits-si.js';
import { shownNumber } from '../../evidence/shown-number.js';

/**
 * `fullHeadNotes` by the limits of the SI printing.
 *
 * @equation  slump > 175 or R > 4.5
 * @param slump slump of the concrete                           [mm]
 * @param R   rate of rise of the concrete in the form          [m/h]
 * @returns   sentences to print beside the pressure            [-]
 * @valid     any slump and rate
 * @source    aci-347-04 §2.2.2, SI of the limits printed in hurd-2006, from memory
 * @example   slump = 175, R = 4.5 → length = 0
 */
export function fullHeadNotesSi(slump: number, R: number): readonly string[] {
  const notes: string[] = [];
  if (slump > SLUMP_LIMIT_MM) {
    notes.push(`Slump ${shownNumber(slump)} mm is over the ${SLUMP_LIMIT_MM} mm limit of the wall equations: full liquid head.`);
  }
  if (R > EQUATION_B_RISE_M_PER_H) {
    notes.push(
      `Rate of rise ${shownNumber(R)} m/h is over the ${EQUATION_B_RISE_M_PER_H} m/h limit of the wall equations: full liquid head.`,
    );
  }
  return notes;
}
