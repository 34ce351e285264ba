import { countsText, grouped, type ChecklistBlock } from '../checklist/index.js';
import type { PrintedItem } from './checklist-pdf-input.js';
import { INK, lineHeight } from './pdf-pages.js';
import type { PdfPages } from './pdf-pages.js';
import { fitText, textWidth, wrapText } from './text-width.js';

const BOX = 8.5;
const INDENT = 15;
const ROW = 15;
const GAP = 4;
const WHO = 128;
const COURSE = 47;
const COLUMNS = 3;
const COLUMN_GAP = 14;
const SMALL = 8;

/** What is said once, and under it a box for every item; one item has its box beside what it says. */
export function writeBlock(pages: PdfPages, block: ChecklistBlock<PrintedItem>, metric: boolean, again: string): void {
  const [only, ...others] = block.items;
  if (only !== undefined && others.length === 0) writeSingle(pages, only, metric, again);
  else writeMany(pages, block, metric, again);
  writeNotes(pages, block.items, again);
  pages.y += GAP;
}

function writeSingle(pages: PdfPages, item: PrintedItem, metric: boolean, again: string): void {
  const width = pages.width - INDENT - WHO - COLUMN_GAP;
  const label = wrapText(labelOf(item, metric), SMALL + 0.5, width, true);
  const lines = textLines(item.text, width);
  begin(pages, Math.max(ROW, (label.length + lines.length) * lineHeight()), again);
  writeBox(pages, pages.left, pages.y + 1, item);
  writeWho(pages, pages.right - WHO, pages.y, WHO, item);
  writeLines(pages, label, pages.left + INDENT, true);
  writeLines(pages, lines, pages.left + INDENT, false);
}

const labelOf = ({ course, counts }: PrintedItem, metric: boolean): string =>
  [course === null ? '' : `Course ${course}`, countsText(counts, metric)].filter((part) => part !== '').join(': ');

/** The text, then for all items that take the same their counts and three columns of boxes, read down one after the other as the courses go up. */
function writeMany(pages: PdfPages, { text, items }: ChecklistBlock<PrintedItem>, metric: boolean, again: string): void {
  const alike = grouped(items, ({ counts }) => countsText(counts, metric));
  const lines = textLines(text, pages.width);
  begin(pages, (lines.length + 1) * lineHeight() + 3 * ROW, again);
  writeLines(pages, lines, pages.left, false);
  for (const [counts, group] of alike) {
    const label = counts === '' ? [] : wrapText(group.length > 1 ? `Each of ${group.length}: ${counts}` : counts, SMALL + 0.5, pages.width, true);
    begin(pages, label.length * lineHeight() + ROW, again);
    writeLines(pages, label, pages.left, true);
    pages.y += 2;
    writeBoxes(pages, group, again);
    pages.y += 2;
  }
}

function writeBoxes(pages: PdfPages, items: readonly PrintedItem[], again: string): void {
  const width = (pages.width - (COLUMNS - 1) * COLUMN_GAP) / COLUMNS;
  const rows = Math.ceil(items.length / COLUMNS);
  for (let row = 0; row < rows; row += 1) {
    begin(pages, ROW, again);
    for (let column = 0; column < COLUMNS; column += 1) {
      const item = items[column * rows + row];
      if (item !== undefined) writeCell(pages, pages.left + column * (width + COLUMN_GAP), width, item);
    }
    pages.y += ROW;
  }
}

function writeCell(pages: PdfPages, left: number, width: number, item: PrintedItem): void {
  writeBox(pages, left, pages.y + 1, item);
  pages.write(item.course === null ? '' : `Course ${item.course}`, left + INDENT, pages.y, { bold: true });
  writeWho(pages, left + INDENT + COURSE, pages.y, width - INDENT - COURSE, item);
}

function writeLines(pages: PdfPages, lines: readonly string[], left: number, bold: boolean): void {
  for (const line of lines) {
    pages.write(line, left, pages.y, { bold });
    pages.y += lineHeight();
  }
}

/** An empty box, or one with a tick in it. */
function writeBox({ doc }: PdfPages, x: number, y: number, { tick }: PrintedItem): void {
  doc.rect(x, y, BOX, BOX).lineWidth(0.9).strokeColor(INK.text).stroke();
  if (tick === null) return;
  doc.moveTo(x + 1.6, y + BOX * 0.52).lineTo(x + BOX * 0.42, y + BOX - 1.8).lineTo(x + BOX - 1.3, y + 1.5).lineWidth(1.5).strokeColor(INK.accent).stroke();
}

/** Who ticked it and when, or the line on which that is written. */
function writeWho(pages: PdfPages, x: number, y: number, width: number, { tick }: PrintedItem): void {
  if (tick !== null) {
    const day = `, ${tick.on}`;
    const name = fitText(tick.by, 7.5, width - textWidth(day, 7.5));
    pages.write(`${name}${day}`, x, y + 1, { size: 7.5, colour: INK.accent });
    return;
  }
  pages.doc.moveTo(x, y + BOX + 1.5).lineTo(x + width, y + BOX + 1.5).lineWidth(0.4).strokeColor(INK.muted).stroke();
}

function writeNotes(pages: PdfPages, items: readonly PrintedItem[], again: string): void {
  for (const { tick, course } of items) {
    if (tick === null || (tick.note === null && !tick.photo)) continue;
    const words = `${course === null ? '' : `Course ${course}, `}${tick.by}: ${tick.note ?? ''}${tick.photo ? ' (with a photo)' : ''}`;
    for (const line of wrapText(words, 7.5, pages.width - INDENT)) {
      begin(pages, lineHeight(7.5), again);
      pages.write(line, pages.left + INDENT, pages.y, { size: 7.5, colour: INK.muted });
      pages.y += lineHeight(7.5);
    }
  }
}

/** Goes on to a new page where this does not fit, and says there what goes on. */
function begin(pages: PdfPages, height: number, again: string): void {
  if (pages.ensure(height)) pages.heading(again, height);
}

const textLines = (text: string, width: number): readonly string[] => text.split('\n').flatMap((line) => wrapText(line, SMALL + 0.5, width));
