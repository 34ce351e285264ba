import type { CellValue, SheetRow } from '../tabular/sheet-row.js';
import { UnusableCell } from '../unusable-cell.js';
import type { CellFormat } from './cell-formats.js';
import { xmlEvents } from './xml-events.js';

const MAX_CELL_CHARACTERS = 40_000;
const MAX_COLUMNS = 16_384;

export interface SheetSource {
  readonly file: string;
  readonly part: string;
  readonly bytes: AsyncIterable<Uint8Array>;
  readonly strings: readonly string[];
  readonly formats: readonly CellFormat[];
}

interface Cell {
  readonly column: number;
  readonly type: string;
  readonly format: CellFormat | undefined;
  text: string;
  formula: boolean;
}

/**
 * The rows of a worksheet with what their cells show: shared and inline texts, numbers, booleans and the stored results of formulas.
 * Dates, errors and formulas without a result are cells nothing can be made of; whoever reads them tells that with their place.
 */
export async function* sheetRows(source: SheetSource): AsyncGenerator<SheetRow> {
  const gathered: SheetRow[] = [];
  let [row, column] = [0, 0];
  let cells = new Map<number, CellValue>();
  let cell: Cell | null = null;
  let [reading, phonetic] = [false, false];
  const events = xmlEvents(source.file, source.part, source.bytes, {
    open: (name, attributes) => {
      if (name === 'row') {
        row = Number(attributes['r']) > row ? Number(attributes['r']) : row + 1;
        [column, cells] = [0, new Map()];
      } else if (name === 'c') {
        column = columnOf(attributes['r']) ?? column + 1;
        cell = {
          column,
          type: attributes['t'] ?? 'n',
          format: source.formats[Number(attributes['s'] ?? 0)],
          text: '',
          formula: false,
        };
      } else if (name === 'rPh') phonetic = true;
      else if (name === 'f' && cell) cell.formula = true;
      reading = cell !== null && !phonetic && (name === 'v' || name === 't');
    },
    text: (text) => {
      if (reading && cell && cell.text.length < MAX_CELL_CHARACTERS) cell.text += text.slice(0, MAX_CELL_CHARACTERS);
    },
    close: (name) => {
      if (name === 'v' || name === 't') reading = false;
      else if (name === 'rPh') phonetic = false;
      else if (name === 'c' && cell) {
        const value = valueOf(cell, source.strings);
        if (value !== undefined && cell.column <= MAX_COLUMNS) cells.set(cell.column, value);
        cell = null;
      } else if (name === 'row') gathered.push({ row, cells });
    },
  });
  for await (const _ of events) yield* gathered.splice(0);
}

/** `AB12` is column 28. */
function columnOf(reference: string | undefined): number | undefined {
  const letters = /^([A-Z]{1,3})\d*$/.exec(reference ?? '')?.[1];
  return letters === undefined ? undefined : [...letters].reduce((column, letter) => column * 26 + letter.charCodeAt(0) - 64, 0);
}

function valueOf({ type, text, format, formula }: Cell, strings: readonly string[]): CellValue | undefined {
  if (type === 's') return trimmed(strings[Number(text)] ?? '');
  if (type === 'inlineStr' || type === 'str') return trimmed(text);
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
  const number = Number(text);
  if (!Number.isFinite(number)) return trimmed(text);
  return format?.is === 'length' ? `${number} ${format.unit}` : number;
}

function trimmed(text: string): string | undefined {
  const plain = text.trim();
  return plain === '' ? undefined : plain;
}
