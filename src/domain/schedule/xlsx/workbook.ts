import { FileRefusal } from '../file-refusal.js';
import type { SheetRow } from '../tabular/sheet-row.js';
import { builtInFormat, customFormat, type CellFormat } from './cell-formats.js';
import { sheetRows } from './sheet-rows.js';
import { readXml } from './xml-events.js';
import { zipParts, type ZipParts } from './zip-entries.js';

const WORKBOOK = 'xl/workbook.xml';
const MAX_SHEETS = 100;
const MAX_SHARED_STRINGS = 1_000_000;
/** More than a spreadsheet cell can hold; what is longer is cut there and refused by whatever reads it. */
const MAX_CELL_CHARACTERS = 40_000;

export interface WorkbookSheet {
  readonly name: string;
  readonly rows: () => AsyncGenerator<SheetRow>;
}

/** The sheets of a workbook in their order; rows are read as they are asked for. A zip that is no workbook is of the wrong type. */
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
  const sheets = (await readSheetNames(file, parts)).flatMap(({ name, id }) => {
    const path = targets.get(id);
    return path !== undefined && parts.has(path) ? [{ name, path }] : [];
  });
  if (sheets.length > MAX_SHEETS)
    throw new FileRefusal('too-large', file, `${sheets.length} sheets`, `at most ${MAX_SHEETS} sheets`);
  const strings = await readSharedStrings(file, parts);
  const formats = await readFormats(file, parts);
  return sheets.map(({ name, path }) => ({
    name,
    rows: () => sheetRows({ file, part: path, bytes: parts.open(path), strings, formats }),
  }));
}

async function readSheetNames(file: string, parts: ZipParts): Promise<readonly { name: string; id: string }[]> {
  const sheets: { name: string; id: string }[] = [];
  await readXml(file, WORKBOOK, parts.open(WORKBOOK), {
    open: (name, attributes) => {
      if (name !== 'sheet') return;
      const id = Object.entries(attributes).find(([key]) => key.endsWith(':id'))?.[1];
      sheets.push({ name: attributes['name'] ?? '', id: id ?? '' });
    },
  });
  return sheets;
}

/** Worksheets by relationship id, as paths from the root of the archive. */
async function readTargets(file: string, parts: ZipParts): Promise<ReadonlyMap<string, string>> {
  const path = 'xl/_rels/workbook.xml.rels';
  const targets = new Map<string, string>();
  if (!parts.has(path)) return targets;
  await readXml(file, path, parts.open(path), {
    open: (name, { Id, Target, Type }) => {
      if (name !== 'Relationship' || !Id || !Target || !(Type ?? '').endsWith('/worksheet')) return;
      targets.set(Id, Target.startsWith('/') ? Target.slice(1) : `xl/${Target.replace(/^\.\//, '')}`);
    },
  });
  return targets;
}

/** Texts that cells share; runs of one text are joined, phonetic readings left out. */
async function readSharedStrings(file: string, parts: ZipParts): Promise<readonly string[]> {
  const path = 'xl/sharedStrings.xml';
  const strings: string[] = [];
  if (!parts.has(path)) return strings;
  let [text, inText, phonetic] = ['', false, false];
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
      if (name === 'si') strings.push(text);
      if (strings.length > MAX_SHARED_STRINGS)
        throw new FileRefusal('too-large', file, 'more than a million texts', 'a workbook that holds the schedule and no more');
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
