import { FileRefusal } from '../file-refusal.js';
import { oneTable } from '../one-table.js';
import { HOW_TO_SHEET, isHowTo } from '../template/how-to.js';
import type { SheetRow } from '../tabular/sheet-row.js';
import { builtInFormat, customFormat, type CellFormat } from './cell-formats.js';
import { sheetRows, type SheetLayout } from './sheet-rows.js';
import { shownCellText } from './spreadsheet-text.js';
import { visibleRows } from './visible-rows.js';
import { readXml } from './xml-events.js';
import { zipParts, type ZipParts } from './zip-entries.js';

const WORKBOOK = 'xl/workbook.xml';
const MAX_SHEETS = 100;
const MAX_SHARED_STRINGS = 1_000_000;
/** Of all shared texts together: what they hold in memory. */
const MAX_SHARED_CHARACTERS = 32_000_000;
/** More than a spreadsheet cell can hold; what is longer is cut there and refused by whatever reads it. */
const MAX_CELL_CHARACTERS = 40_000;

export interface WorkbookSheet {
  readonly name: string;
  readonly rows: () => AsyncGenerator<SheetRow>;
}

/**
 * The sheets of a workbook in their order, the template's page of explanations left out; rows are read as they are asked for. A zip
 * that is no workbook is of the wrong type.
 */
export async function workbookSheets(file: string, bytes: Uint8Array): Promise<readonly WorkbookSheet[]> {
  const parts = await zipParts(file, bytes);
  if (!parts.has(WORKBOOK))
    throw new FileRefusal(
      'wrong-type',
      file,
      'a zip archive',
      'an .xlsx workbook, CSV files or JSON: this archive holds no workbook',
    );
  const targets = await readTargets(file, parts);
  const sheets = (await readSheetNames(file, parts)).flatMap((sheet) => worksheetOf(file, sheet, targets, parts));
  if (sheets.length > MAX_SHEETS)
    throw new FileRefusal('too-large', file, `${sheets.length} sheets`, `at most ${MAX_SHEETS} sheets`);
  const strings = await readSharedStrings(file, parts);
  const formats = await readFormats(file, parts);
  const cells = (path: string, layout: SheetLayout): AsyncGenerator<SheetRow> =>
    sheetRows({ file, part: path, bytes: parts.open(path), strings, formats }, layout);
  const read: WorkbookSheet[] = [];
  for (const { name, hidden, path } of sheets) {
    if (name === HOW_TO_SHEET && (await isHowTo(cells(path, emptyLayout())))) continue;
    const rows = (): AsyncGenerator<SheetRow> => {
      const layout = emptyLayout();
      return oneTable(name, visibleRows({ file, name, hidden }, cells(path, layout), layout));
    };
    read.push({ name, rows });
  }
  return read;
}

const emptyLayout = (): SheetLayout => ({ hiddenRows: [], merged: [] });

interface ListedSheet {
  readonly name: string;
  readonly id: string;
  readonly hidden: boolean;
}
interface Target {
  readonly path: string;
  readonly worksheet: boolean;
}

/** Where a listed sheet is; none for a sheet without cells (a chart). One that is listed and not there is refused, never left out. */
function worksheetOf(
  file: string,
  { name, id, hidden }: ListedSheet,
  targets: ReadonlyMap<string, Target>,
  parts: ZipParts,
): readonly { name: string; hidden: boolean; path: string }[] {
  const target = targets.get(id);
  if (target && !target.worksheet) return [];
  if (target && parts.has(target.path)) return [{ name, hidden, path: target.path }];
  const fix = 'a workbook with all its sheets: this one is listed and missing; save it again as .xlsx';
  throw new FileRefusal('unreadable', file, `sheet ${name}`.slice(0, 100), fix);
}

async function readSheetNames(file: string, parts: ZipParts): Promise<readonly ListedSheet[]> {
  const sheets: ListedSheet[] = [];
  await readXml(file, WORKBOOK, parts.open(WORKBOOK), {
    open: (name, attributes) => {
      if (name !== 'sheet') return;
      const id = Object.entries(attributes).find(([key]) => key.endsWith(':id'))?.[1];
      const hidden = ['hidden', 'veryHidden'].includes(attributes['state'] ?? '');
      sheets.push({ name: attributes['name'] ?? '', id: id ?? '', hidden });
    },
  });
  return sheets;
}

/** Parts by relationship id, as paths from the root of the archive. */
async function readTargets(file: string, parts: ZipParts): Promise<ReadonlyMap<string, Target>> {
  const path = 'xl/_rels/workbook.xml.rels';
  const targets = new Map<string, Target>();
  if (!parts.has(path)) return targets;
  await readXml(file, path, parts.open(path), {
    open: (name, { Id, Target: target, Type }) => {
      if (name !== 'Relationship' || !Id || !target) return;
      targets.set(Id, { path: partPath(target), worksheet: (Type ?? '').endsWith('/worksheet') });
    },
  });
  return targets;
}

/** `worksheets/sheet1.xml`, `/xl/worksheets/sheet1.xml` and `../xl/worksheets/sheet1.xml` are one part, written from `xl/workbook.xml`. */
function partPath(target: string): string {
  const steps: string[] = [];
  for (const step of (target.startsWith('/') ? target : `xl/${target}`).split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '' && step !== '.') steps.push(step);
  }
  return steps.join('/');
}

/** Texts that cells share; runs of one text are joined, phonetic readings left out. */
async function readSharedStrings(file: string, parts: ZipParts): Promise<readonly string[]> {
  const path = 'xl/sharedStrings.xml';
  const strings: string[] = [];
  if (!parts.has(path)) return strings;
  let [text, inText, phonetic, characters] = ['', false, false, 0];
  const tooMany = (read: string): FileRefusal =>
    new FileRefusal('too-large', file, read, 'a workbook that holds the schedule and no more');
  await readXml(file, path, parts.open(path), {
    open: (name) => {
      if (name === 'si') text = '';
      if (name === 'rPh') phonetic = true;
      inText = name === 't' && !phonetic;
    },
    text: (more) => {
      if (inText && text.length < MAX_CELL_CHARACTERS) text += more.slice(0, MAX_CELL_CHARACTERS);
    },
    close: (name) => {
      if (name === 't') inText = false;
      if (name === 'rPh') phonetic = false;
      if (name !== 'si') return;
      characters += text.length;
      strings.push(shownCellText(text));
      if (strings.length > MAX_SHARED_STRINGS) throw tooMany('more than a million texts');
      if (characters > MAX_SHARED_CHARACTERS) throw tooMany('texts of more than 32 million characters');
    },
  });
  return strings;
}

/** What the number format of each cell style says. */
async function readFormats(file: string, parts: ZipParts): Promise<readonly CellFormat[]> {
  const path = 'xl/styles.xml';
  const custom = new Map<number, CellFormat>();
  const formats: CellFormat[] = [];
  if (!parts.has(path)) return formats;
  let inCells = false;
  await readXml(file, path, parts.open(path), {
    open: (name, attributes) => {
      const id = Number(attributes['numFmtId']);
      if (name === 'numFmt') custom.set(id, customFormat(attributes['formatCode'] ?? ''));
      if (name === 'cellXfs') inCells = true;
      if (name === 'xf' && inCells) formats.push(custom.get(id) ?? builtInFormat(id));
    },
    close: (name) => {
      if (name === 'cellXfs') inCells = false;
    },
  });
  return formats;
}
