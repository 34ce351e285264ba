import { NM_PER_FOOT, NM_PER_INCH, NM_PER_MM } from '../quantity/length.js';
import type { Nm } from '../quantity/length.js';
import type { LengthUnit } from '../schedule/schedule.js';

const SIXTY_FOURTHS = 64;
const SIXTEENTHS = 16;
const TENTHS = 10;

/**
 * A length as a crew reads it: `12'-6 1/2"` where the schedule is in feet or inches, whole or tenth millimetres where it is metric.
 *
 * Exact to 1/64 in or 0.1 mm where the length is such a multiple; otherwise rounded to 1/16 in or 0.1 mm and marked `~`.
 *
 * @param value length [nm], negative for a level below
 */
export function lengthLabel(value: Nm, units: LengthUnit): string {
  const sign = value < 0 ? '-' : '';
  const size = Math.abs(value);
  return units === 'mm' || units === 'm' ? millimetreLabel(size, sign) : inchLabel(size, sign);
}

function millimetreLabel(size: Nm, sign: string): string {
  const tenths = Math.round((size * TENTHS) / NM_PER_MM);
  const exact = (tenths * NM_PER_MM) / TENTHS === size;
  const text = tenths % TENTHS === 0 ? String(tenths / TENTHS) : (tenths / TENTHS).toFixed(1);
  return `${exact ? '' : '~'}${sign}${text}`;
}

function inchLabel(size: Nm, sign: string): string {
  const fine = Math.round((size * SIXTY_FOURTHS) / NM_PER_INCH);
  const exact = (fine * NM_PER_INCH) / SIXTY_FOURTHS === size;
  const parts = exact ? fine : Math.round((size * SIXTEENTHS) / NM_PER_INCH) * (SIXTY_FOURTHS / SIXTEENTHS);
  const whole = Math.floor(parts / SIXTY_FOURTHS);
  const inchesPerFoot = NM_PER_FOOT / NM_PER_INCH;
  const feet = Math.floor(whole / inchesPerFoot);
  const fraction = fractionLabel(parts % SIXTY_FOURTHS, SIXTY_FOURTHS);
  const inches = whole % inchesPerFoot;
  const inchText = fraction === '' ? String(inches) : inches === 0 && feet === 0 ? fraction : `${inches} ${fraction}`;
  return `${exact ? '' : '~'}${sign}${feet > 0 ? `${feet}'-` : ''}${inchText}"`;
}

function fractionLabel(parts: number, of: number): string {
  if (parts === 0) return '';
  return parts % 2 === 0 ? fractionLabel(parts / 2, of / 2) : `${parts}/${of}`;
}
