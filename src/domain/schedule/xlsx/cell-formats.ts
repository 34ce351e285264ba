import { lengthUnitNamed } from '../../quantity/length-unit.js';
import { plainText } from '../../quantity/text.js';

/** What a number format says a number is: a plain number, a date or time, or a number of some unit of length (`0.00" ft"`). */
export type CellFormat = { readonly is: 'number' } | { readonly is: 'date' } | { readonly is: 'length'; readonly unit: string };

/** A format code has at most 255 characters. */
const MAX_CODE = 255;
const NUMBER: CellFormat = { is: 'number' };

/** Dates and times among the built-in formats (ECMA-376 part 1, 18.8.30; 27 to 36 and 50 to 58 are those of East Asian locales). */
export function builtInFormat(id: number): CellFormat {
  const date = (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) || (id >= 50 && id <= 58);
  return date ? { is: 'date' } : NUMBER;
}

/** A custom format code: its quoted words may name a unit of length; day, month, year, hour or second letters make it a date. */
export function customFormat(code: string): CellFormat {
  const [section = ''] = code.slice(0, MAX_CODE).split(';');
  const words = [...section.matchAll(/"([^"]*)"|\\(.)/g)].map((match) => match[1] ?? match[2] ?? '').join('');
  const letters = section
    .replace(/"[^"]*"|\\./g, '')
    .replace(/_.|\*./g, '')
    .replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, '');
  if (/[dmyhs]/i.test(letters.replace(/general/gi, ''))) return { is: 'date' };
  const unit = plainText(words);
  return lengthUnitNamed(unit) ? { is: 'length', unit } : NUMBER;
}
