import { inSi } from '../quantity/quantity.js';
import { lateralOfSoil, SOIL_CLASSES } from '../engineering/irc-2018/soil-classes.js';
import type { CalculatorInput } from './calculator-input.js';

/** Lateral load of a soil: growth of its pressure with depth; the class where it was named by one. */
export interface Soil {
  readonly kNPerM3: number;
  readonly className: string | null;
}

const SPAN = { above: 0, to: inSi('fluid weight', 'psf/ft', 500), says: 'more than 0 and at most 500 psf/ft' };

/** The field `soil`: a lateral load, or a class of the residential tables; `not-listed` for a class they leave out. */
export function readSoil(input: CalculatorInput, written: unknown): Soil | 'not-listed' | undefined {
  const name = typeof written === 'string' ? written.trim().toUpperCase() : '';
  if (SOIL_CLASSES.includes(name)) {
    const psfPerFt = lateralOfSoil(name);
    return psfPerFt === null ? 'not-listed' : { kNPerM3: inSi('fluid weight', 'psf/ft', psfPerFt), className: name };
  }
  if (typeof written === 'string' && !/\d/.test(written)) return input.refuse('soil', `a lateral load such as 45 psf/ft, or one of ${SOIL_CLASSES.join(', ')}`);
  const kNPerM3 = input.quantity('soil', 'fluid weight', '45 psf/ft', SPAN);
  return kNPerM3 === undefined ? undefined : { kNPerM3, className: null };
}
