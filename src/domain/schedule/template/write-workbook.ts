import ExcelJS from 'exceljs';
import { storedCellText } from '../xlsx/spreadsheet-text.js';
import { HOW_TO_SHEET, howToRows } from './how-to.js';
import type { Choices, PlannedColumn, SheetPlan } from './sheet-plans.js';

/** Rows below the header that have the drop-downs, at least; a list of names on another sheet reaches as far. */
const ROWS_TO_FILL = 1_000;
const TEXT = '@';
const WIDTH = { least: 9, most: 44, howTo: [12, 18, 92] } as const;
/** A sheet of more columns is printed two pages wide, its first column on both. */
const COLUMNS_OF_A_PAGE = 14;
const FONT = { name: 'Arial', size: 10 } as const;
const LINE_HEIGHT = 14;
const CHARACTERS_OF_A_LINE = 108;
const INK = { header: 'FF1F2A30', headerFill: 'FFE4E8EA', neededFill: 'FFCBD5DA', line: 'FF8A979E' } as const;
const PAGE: Partial<ExcelJS.PageSetup> = { orientation: 'landscape', fitToPage: true, fitToWidth: 1, fitToHeight: 0, margins: { left: 0.4, right: 0.4, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 } };

export interface WorkbookOptions {
  readonly howTo: boolean;
  /** The time the workbook says it was made at. */
  readonly writtenAt: Date;
}

/**
 * The workbook of planned sheets: names in a frozen header row with their notes, drop-downs, cells formatted as text so that `12-6`
 * is not made a date while it is typed, one page wide in print with the header on every page.
 */
export async function writeWorkbook(plans: readonly SheetPlan[], { howTo, writtenAt }: WorkbookOptions): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  book.created = writtenAt;
  book.modified = writtenAt;
  if (howTo) addHowTo(book);
  for (const plan of plans) addSheet(book, plan);
  return new Uint8Array(await book.xlsx.writeBuffer());
}

function addSheet(book: ExcelJS.Workbook, plan: SheetPlan): void {
  const sheet = book.addWorksheet(plan.name, {
    views: [{ state: 'frozen', xSplit: 1, ySplit: 1 }],
    pageSetup: {
      ...PAGE,
      fitToWidth: plan.columns.length > COLUMNS_OF_A_PAGE ? 2 : 1,
      printTitlesRow: '1:1',
      printTitlesColumn: 'A:A',
      showGridLines: true,
    },
    headerFooter: { oddFooter: '&L&A&RPage &P of &N' },
  });
  sheet.addRow(plan.columns.map(({ name }) => name));
  for (const row of plan.rows) sheet.addRow(row.map((cell) => (typeof cell === 'string' ? storedCellText(cell) : cell)));
  const last = Math.max(ROWS_TO_FILL, plan.rows.length + 1);
  plan.columns.forEach((column, index) => dressColumn(sheet, column, index + 1, last, plan.rows));
  plan.byRow.forEach(({ note, choices }, index) => {
    sheet.getCell(index + 2, 1).note = noteOf(note);
    offer(sheet, choices, `B${index + 2}`);
  });
}

function dressColumn(sheet: ExcelJS.Worksheet, column: PlannedColumn, at: number, last: number, rows: SheetPlan['rows']): void {
  const letters = sheet.getColumn(at).letter;
  const longest = Math.max(column.name.length + 2, ...rows.slice(0, ROWS_TO_FILL).map((row) => String(row[at - 1] ?? '').length + 2));
  sheet.getColumn(at).width = Math.min(WIDTH.most, Math.max(WIDTH.least, longest));
  sheet.getColumn(at).numFmt = TEXT;
  sheet.getColumn(at).font = FONT;
  const header = sheet.getCell(1, at);
  header.font = { ...FONT, bold: true, color: { argb: INK.header } };
  header.fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: column.needed ? INK.neededFill : INK.headerFill } };
  header.border = { bottom: { style: 'medium', color: { argb: INK.line } } };
  header.note = noteOf(column.note);
  offer(sheet, column.choices, `${letters}2:${letters}${last}`);
}

function offer(sheet: ExcelJS.Worksheet, choices: Choices, cells: string): void {
  if (!choices) return;
  const list = 'words' in choices ? `"${choices.words.join(',')}"` : `${choices.namesOn}!$A$2:$A$${ROWS_TO_FILL}`;
  const strict = 'words' in choices;
  validations(sheet).add(cells, {
    type: 'list',
    allowBlank: true,
    formulae: [list],
    showErrorMessage: strict,
    errorTitle: 'One of a few words',
    error: strict ? `One of: ${choices.words.join(', ')}`.slice(0, 220) : '',
  });
}

interface Validations {
  readonly add: (cells: string, validation: ExcelJS.DataValidation) => void;
}
/** The library's types leave out what a worksheet keeps its drop-downs in. */
const validations = (sheet: ExcelJS.Worksheet): Validations => (sheet as unknown as { readonly dataValidations: Validations }).dataValidations;

const noteOf = (text: string): ExcelJS.Comment => ({ texts: [{ text }], margins: { insetmode: 'auto' } });

function addHowTo(book: ExcelJS.Workbook): void {
  const sheet = book.addWorksheet(HOW_TO_SHEET, { pageSetup: { ...PAGE, orientation: 'portrait' }, views: [{ showGridLines: false }] });
  const rows = howToRows();
  for (const row of rows) sheet.addRow([...row]);
  WIDTH.howTo.forEach((width, index) => {
    sheet.getColumn(index + 1).width = width;
    sheet.getColumn(index + 1).font = FONT;
  });
  sheet.getRow(1).font = { ...FONT, bold: true, size: 14, color: { argb: INK.header } };
  const table = rows.findIndex(({ length }) => length > 1) + 1;
  sheet.getRow(table).font = { ...FONT, bold: true };
  sheet.getRow(table).eachCell((cell) => (cell.border = { bottom: { style: 'medium', color: { argb: INK.line } } }));
  rows.forEach((row, index) => {
    if (row.length < WIDTH.howTo.length) return;
    sheet.getRow(index + 1).alignment = { wrapText: true, vertical: 'top' };
    sheet.getRow(index + 1).height = LINE_HEIGHT * Math.ceil((row[2] ?? '').length / CHARACTERS_OF_A_LINE);
  });
}
