import type { CellValue } from '../tabular/sheet-row.js';
import { UnusableCell } from '../unusable-cell.js';
import type { CellFormat } from './cell-formats.js';
import { shownCellText } from './spreadsheet-text.js';

export interface StoredCell {
  readonly type: string;
  readonly format: CellFormat | undefined;
  text: string;
  formula: boolean;
}

/** A number as XML Schema writes a double, but for its names of what is none. */
const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d{1,3})?$/;

/**
 * What a cell holds, undefined where that is nothing. Dates, errors and formulas without a result are cells nothing can be made of;
 * whoever reads them tells that with their place.
 *
 * @returns null where the cell names a shared text that the workbook lacks
 */
export function cellValue(cell: StoredCell, strings: readonly string[]): CellValue | undefined | null {
  const { type, text, format, formula } = cell;
  if (type === 's') {
    const shared = /^\s*\d{1,9}\s*$/.test(text) ? strings[Number(text)] : undefined;
    return shared === undefined ? null : trimmed(shared);
  }
  if (type === 'inlineStr' || type === 'str') return trimmed(shownCellText(text));
  if (text === '')
    return formula
      ? new UnusableCell('', 'the result of this formula: open the workbook, let it calculate, and save it again')
      : undefined;
  if (type === 'b') return text.trim() === '1' || text.trim() === 'true';
  if (type === 'e') return new UnusableCell(text, 'a value: this cell shows an error');
  if (type === 'd' || format?.is === 'date')
    return new UnusableCell(
      `${text} (a date)`,
      'a length, number or text: this cell is a date; format it as text and type it again',
    );
  const number = NUMBER.test(text.trim()) ? Number(text) : Number.NaN;
  if (!Number.isFinite(number)) return trimmed(text);
  return format?.is === 'length' ? `${number} ${format.unit}` : number;
}

function trimmed(text: string): string | undefined {
  const plain = text.trim();
  return plain === '' ? undefined : plain;
}
