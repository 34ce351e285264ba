import { writtenSystem, type UnitSystem } from './written-system.js';
import type { Dimension } from '../quantity/unit.js';

/** Which printing of the equations a question asks for, and what decided it. */
export interface QuestionSystem {
  readonly system: UnitSystem;
  /** A plain sentence to print beside the result. */
  readonly note: string;
}

/** What the equations are asked with, beside height and temperature. */
export type AskedWith = 'rise' | 'rating';

const MEASURES: Readonly<Record<'height' | 'concrete' | AskedWith, Dimension | 'length'>> = {
  height: 'length',
  concrete: 'temperature',
  rise: 'rise',
  rating: 'pressure',
};

/**
 * Largest difference over the span of temperatures, calculated: Eq. A -0.12 % to +0.19 %, Eq. B -0.08 % to +0.13 %, and Cw of heavy
 * concrete +0.12 %; where the minimum does not govern, together under 0.3 %.
 */
const DIFFERENCE =
  'differs by up to 0.3 % where the same equation holds, because each set rounds its constants and limits for itself';
const US_DIFFERS = `the US customary set ${DIFFERENCE}, and its minimum is 600 · Cw psf (28.7 kPa), here 30 · Cw kPa`;
const SI_DIFFERS = `the SI set ${DIFFERENCE}, and its minimum is 30 · Cw kPa (627 psf), here 600 · Cw psf`;

/**
 * The set of equations in whose units a question is asked: the SI set where height, temperature and the rate (or rating) are all
 * written in SI units, the US customary set where any of them is not.
 *
 * @param fields    the calculator's fields as they were sent
 * @param askedWith `rise` for a pressure, `rating` for a rate
 */
export function questionSystem(fields: Readonly<Record<string, unknown>>, askedWith: AskedWith): QuestionSystem {
  const names = ['height', askedWith, 'concrete'] as const;
  const us = names.filter((name) => writtenSystem(fields[name], MEASURES[name]) !== 'si');
  if (us.length === 0) {
    return { system: 'si', note: `SI equations of ACI 347-04, because ${words(names)} are all in SI units; ${US_DIFFERS}.` };
  }
  const because = `${words(us)} ${us.length > 1 ? 'are' : 'is'} in US customary units`;
  return { system: 'us-customary', note: `US customary equations of ACI 347-04, because ${because}; ${SI_DIFFERS}.` };
}

const words = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
