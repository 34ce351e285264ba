import type { RowPlace } from './schedule.js';

/** Where a value of the document stood in what was uploaded, and the unit its column's header gives to bare numbers. */
export interface CellPlace {
  readonly sheet: string | null;
  readonly row: number | null;
  /** `C (core)` in a table, null in a document. */
  readonly column: string | null;
  readonly unit: string | null;
  /** The column is missing and that has been told once: an empty value is not told again on every row. */
  readonly told: boolean;
}

/** Finds the place of a JSON pointer of the canonical document. */
export interface Places {
  readonly at: (pointer: string) => CellPlace;
}

const NOWHERE: CellPlace = { sheet: null, row: null, column: null, unit: null, told: false };

/** A JSON document is its own place: the pointer says all. */
export const DOCUMENT_PLACES: Places = { at: () => NOWHERE };

export function rowPlace(places: Places, pointer: string): RowPlace {
  const { sheet, row } = places.at(pointer);
  return { sheet, row, pointer };
}
