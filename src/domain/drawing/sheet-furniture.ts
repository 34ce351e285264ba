import type { Nm } from '../quantity/length.js';
import { TINT } from './ink.js';
import type { HatchPattern, SheetHeader } from './shapes.js';
import { TEXT_MM, corners } from './sheet.js';
import type { Sheet } from './sheet.js';
import { fitText, textWidth, wrapText } from './text-width.js';

export const MARGIN_MM = 4;
const ROW_MM = 3.5;
const SWATCH_MM = { width: 6.5, height: 3.2 };
const ENTRY_GAP_MM = 5;
const BLOCK_MM = 9.8;
const CAUTION_MM = 2.65;

/** One sample of the legend with its words. */
export interface LegendEntry {
  readonly text: string;
  readonly fill: string | null;
  readonly pattern: HatchPattern | null;
  /** A thick line through the sample: seam, rip. */
  readonly stroke: 'seam' | 'rip' | 'hidden' | 'axis' | 'skew' | 'slope' | 'ledge' | 'change' | 'chord' | 'ridge' | 'upper' | 'brace' | 'brace-foot' | null;
}

/** Lines of legend and notes set in columns as wide as the sheet allows. */
export interface Furniture {
  readonly legend: readonly LegendEntry[];
  readonly notes: readonly string[];
  readonly heading: string;
  readonly detail: string;
  readonly scaleText: string;
  readonly header: SheetHeader;
}

/** Height that everything under the drawing takes on a sheet of this width [mm of paper]. */
export function furnitureHeightMm(furniture: Furniture, widthMm: number): number {
  const inner = widthMm - 2 * MARGIN_MM;
  const legend = legendRows(furniture.legend, inner).length * (ROW_MM + 0.8);
  const notes = Math.ceil(furniture.notes.length / noteColumns(furniture.notes, inner)) * ROW_MM;
  return MARGIN_MM + BLOCK_MM + cautionLines(furniture, inner).length * CAUTION_MM + 2 + notes + 1.4 + legend + 2;
}

/** Draws legend, notes, title block and frame upward from the sheet's lower edge at y = 0. */
export function drawFurniture(sheet: Sheet, furniture: Furniture, width: Nm, height: Nm): void {
  sheet.beginPaper();
  const widthMm = width / sheet.mm(1);
  const inner = widthMm - 2 * MARGIN_MM;
  const mm = (value: number): Nm => sheet.mm(value);
  sheet.rect('frame', { left: mm(1), bottom: mm(1), right: width - mm(1), top: height - mm(1) });
  const cautions = cautionLines(furniture, inner);
  cautions.forEach((line, i) => {
    sheet.text({ x: mm(MARGIN_MM), y: mm(MARGIN_MM + (cautions.length - 1 - i) * CAUTION_MM) }, line, TEXT_MM.tiny, {
      layer: 'muted',
    });
  });
  const block = MARGIN_MM + (cautions.length - 1) * CAUTION_MM + 2.4;
  drawTitleBlock(sheet, furniture, block, widthMm);
  let y = block + BLOCK_MM + 3;
  const columns = noteColumns(furniture.notes, inner);
  const rows = Math.ceil(furniture.notes.length / columns);
  furniture.notes.forEach((note, i) => {
    const column = Math.floor(i / rows);
    const row = i % rows;
    const place = { x: mm(MARGIN_MM + (column * inner) / columns), y: mm(y + (rows - 1 - row) * ROW_MM) };
    sheet.text(place, fitText(note, mm(TEXT_MM.small), mm(inner / columns - 2)), TEXT_MM.small);
  });
  y += rows * ROW_MM + 1.4;
  const legend = legendRows(furniture.legend, inner);
  legend.forEach((row, i) => drawLegendRow(sheet, row, y + (legend.length - 1 - i) * (ROW_MM + 0.8)));
}

function drawTitleBlock(sheet: Sheet, furniture: Furniture, bottom: number, widthMm: number): void {
  const mm = (value: number): Nm => sheet.mm(value);
  const right = widthMm - 1;
  const middle = widthMm * 0.38;
  const third = widthMm * 0.7;
  for (const y of [bottom, bottom + BLOCK_MM]) sheet.line('frame', { x: mm(1), y: mm(y) }, { x: mm(right), y: mm(y) });
  for (const x of [middle, third]) sheet.line('rule', { x: mm(x), y: mm(bottom) }, { x: mm(x), y: mm(bottom + BLOCK_MM) });
  const { header } = furniture;
  const cell = (x: number, end: number, first: string, second: string, size: number): void => {
    const width = mm(end - x - 2);
    sheet.text({ x: mm(x), y: mm(bottom + 6.6) }, fitText(first, mm(size), width, true), size, { bold: true });
    sheet.text({ x: mm(x), y: mm(bottom + 2.5) }, fitText(second, mm(TEXT_MM.small), width), TEXT_MM.small);
  };
  cell(MARGIN_MM, middle, furniture.heading, furniture.detail, TEXT_MM.head);
  cell(middle + 2, third, `${header.job}, revision ${header.revision}`, header.jobName, TEXT_MM.body);
  cell(third + 2, right, `Scale ${furniture.scaleText}`, header.supplier, TEXT_MM.body);
}

const cautionLines = (furniture: Furniture, innerMm: number): string[] =>
  wrapText(furniture.header.caution, TEXT_MM.tiny, innerMm);

function noteColumns(notes: readonly string[], innerMm: number): number {
  const widest = Math.max(1, ...notes.map((note) => textWidth(note, TEXT_MM.small))) + ENTRY_GAP_MM;
  return Math.max(1, Math.min(notes.length, Math.floor(innerMm / widest)));
}

const entryWidth = (entry: LegendEntry): number => SWATCH_MM.width + 1.5 + textWidth(entry.text, TEXT_MM.small) + ENTRY_GAP_MM;

function legendRows(legend: readonly LegendEntry[], innerMm: number): LegendEntry[][] {
  const rows: LegendEntry[][] = [];
  let used = Infinity;
  for (const entry of legend) {
    if (used + entryWidth(entry) > innerMm + ENTRY_GAP_MM) {
      rows.push([]);
      used = 0;
    }
    rows.at(-1)?.push(entry);
    used += entryWidth(entry);
  }
  return rows;
}

function drawLegendRow(sheet: Sheet, row: readonly LegendEntry[], y: number): void {
  let x = MARGIN_MM;
  for (const entry of row) {
    const half = SWATCH_MM.height / 2;
    const box = { left: sheet.mm(x), right: sheet.mm(x + SWATCH_MM.width), bottom: sheet.mm(y - half), top: sheet.mm(y + half) };
    if (entry.fill !== null) sheet.rect('piece', box, { fill: entry.fill });
    if (entry.pattern !== null) sheet.hatch([corners(box)], entry.pattern);
    const middle = sheet.mm(x + SWATCH_MM.width / 2);
    if (entry.stroke === 'seam') sheet.line('seam', { x: middle, y: box.bottom }, { x: middle, y: box.top });
    if (entry.stroke === 'rip') sheet.line('rip', { x: box.left, y: box.top }, { x: box.right, y: box.top });
    if (entry.stroke === 'slope') sheet.line('slope', { x: box.left, y: box.bottom }, { x: box.right, y: box.top });
    if (entry.stroke === 'ridge') sheet.line('slope', { x: middle, y: box.bottom }, { x: middle, y: box.top });
    if (entry.stroke === 'ledge') sheet.line('ledge', { x: box.left, y: box.top }, { x: box.right, y: box.top });
    if (entry.stroke === 'change') sheet.line('change', { x: box.left, y: sheet.mm(y) }, { x: box.right, y: sheet.mm(y) });
    if (entry.stroke === 'upper') sheet.line('hidden', { x: box.left, y: sheet.mm(y) }, { x: box.right, y: sheet.mm(y) });
    if (entry.stroke === 'chord') sheet.line('chord', { x: middle, y: box.bottom }, { x: middle, y: box.top });
    if (entry.stroke === 'skew') sheet.line('hidden', { x: middle, y: box.bottom }, { x: middle, y: box.top });
    if (entry.stroke === 'axis') sheet.line('node', { x: box.left, y: sheet.mm(y) }, { x: box.right, y: sheet.mm(y) });
    if (entry.stroke === 'brace') sheet.line('brace', { x: middle, y: box.bottom }, { x: middle, y: box.top });
    if (entry.stroke === 'brace-foot') {
      sheet.rect('brace', { ...box, right: box.left + sheet.mm(0.9) }, { fill: TINT.brace });
      sheet.line('brace', { x: box.left, y: sheet.mm(y) }, { x: box.right, y: sheet.mm(y) });
    }
    if (entry.stroke === 'hidden') sheet.rect('hidden', box, { fill: TINT.paper });
    sheet.text({ x: sheet.mm(x + SWATCH_MM.width + 1.5), y: sheet.mm(y) }, entry.text, TEXT_MM.small);
    x += entryWidth(entry);
  }
}
