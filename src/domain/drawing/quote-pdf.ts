import { INK, PdfPages } from './pdf-pages.js';
import { writeDrawings } from './pdf-drawing-pages.js';
import { writeHead } from './quote-pdf-head.js';
import type { QuotePdfInput } from './quote-pdf-input.js';
import { writeLines } from './quote-pdf-lines.js';
import { writeAcceptance, writeCautions, writeConditions, writeScope } from './quote-pdf-terms.js';
import type { DrawingFonts } from './shapes.js';
import { fitText } from './text-width.js';

const FOOTER_UP = 27;
const FOOTER_SIDE = 45;

/**
 * A quote as a document that can be signed: who and what, lines and totals, findings, what is in and what is not, cautions,
 * acceptance, then the plans and wall elevations true to scale. Every page says which quote it is part of and its number.
 *
 * The same input gives the same bytes.
 */
export async function quotePdf(input: QuotePdfInput, fonts: DrawingFonts): Promise<Uint8Array> {
  const pages = new PdfPages(input.paper, fonts, {
    title: `Quotation ${input.number}, revision ${input.revision}`,
    author: input.supplier.name,
    createdAt: input.createdAt,
  });
  writeHead(pages, input);
  writeLines(pages, input);
  writeConditions(pages, input.quote.conditions);
  writeScope(pages, input.quote.scope);
  writeCautions(pages, input.quote.cautions);
  writeAcceptance(pages, input);
  writeDrawings(
    pages,
    [...input.plans, ...input.elevations],
    `Drawings of quotation ${input.number}, revision ${input.revision}`,
  );
  return pages.finish((page, of) => writeFooter(pages, input, page, of));
}

function writeFooter(pages: PdfPages, input: QuotePdfInput, page: number, of: number): void {
  const { width, height } = pages.doc.page;
  const y = height - FOOTER_UP;
  pages.doc
    .moveTo(FOOTER_SIDE, y - 5)
    .lineTo(width - FOOTER_SIDE, y - 5)
    .lineWidth(0.4)
    .strokeColor(INK.rule)
    .stroke();
  const words = `${input.number}, revision ${input.revision}, job ${input.job.number}, ${input.supplier.name}`;
  pages.write(fitText(words, 7.5, width - 2 * FOOTER_SIDE - 90), FOOTER_SIDE, y, { size: 7.5, colour: INK.muted });
  pages.write(`Page ${page} of ${of}`, width - FOOTER_SIDE, y, { size: 7.5, colour: INK.muted, anchor: 'end' });
}
