import type { Severity } from '../evidence/finding.js';
import { moneyText } from '../quantity/money.js';
import type { QuoteCondition, ScopeItem } from '../quote/quote.js';
import { INK, lineHeight } from './pdf-pages.js';
import type { PdfPages } from './pdf-pages.js';
import type { QuotePdfInput } from './quote-pdf-input.js';
import { wrapText } from './text-width.js';

const INDENT = 22;
const ITEM_GAP = 2.5;
/** An item of no more lines than this is not parted by the end of a page. */
const KEPT_LINES = 6;
const SIGN_HEIGHT = 150;

const GROUPS: readonly { readonly severity: Severity; readonly heading: string; readonly letter: string }[] = [
  { severity: 'hold', heading: 'To be answered before this quote can be accepted', letter: 'H' },
  { severity: 'advise', heading: 'Conditions of this quote, on which support gives advice', letter: 'A' },
  { severity: 'note', heading: 'Notes', letter: 'N' },
];

const ANSWERED = 'Questions that support has answered; the work is done as answered';

/** What was found on the job, by weight. `openHolds`: whether a ticket that holds the quote still waits for its answer. */
export function writeConditions(pages: PdfPages, conditions: readonly QuoteCondition[], openHolds: boolean): void {
  pages.heading('Findings and conditions', 30);
  if (conditions.length === 0) pages.paragraph('None: nothing on this job needs an answer.', pages.left, pages.width);
  for (const { severity, heading, letter } of GROUPS) {
    const items = conditions.filter((condition) => condition.severity === severity);
    if (items.length === 0) continue;
    pages.ensure(3 * lineHeight());
    pages.y += 2;
    const told = severity === 'hold' && !openHolds ? ANSWERED : heading;
    pages.paragraph(told, pages.left, pages.width, { bold: true, colour: severity === 'hold' ? INK.hold : INK.text });
    pages.y += 1;
    items.forEach(({ text }, i) => writeItem(pages, `${letter}${i + 1}`, text));
  }
}

function writeItem(pages: PdfPages, label: string, text: string): void {
  const lines = wrapText(text, 8.5, pages.width - INDENT);
  if (lines.length <= KEPT_LINES) pages.ensure(lines.length * lineHeight());
  lines.forEach((line, i) => {
    pages.ensure(lineHeight());
    if (i === 0) pages.write(label, pages.left, pages.y, { colour: INK.muted });
    pages.write(line, pages.left + INDENT, pages.y);
    pages.y += lineHeight();
  });
  pages.y += ITEM_GAP;
}

const STATUS: Readonly<Record<ScopeItem['status'], string>> = {
  included: 'included',
  optional: 'optional',
  'by others': 'by others',
};

/** Every part of a poured wall that somebody has to supply, and who does. */
export function writeScope(pages: PdfPages, scope: readonly ScopeItem[]): void {
  pages.heading('What is in and what is not', 30);
  const status = pages.left + 150;
  const note = status + 64;
  scope.forEach(({ item, status: held, note: text }) => {
    const names = wrapText(item, 8.5, 142, true);
    const notes = wrapText(text, 8.5, pages.right - note);
    const height = Math.max(names.length, notes.length, 1) * lineHeight() + ITEM_GAP;
    pages.ensure(height);
    names.forEach((line, i) => pages.write(line, pages.left, pages.y + i * lineHeight(), { bold: true }));
    pages.write(STATUS[held], status, pages.y, {
      colour: held === 'by others' ? INK.muted : INK.accent,
      bold: held !== 'by others',
    });
    notes.forEach((line, i) => pages.write(line, note, pages.y + i * lineHeight()));
    pages.y += height;
  });
}

export function writeCautions(pages: PdfPages, cautions: readonly string[]): void {
  pages.heading('Cautions', 30);
  cautions.forEach((caution, i) => writeItem(pages, `${i + 1}.`, caution));
}

/** Why no drawings follow, where none do. */
export function writeNotDrawn(pages: PdfPages, { notDrawn }: QuotePdfInput): void {
  if (notDrawn === undefined) return;
  pages.heading('Drawings', 30);
  pages.paragraph(notDrawn, pages.left, pages.width);
}

/** What became of a quote that can no longer be accepted. */
const OVER: Readonly<Partial<Record<QuotePdfInput['state'], string>>> = {
  declined: 'was declined',
  expired: 'has expired',
  withdrawn: 'was withdrawn',
  superseded: 'was superseded by a later revision',
};

/** Where the customer signs; while a question holds the quote, which one does instead. */
export function writeAcceptance(pages: PdfPages, input: QuotePdfInput): void {
  const { quote, openHolds } = input;
  pages.ensure(SIGN_HEIGHT);
  pages.heading('Acceptance', SIGN_HEIGHT - 40);
  if (openHolds.length > 0) {
    pages.paragraph('This quote cannot be accepted yet. These questions have to be answered first:', pages.left, pages.width, {
      bold: true,
      colour: INK.hold,
    });
    pages.y += 2;
    for (const { number, question } of openHolds) {
      pages.ensure(lineHeight());
      pages.write(number, pages.left, pages.y, { bold: true });
      pages.paragraph(question, pages.left + 62, pages.width - 62);
      pages.y += ITEM_GAP;
    }
    return;
  }
  const over = OVER[input.state];
  if (over !== undefined) {
    pages.paragraph(`This quote ${over} and cannot be accepted.`, pages.left, pages.width, {
      bold: true,
      colour: INK.hold,
    });
    return;
  }
  const terms =
    `Ordered: the lines above for ${moneyText(quote.totalMinor, quote.currency)}, with the conditions and cautions of this quote, ` +
    `${input.number} revision ${input.revision}, until ${quote.validUntil}.`;
  pages.paragraph(terms, pages.left, pages.width);
  if (input.state === 'draft')
    pages.paragraph('This is a draft: it binds nobody until it is issued.', pages.left, pages.width, { bold: true });
  signatureLines(pages, [`For ${quote.customer.organisation}`, `For ${input.supplier.name}`]);
}

function signatureLines(pages: PdfPages, parties: readonly [string, string]): void {
  const column = (pages.width - 30) / 2;
  pages.y += 6;
  const top = pages.y;
  parties.forEach((party, i) => {
    const x = pages.left + i * (column + 30);
    wrapText(party, 9, column, true)
      .slice(0, 2)
      .forEach((line, row) => pages.write(line, x, top + row * lineHeight(9), { size: 9, bold: true }));
    ['Name', 'Signature', 'Date'].forEach((label, row) => {
      const y = top + 46 + row * 24;
      pages.write(label, x, y - 9, { size: 7.5, colour: INK.muted });
      pages.doc
        .moveTo(x + 44, y)
        .lineTo(x + column, y)
        .lineWidth(0.6)
        .strokeColor(INK.text)
        .stroke();
    });
  });
  pages.y = top + 46 + 2 * 24 + 8;
}
