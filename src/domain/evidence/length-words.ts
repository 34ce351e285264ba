import { NM_PER_FOOT, NM_PER_INCH, millimetres } from '../quantity/length.js';
import { shownNumber } from './shown-number.js';

/** Units in which a schedule is written, and a reader of it thinks. */
export type LengthStyle = 'in' | 'ft' | 'mm' | 'm';

const SIXTEENTHS = 16;

/**
 * A length in a sentence: feet and inches to the nearest sixteenth (`12'-6 1/2"`), or whole millimetres (`3823 mm`).
 *
 * Sentences are read, not calculated with: the exact number stands in the finding.
 *
 * @param mm    length [mm]
 * @param style units of the schedule; `in` and `ft` read as feet and inches, `mm` and `m` as millimetres
 */
export function lengthWords(mm: number, style: LengthStyle): string {
  if (style === 'mm' || style === 'm') return `${shownNumber(Math.round(mm))} mm`;
  const sixteenths = Math.round(millimetres(Math.abs(mm)) / (NM_PER_INCH / SIXTEENTHS));
  const perFoot = (NM_PER_FOOT / NM_PER_INCH) * SIXTEENTHS;
  const feet = Math.floor(sixteenths / perFoot);
  const whole = Math.floor((sixteenths % perFoot) / SIXTEENTHS);
  const fraction = fractionWords(sixteenths % SIXTEENTHS);
  const inches = fraction === '' ? `${whole}"` : whole === 0 && feet === 0 ? `${fraction}"` : `${whole} ${fraction}"`;
  return `${mm < 0 && sixteenths > 0 ? '-' : ''}${feet > 0 ? `${feet}'-` : ''}${inches}`;
}

function fractionWords(sixteenths: number): string {
  if (sixteenths === 0) return '';
  const divisor = [8, 4, 2].find((candidate) => sixteenths % candidate === 0) ?? 1;
  return `${sixteenths / divisor}/${SIXTEENTHS / divisor}`;
}
