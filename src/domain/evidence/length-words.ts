import { NM_PER_FOOT, NM_PER_MM, NM_PER_SIXTY_FOURTH, millimetres } from '../quantity/length.js';
import { printFeetInches, printInches, printMillimetres } from '../quantity/print-length.js';
import type { LengthUnit } from '../quantity/length-unit.js';

/**
 * A length in a sentence: feet and inches to the nearest 1/64 (`12'-6 1/2"`), or whole millimetres (`3823 mm`).
 *
 * Sentences are read, not calculated with: the exact number stands in the finding.
 *
 * @param mm    length [mm]
 * @param units of the schedule; `in` and `ft` read as feet and inches, `mm` and `m` as millimetres
 */
export function lengthWords(mm: number, units: LengthUnit): string {
  if (units === 'mm' || units === 'm') return printMillimetres(Math.round(mm) * NM_PER_MM);
  const nm = Math.round(millimetres(mm) / NM_PER_SIXTY_FOURTH) * NM_PER_SIXTY_FOURTH;
  return Math.abs(nm) < NM_PER_FOOT ? printInches(nm) : printFeetInches(nm);
}
