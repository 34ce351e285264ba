import { INK } from './pdf-pages.js';
import type { PdfPages } from './pdf-pages.js';
import { fitText } from './text-width.js';

const UP = 24;
const SIDE = 45;
const NUMBER_WIDTH = 90;

/** At the foot of a page: what the document is, and which of its pages this is. */
export function writeFooter(pages: PdfPages, words: string, page: number, of: number): void {
  const { width, height } = pages.doc.page;
  const y = height - UP;
  pages.doc
    .moveTo(SIDE, y - 5)
    .lineTo(width - SIDE, y - 5)
    .lineWidth(0.4)
    .strokeColor(INK.rule)
    .stroke();
  const style = { size: 7.5, colour: INK.muted };
  pages.write(fitText(words, style.size, width - 2 * SIDE - NUMBER_WIDTH), SIDE, y, style);
  pages.write(`Page ${page} of ${of}`, width - SIDE, y, { ...style, anchor: 'end' });
}
