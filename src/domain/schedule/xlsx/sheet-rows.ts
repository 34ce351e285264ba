import { FileRefusal } from '../file-refusal.js';
import type { CellValue, SheetRow } from '../tabular/sheet-row.js';
import type { CellFormat } from './cell-formats.js';
import { cellBlock, cellReference, MAX_COLUMN, MAX_ROW, type CellBlock } from './cell-reference.js';
import { cellValue, type StoredCell } from './cell-value.js';
import { xmlEvents, type XmlHandler } from './xml-events.js';

const MAX_CELL_CHARACTERS = 40_000;
/** Merged blocks and hidden rows that are kept; a sheet with more is told by the first. */
const MAX_KEPT = 10_000;

export interface SheetSource {
  readonly file: string;
  readonly part: string;
  readonly bytes: AsyncIterable<Uint8Array>;
  readonly strings: readonly string[];
  readonly formats: readonly CellFormat[];
}

/** What a sheet does to its cells beside filling them, known when its last row has been read. */
export interface SheetLayout {
  /** Rows that hold something and are hidden, by number. */
  readonly hiddenRows: number[];
  readonly merged: CellBlock[];
}

/**
 * The rows of a worksheet with what their cells hold: shared and inline texts, numbers, booleans and the stored results of formulas.
 *
 * A row or a cell without a reference follows the one before it; references that go back, repeat or lie outside a worksheet are
 * refused, since a cell would stand in two places. Only one row is held at a time.
 */
export async function* sheetRows(source: SheetSource, layout: SheetLayout): AsyncGenerator<SheetRow> {
  const gathered: SheetRow[] = [];
  const events = xmlEvents(source.file, source.part, source.bytes, new SheetReader(source, layout, gathered));
  for await (const _ of events) yield* gathered.splice(0);
}

class SheetReader implements XmlHandler {
  private row = 0;
  private column = 0;
  private cells = new Map<number, CellValue>();
  private cell: StoredCell | null = null;
  private inData = false;
  private hidden = false;
  private reading = false;
  private phonetic = false;

  constructor(
    private readonly source: SheetSource,
    private readonly layout: SheetLayout,
    private readonly gathered: SheetRow[],
  ) {}

  open = (name: string, attributes: Readonly<Record<string, string>>): void => {
    if (name === 'sheetData') this.inData = true;
    else if (name === 'mergeCell') this.merge(attributes['ref'] ?? '');
    else if (!this.inData) return;
    else if (name === 'row') this.openRow(attributes);
    else if (name === 'c') this.openCell(attributes);
    else if (name === 'rPh') this.phonetic = true;
    else if (name === 'f' && this.cell) this.cell.formula = true;
    this.reading = this.cell !== null && !this.phonetic && (name === 'v' || name === 't');
  };

  text = (text: string): void => {
    if (this.reading && this.cell && this.cell.text.length < MAX_CELL_CHARACTERS)
      this.cell.text += text.slice(0, MAX_CELL_CHARACTERS);
  };

  close = (name: string): void => {
    if (name === 'v' || name === 't') this.reading = false;
    else if (name === 'rPh') this.phonetic = false;
    else if (name === 'c' && this.cell) this.closeCell(this.cell);
    else if (name === 'row' && this.inData) this.closeRow();
    else if (name === 'sheetData') this.inData = false;
  };

  private openRow(attributes: Readonly<Record<string, string>>): void {
    const written = attributes['r'];
    const row = written === undefined ? this.row + 1 : /^\d{1,7}$/.test(written) ? Number(written) : 0;
    if (row <= this.row || row > MAX_ROW) throw this.misplaced(`row ${written ?? row} after row ${this.row}`);
    this.row = row;
    this.column = 0;
    this.cells = new Map();
    this.hidden = isTrue(attributes['hidden']) || (isTrue(attributes['customHeight']) && Number(attributes['ht']) === 0);
  }

  private openCell(attributes: Readonly<Record<string, string>>): void {
    const written = attributes['r'];
    const place = written === undefined ? { column: this.column + 1, row: this.row } : cellReference(written);
    if (!place || place.row !== this.row || place.column <= this.column || place.column > MAX_COLUMN)
      throw this.misplaced(`cell ${written ?? this.column + 1} in row ${this.row}`);
    this.column = place.column;
    const format = this.source.formats[Number(attributes['s'] ?? 0)];
    this.cell = { type: attributes['t'] ?? 'n', format, text: '', formula: false };
  }

  private closeCell(cell: StoredCell): void {
    const value = cellValue(cell, this.source.strings);
    if (value === null) throw this.misplaced(`a text that is not there in row ${this.row}`);
    if (value !== undefined) this.cells.set(this.column, value);
    this.cell = null;
  }

  private closeRow(): void {
    if (this.cells.size === 0) return;
    if (this.hidden && this.layout.hiddenRows.length < MAX_KEPT) this.layout.hiddenRows.push(this.row);
    this.gathered.push({ row: this.row, cells: this.cells });
  }

  private merge(written: string): void {
    const block = cellBlock(written);
    if (!block) throw this.misplaced(`merged cells ${written}`);
    if (this.layout.merged.length < MAX_KEPT) this.layout.merged.push(block);
  }

  private misplaced(read: string): FileRefusal {
    return new FileRefusal(
      'unreadable',
      this.source.file,
      `${read} of ${this.source.part}`.slice(0, 200),
      'a workbook that opens: its cells are out of place; open it in a spreadsheet program and save it again as .xlsx',
    );
  }
}

const isTrue = (flag: string | undefined): boolean => flag === '1' || flag === 'true';
