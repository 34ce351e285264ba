import { writeDrawings } from './pdf-drawing-pages.js';
import { writeFooter } from './pdf-footer.js';
import { PdfPages } from './pdf-pages.js';
import type { PageSetting, PaperName } from './pdf-pages.js';
import type { Drawing, DrawingFonts } from './shapes.js';

export interface DrawingsPdfInput extends PageSetting {
  readonly drawings: readonly Drawing[];
  readonly paper: PaperName;
}

/** Drawings alone as a document, true to scale, one or two to a page. The same input gives the same bytes. */
export function drawingsPdf(input: DrawingsPdfInput, fonts: DrawingFonts): Promise<Uint8Array> {
  const pages = new PdfPages(input.paper, fonts, input);
  writeDrawings(pages, input.drawings, input.title);
  return pages.finish((page, of) => writeFooter(pages, input.author, page, of));
}
