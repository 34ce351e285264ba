import { Injectable } from '@nestjs/common';
import type { Quote, QuoteLine } from '../../domain/quote/quote.js';
import type { QuoteState } from '../../domain/quote/quote-states.js';
import type { Transaction } from '../../platform/database/transaction.js';

/** What else a quote says, frozen with its numbers. */
export type QuoteBody = Pick<Quote, 'engine' | 'range' | 'priceList' | 'customer' | 'tax' | 'scope' | 'conditions' | 'cautions'> &
  /** Absent from quotes made before there were several taxes, and freight. */
  Partial<Pick<Quote, 'taxes' | 'freight'>>;

/** How a line came to its price; absent from quotes made before prices had breaks and audiences. */
type LinePricing = Pick<
  QuoteLine,
  'storey' | 'group' | 'listPrice' | 'break' | 'audience' | 'discountRate' | 'looseQuantity' | 'surchargeRate'
>;

export interface QuoteRow {
  readonly id: string;
  readonly organisation_id: string;
  readonly number: string;
  readonly revision: number;
  readonly job_id: string;
  readonly job_revision: number;
  readonly measurement_id: string;
  readonly state: QuoteState;
  readonly currency: Quote['currency'];
  readonly subtotal_minor: number;
  readonly tax_minor: number;
  readonly total_minor: number;
  readonly quoted_on: string;
  readonly valid_until: string;
  readonly body: QuoteBody;
  readonly pdf_sha256: string | null;
  readonly version: number;
}

interface LineRow {
  readonly quote_id: string;
  readonly n: number;
  readonly sku: string;
  readonly text: string;
  readonly quantity: string;
  readonly unit: QuoteLine['unit'];
  readonly unit_price: string;
  readonly amount_minor: number;
  readonly because: Pick<QuoteLine, 'kind' | 'because' | 'selling'> & { readonly pricing?: LinePricing };
}

const QUOTE = `select id, organisation_id, number, revision, job_id, job_revision, measurement_id, state, currency,
  subtotal_minor, tax_minor, total_minor, quoted_on, valid_until, body, pdf_sha256, version from quotes`;

@Injectable()
export class QuotesRepository {
  one(tx: Transaction, id: string): Promise<QuoteRow | null> {
    return tx.one(`${QUOTE} where supplier_id = $1 and id = $2`, [tx.actor.supplierId, id]);
  }

  /** The quote, which nobody else moves until this commit is through. */
  moving(tx: Transaction, id: string): Promise<QuoteRow | null> {
    return tx.one(`${QUOTE} where supplier_id = $1 and id = $2 for update`, [tx.actor.supplierId, id]);
  }

  ofJob(tx: Transaction, jobId: string): Promise<QuoteRow[]> {
    return tx.query(`${QUOTE} where supplier_id = $1 and job_id = $2 order by id`, [tx.actor.supplierId, jobId]);
  }

  async lines(tx: Transaction, quoteId: string): Promise<QuoteLine[]> {
    const rows = await tx.query<LineRow>(
      `select quote_id, n, sku, text, quantity, unit, unit_price, amount_minor, because from quote_lines
       where supplier_id = $1 and quote_id = $2 order by n`,
      [tx.actor.supplierId, quoteId],
    );
    return rows.map(lineOf);
  }

  async line(tx: Transaction, quoteId: string, n: number): Promise<QuoteLine | null> {
    const row = await tx.one<LineRow>(
      `select quote_id, n, sku, text, quantity, unit, unit_price, amount_minor, because from quote_lines
       where supplier_id = $1 and quote_id = $2 and n = $3`,
      [tx.actor.supplierId, quoteId, n],
    );
    return row && lineOf(row);
  }

  async jobRevision(tx: Transaction, jobId: string): Promise<number> {
    const row = await tx.one<{ revision: number }>('select revision from jobs where supplier_id = $1 and id = $2', [
      tx.actor.supplierId,
      jobId,
    ]);
    if (!row) throw new Error(`the job ${jobId} of a quote does not exist`);
    return row.revision;
  }

  async insertLines(
    tx: Transaction,
    quote: Pick<QuoteRow, 'id' | 'organisation_id'>,
    lines: readonly QuoteLine[],
  ): Promise<void> {
    await tx.insertParts(
      'quote_lines',
      lines.map((line) => ({
        organisation_id: quote.organisation_id,
        quote_id: quote.id,
        n: line.n,
        sku: line.sku,
        text: line.text,
        quantity: line.quantity,
        unit: line.unit,
        unit_price: line.unitPrice,
        amount_minor: line.amountMinor,
        because: { kind: line.kind, because: line.because, selling: line.selling, pricing: pricingOf(line) },
      })),
    );
  }
}

const pricingOf = (line: QuoteLine): LinePricing => ({
  storey: line.storey,
  group: line.group,
  listPrice: line.listPrice,
  break: line.break,
  audience: line.audience,
  discountRate: line.discountRate,
  looseQuantity: line.looseQuantity,
  surchargeRate: line.surchargeRate,
});

/** As lines were priced before: everybody's price, without breaks and discounts. */
const plainPricing = ({ unit_price, because: { kind } }: LineRow): LinePricing => ({
  storey: null,
  group: kind === 'material' ? 'materials' : 'forms',
  listPrice: unit_price,
  break: null,
  audience: 'list',
  discountRate: null,
  looseQuantity: 0,
  surchargeRate: null,
});

const lineOf = (row: LineRow): QuoteLine => ({
  ...(row.because.pricing ?? plainPricing(row)),
  n: row.n,
  kind: row.because.kind,
  sku: row.sku,
  text: row.text,
  quantity: Number(row.quantity),
  unit: row.unit,
  unitPrice: row.unit_price,
  amountMinor: row.amount_minor,
  because: row.because.because,
  selling: row.because.selling,
});
