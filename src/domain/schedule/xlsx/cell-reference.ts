/** Last column (XFD) and last row of a worksheet (ECMA-376 part 1, 18.3.1.73 and the bounds every spreadsheet keeps). */
export const MAX_COLUMN = 16_384;
export const MAX_ROW = 1_048_576;

export interface CellReference {
  readonly column: number;
  readonly row: number;
}

/** `AB12` is column 28 of row 12; undefined for what is no cell of a worksheet (`XFE1`, `A0`, `A1048577`, `12`). */
export function cellReference(written: string): CellReference | undefined {
  const match = /^([A-Z]{1,3})([1-9]\d{0,6})$/.exec(written);
  if (!match) return undefined;
  let column = 0;
  for (const letter of match[1] ?? '') column = column * 26 + letter.charCodeAt(0) - 64;
  const row = Number(match[2]);
  return column <= MAX_COLUMN && row <= MAX_ROW ? { column, row } : undefined;
}

export interface CellBlock {
  readonly written: string;
  readonly from: CellReference;
  readonly to: CellReference;
}

/** `A3:B5`, first corner to last; undefined for what is no block of cells. */
export function cellBlock(written: string): CellBlock | undefined {
  const [first = '', last = first, ...more] = written.split(':');
  const from = cellReference(first);
  const to = cellReference(last);
  return from && to && more.length === 0 && to.row >= from.row && to.column >= from.column ? { written, from, to } : undefined;
}
