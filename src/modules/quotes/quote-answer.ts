import type { Quote, QuoteLine } from '../../domain/quote/quote.js';
import { findingAnswer } from '../takeoffs/takeoff-answer.js';
import type { TicketRow } from '../tickets/tickets.repository.js';
import type { BecauseAnswer, QuoteAnswer } from './quotes.schemas.js';
import type { QuoteRow } from './quotes.repository.js';

export function quoteAnswer(row: QuoteRow, lines: readonly QuoteLine[], holds: readonly TicketRow[]): QuoteAnswer {
  const { tax, scope, conditions, cautions } = row.body;
  return {
    id: row.id,
    number: row.number,
    revision: row.revision,
    state: row.state,
    version: row.version,
    job: row.job_id,
    jobRevision: row.job_revision,
    date: row.quoted_on,
    validUntil: row.valid_until,
    currency: row.currency,
    lines: lines.map(lineAnswer),
    subtotalMinor: row.subtotal_minor,
    tax: { ...tax },
    taxes: [...taxesOf(row)],
    taxMinor: row.tax_minor,
    totalMinor: row.total_minor,
    freight: freightAnswer(row.body.freight ?? null),
    openHolds: holds.map(holdAnswer),
    scope: [...scope],
    conditions: conditions.map(({ severity, text, finding }) => ({ severity, text, finding: findingAnswer(finding) })),
    cautions: [...cautions],
  };
}

const lineAnswer = ({ because: _because, selling: _selling, ...line }: QuoteLine): QuoteAnswer['lines'][number] => line;

const freightAnswer = (freight: Quote['freight']): QuoteAnswer['freight'] =>
  freight && {
    ...freight,
    notMeasured: [...freight.notMeasured],
    deliveries: freight.deliveries.map((delivery) => ({
      ...delivery,
      loads: delivery.loads.map((load) => ({ ...load, contents: [...load.contents] })),
    })),
  };

export const holdAnswer = ({ id, number, question }: TicketRow): QuoteAnswer['openHolds'][number] => ({
  ticket: id,
  number,
  question,
});

export const becauseAnswer = ({
  kind: _kind,
  storey: _storey,
  group: _group,
  because,
  selling,
  ...line
}: QuoteLine): BecauseAnswer => ({
  ...line,
  because: because.map((each) => ({ ...each, atMm: [...(each.atMm ?? [])] })),
  selling: sellingAnswer(selling),
});

const sellingAnswer = ({ cutting, ...selling }: QuoteLine['selling']): BecauseAnswer['selling'] => ({
  ...selling,
  ...(cutting && { cutting: { ...cutting, pieces: [...cutting.pieces] } }),
});

/** The quote as the pricing made it, put together from what was frozen. */
export const frozenQuote = (row: QuoteRow, lines: readonly QuoteLine[]): Quote => ({
  ...row.body,
  taxes: taxesOf(row),
  freight: row.body.freight ?? null,
  date: row.quoted_on,
  validUntil: row.valid_until,
  currency: row.currency,
  lines,
  subtotalMinor: row.subtotal_minor,
  taxMinor: row.tax_minor,
  totalMinor: row.total_minor,
});

/** A quote made before there were several taxes has its one. */
const taxesOf = ({ body: { tax, taxes }, subtotal_minor, tax_minor }: QuoteRow): Quote['taxes'] => {
  if (taxes) return taxes;
  return tax.rate === null
    ? []
    : [{ name: 'tax', place: tax.place, rate: tax.rate, baseMinor: subtotal_minor, amountMinor: tax_minor }];
};
