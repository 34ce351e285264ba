/** `_x000D_` stands for the character of that code, and `_x005F_` for an underscore that would start one (ECMA-376 part 1, 22.9.2.19). */
const ESCAPED = /_x([0-9A-Fa-f]{4})_/g;

/** A text as its cell shows it. */
export const shownCellText = (stored: string): string =>
  stored.includes('_x') ? stored.replace(ESCAPED, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16))) : stored;

/** A text as a workbook stores it, so that the cell shows these very characters. */
export const storedCellText = (shown: string): string => shown.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');
