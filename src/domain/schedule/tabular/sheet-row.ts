import type { UnusableCell } from '../unusable-cell.js';

export type CellValue = string | number | boolean | UnusableCell;

/** One row of a sheet as the spreadsheet numbers it, with its cells that hold something, by column from 1. */
export interface SheetRow {
  readonly row: number;
  readonly cells: ReadonlyMap<number, CellValue>;
}

/** `A`, `Z`, `AA`: the letters a spreadsheet shows over a column. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26))
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  return letters;
}
