import { checklistSections, type ChecklistSection } from '../checklist/index.js';
import type { ChecklistPdfInput, PrintedItem } from './checklist-pdf-input.js';
import { writeBlock } from './checklist-pdf-block.js';
import { writeFooter } from './pdf-footer.js';
import { INK, lineHeight, PdfPages } from './pdf-pages.js';
import { writeCautions } from './quote-pdf-terms.js';
import type { DrawingFonts } from './shapes.js';
import { wrapText } from './text-width.js';

const KEPT_TOGETHER = 60;

/** A station is not a dimension of the drawing: a buck set at one from the outside of the corner would stand off by half the form. */
const STATIONS =
  'Stations are measured along the middle of the wall from its beginning as drawn, at a corner from where the middles of both walls meet: ' +
  'at a square outside corner half the thickness of the form in from the outside of the foam. They need not be the dimensions of the drawing.';

/**
 * The pre-pour checklist to take to the site: by storey and wall in the order in which the crew walks, a box for every item, what it takes,
 * and who ticked it when. Every page says which job and revision it is of and its number.
 *
 * The same input gives the same bytes.
 */
export async function checklistPdf(input: ChecklistPdfInput, fonts: DrawingFonts): Promise<Uint8Array> {
  const pages = new PdfPages(input.paper, fonts, {
    title: `Pre-pour checklist ${input.job.number}, revision ${input.revision}`,
    author: input.supplier,
    createdAt: input.createdAt,
  });
  pages.addTextPage();
  writeHead(pages, input);
  for (const section of checklistSections(input.items)) writeSection(pages, section, input.metric);
  writeCautions(pages, input.cautions);
  const words = `Pre-pour checklist, job ${input.job.number}, revision ${input.revision}, ${input.supplier}`;
  return pages.finish((page, of) => writeFooter(pages, words, page, of));
}

function writeHead(pages: PdfPages, input: ChecklistPdfInput): void {
  const { job, revision, supplier } = input;
  pages.write('Pre-pour checklist', pages.left, pages.y, { size: 18, bold: true });
  pages.write(`${job.number}, revision ${revision}`, pages.right, pages.y + 4, { size: 11, bold: true, anchor: 'end' });
  pages.y += 26;
  for (const line of wrapText(job.name, 11, pages.width * 0.7, true)) {
    pages.write(line, pages.left, pages.y, { size: 11, bold: true, colour: INK.accent });
    pages.y += lineHeight(11);
  }
  pages.write(supplier, pages.right, pages.y - lineHeight(11) + 1.5, { colour: INK.muted, anchor: 'end' });
  pages.y += 4;
  pages.rule(pages.y, INK.accent, 1.2);
  pages.y += 6;
  writeStanding(pages, input);
}

function writeStanding(pages: PdfPages, { readyToPour, ticked, total, openHolds }: ChecklistPdfInput): void {
  const counted = `${ticked} of ${total} items ticked.`;
  const words = readyToPour ? `Ready to pour: ${counted}` : `Not ready to pour: ${counted}`;
  pages.paragraph(words, pages.left, pages.width, { size: 10, bold: true, colour: readyToPour ? INK.accent : INK.hold });
  for (const { number, question } of openHolds) {
    pages.paragraph(`Open question ${number} holds the pour: ${question}`, pages.left, pages.width, { colour: INK.hold });
  }
  pages.y += 2;
  pages.paragraph(
    'Tick each box when it is done, with name and day. A later revision of the wall schedule unticks what it changes: work from the newest sheet.',
    pages.left,
    pages.width,
    { colour: INK.muted },
  );
  pages.paragraph(STATIONS, pages.left, pages.width, { colour: INK.muted });
}

function writeSection(pages: PdfPages, section: ChecklistSection<PrintedItem>, metric: boolean): void {
  const title = titleOf(section);
  pages.heading(title, KEPT_TOGETHER);
  for (const block of section.blocks) writeBlock(pages, block, metric, `${title}, continued`);
}

function titleOf({ storey, phase, wall }: ChecklistSection<PrintedItem>): string {
  if (wall !== null) return `Storey ${storey}, wall ${wall}`;
  const when = { 'before-work': 'before work', laying: 'for the whole storey', 'before-pour': 'before the pour', 'during-pour': 'told to the crew before the pour' };
  return `Storey ${storey}, ${when[phase]}`;
}
