import type { WindEdition } from './wind-input.js';

/** Where an edition of ASCE 7 prints what the wind on a freestanding wall is worked from. */
export interface WindPlaces {
  readonly chapter: string;
  readonly exposure: string;
  readonly velocity: string;
  readonly coefficient: string;
  readonly pressure: string;
}

const LATER = { chapter: 'chapter 29', exposure: 'Table 26.10-1', velocity: 'Eq. 26.10-1', coefficient: 'Fig. 29.3-1', pressure: 'Eq. 29.3-1' } as const;

/** The figures of 2005 and 2010 are told by wind-wall-sheet; equations and tables of both are from memory. */
const PLACES: Readonly<Record<WindEdition, WindPlaces>> = {
  'asce-7-05': { chapter: '§6.5', exposure: 'Table 6-3', velocity: 'Eq. 6-15', coefficient: 'Fig. 6-20', pressure: 'Eq. 6-27' },
  'asce-7-10': { chapter: 'chapter 29', exposure: 'Table 29.3-1', velocity: 'Eq. 29.3-1', coefficient: 'Fig. 29.4-1', pressure: 'Eq. 29.4-1' },
  'asce-7-16': LATER,
  'asce-7-22': LATER,
};

/** The citation of one of these places, such as `asce-7-10 Table 29.3-1`. */
export const windPlace = (edition: WindEdition, what: keyof WindPlaces): string => `${edition} ${PLACES[edition][what]}`;
