import type { BecauseAnswer, QuoteAnswer } from '../../modules/quotes/quotes.schemas.js';
import type { FindingAnswer } from '../../modules/takeoffs/findings.schemas.js';
import type { TakeoffAnswer } from '../../modules/takeoffs/takeoffs.schemas.js';
import type { TicketAnswer } from '../../modules/tickets/tickets.schemas.js';

type Cell = string | number;

/** Rows in columns: numbers to the right, words to the left. */
export function table(head: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const widths = head.map((title, column) => Math.max(title.length, ...rows.map((row) => String(row[column]).length)));
  const line = (cells: readonly Cell[]) =>
    cells
      .map((cell, column) => (typeof cell === 'number' ? String(cell).padStart(widths[column]!) : cell.padEnd(widths[column]!)))
      .join('  ')
      .trimEnd();
  return [line(head), widths.map((width) => '-'.repeat(width)).join('  '), ...rows.map(line)]
    .map((text) => `  ${text}`)
    .join('\n');
}

const round = (value: number, digits: number): number => Number(value.toFixed(digits));
const metres = (mm: number): string => (mm / 1000).toFixed(3);
const money = (minor: number, currency: string): string =>
  `${(minor / 100).toLocaleString('en-US', { minimumFractionDigits: 2 })} ${currency}`;

export function takeoffText(takeoff: TakeoffAnswer): string {
  const { totals } = takeoff;
  return [
    `  ${totals.forms} forms; concrete ${round(totals.concreteM3, 2)} m3 = ${round(totals.concreteYd3, 2)} yd3, order ${totals.orderYd3} yd3; ` +
      `face ${round(totals.faceM2, 1)} m2, openings ${round(totals.openingM2, 1)} m2`,
    table(
      ['unit', 'kind', 'pieces', 'bought', 'spare', 'bound'],
      takeoff.units.map(({ sku, kind, pieces, bought, spare, lowerBound }) => [sku, kind, pieces, bought, spare, lowerBound]),
    ),
    table(
      ['material', 'kind', 'quantity', 'unit'],
      takeoff.materials.map(({ sku, kind, quantity, unit }) => [sku, kind, round(quantity, 1), unit]),
    ),
    table(
      ['wall', 'storey', 'core', 'axis m', 'courses', 'strips', 'ripped mm', 'height m'],
      takeoff.walls.map(({ mark, storey, core, lengthMm, stack }) => [
        mark,
        storey,
        core,
        metres(lengthMm),
        stack.courses,
        stack.strips,
        stack.rippedMm ?? '-',
        metres(stack.heightMm),
      ]),
    ),
  ].join('\n\n');
}

export function findingsText(findings: readonly FindingAnswer[]): string {
  if (findings.length === 0) return '  none';
  const place = ({ storey, wall, course }: FindingAnswer) =>
    [storey, wall, course === null ? null : `course ${course}`].filter((part) => part !== null).join(' ') || 'job';
  return table(
    ['finding', 'severity', 'place'],
    findings.map((finding) => [finding.code, finding.severity, place(finding)]),
  );
}

export function ticketsText(tickets: readonly TicketAnswer[]): string {
  return tickets.length === 0
    ? '  none'
    : tickets.map(({ number, severity, state, question }) => `  ${number} ${severity} ${state}: ${question}`).join('\n');
}

export function quoteText(quote: QuoteAnswer): string {
  const { number, revision, state, date, validUntil, currency, lines, subtotalMinor, tax, taxMinor, totalMinor } = quote;
  return [
    `  ${number} revision ${revision}, ${state}, ${date}, valid until ${validUntil}`,
    table(
      ['n', 'sku', 'text', 'quantity', 'unit', 'price', 'amount'],
      lines.map((line) => [
        line.n,
        line.sku,
        line.text,
        line.quantity,
        line.unit,
        line.unitPrice,
        money(line.amountMinor, currency),
      ]),
    ),
    `  subtotal ${money(subtotalMinor, currency)}, tax ${tax.rate ?? 'none'} ${money(taxMinor, currency)}, total ${money(totalMinor, currency)}`,
  ].join('\n\n');
}

/** The causes of a quote line, wall by wall: courses summed, what cutting saves as a negative number. */
export function becauseText({ because, selling }: BecauseAnswer): string {
  const sums = new Map<string, number>();
  for (const { rule, storey, wall, quantity } of because) {
    const key = [rule, storey, wall].filter((part) => part !== null).join(' ');
    sums.set(key, (sums.get(key) ?? 0) + quantity);
  }
  const parts = [...sums].map(([key, quantity]) => `${key} ${round(quantity, 2)}`);
  return `    ${parts.join(', ')}; needed ${selling.needed}`;
}
