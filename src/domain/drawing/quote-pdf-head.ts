import { moneyText } from '../quantity/money.js';
import { INK, lineHeight } from './pdf-pages.js';
import type { PdfPages } from './pdf-pages.js';
import type { QuotePdfInput } from './quote-pdf-input.js';
import { wrapText } from './text-width.js';

const TITLE: Readonly<Record<QuotePdfInput['state'], string>> = {
  draft: 'Draft quotation',
  issued: 'Quotation',
  accepted: 'Quotation, accepted',
  declined: 'Quotation, declined',
  expired: 'Quotation, expired',
  withdrawn: 'Quotation, withdrawn',
  superseded: 'Quotation, superseded',
};

/** Supplier, number and revision, customer, job, dates and the total in one band at the top of the first page. */
export function writeHead(pages: PdfPages, input: QuotePdfInput): void {
  const top = pages.y;
  const half = pages.width * 0.56;
  for (const line of wrapText(input.supplier.name, 15, half, true)) {
    pages.write(line, pages.left, pages.y, { size: 15, bold: true, colour: INK.accent });
    pages.y += 20;
  }
  for (const line of input.supplier.lines) pages.paragraph(line, pages.left, half, { colour: INK.muted });
  pages.write(TITLE[input.state], pages.right, top, { size: 18, bold: true, anchor: 'end' });
  pages.write(`${input.number}, revision ${input.revision}`, pages.right, top + 25, { size: 11, bold: true, anchor: 'end' });
  pages.y = Math.max(pages.y, top + 42) + 8;
  pages.rule(pages.y, INK.accent, 1.2);
  pages.y += 10;
  writeCells(pages, input);
}

interface Cell {
  readonly label: string;
  readonly lines: readonly string[];
  readonly share: number;
}

function writeCells(pages: PdfPages, input: QuotePdfInput): void {
  const { quote } = input;
  const cells: Cell[] = [
    { label: 'For', lines: [quote.customer.organisation, quote.customer.place ?? ''], share: 0.28 },
    { label: 'Job', lines: [input.job.number, input.job.name], share: 0.3 },
    { label: 'Date', lines: [quote.date, `Valid until ${quote.validUntil}`], share: 0.2 },
    {
      label: 'Total',
      lines: [moneyText(quote.totalMinor, quote.currency), quote.tax.rate === null ? 'no tax charged' : 'tax included'],
      share: 0.22,
    },
  ];
  const top = pages.y;
  let x = pages.left;
  let bottom = top;
  for (const { label, lines, share } of cells) {
    const width = pages.width * share;
    pages.write(label, x, top, { size: 7.5, colour: INK.muted });
    let y = top + 11;
    lines
      .filter((line) => line !== '')
      .forEach((line, i) => {
        const size = i === 0 ? 10 : 8.5;
        for (const part of wrapText(line, size, width - 10, i === 0)) {
          pages.write(part, x, y, { size, bold: i === 0 });
          y += lineHeight(size);
        }
      });
    bottom = Math.max(bottom, y);
    x += width;
  }
  pages.y = bottom + 4;
}
