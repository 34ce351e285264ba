import { writeFooter } from './pdf-footer.js';
import { PdfPages } from './pdf-pages.js';
import { writeDrawings } from './pdf-drawing-pages.js';
import { writeHead } from './quote-pdf-head.js';
import type { QuotePdfInput } from './quote-pdf-input.js';
import { writeLines } from './quote-pdf-lines.js';
import { writeAcceptance, writeCautions, writeConditions, writeNotDrawn, writeScope } from './quote-pdf-terms.js';
import type { DrawingFonts } from './shapes.js';

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
  pages.addTextPage();
  writeHead(pages, input);
  writeLines(pages, input);
  writeConditions(pages, input.quote.conditions, input.openHolds.length > 0);
  writeScope(pages, input.quote.scope);
  writeCautions(pages, input.quote.cautions);
  writeNotDrawn(pages, input);
  writeAcceptance(pages, input);
  writeDrawings(
    pages,
    [...input.plans, ...input.elevations],
    `Drawings of quotation ${input.number}, revision ${input.revision}`,
  );
  const words = `${input.number}, revision ${input.revision}, job ${input.job.number}, ${input.supplier.name}`;
  return pages.finish((page, of) => writeFooter(pages, words, page, of));
}
