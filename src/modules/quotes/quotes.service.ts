import { Injectable } from '@nestjs/common';
import { price } from '../../domain/quote/pricing.js';
import type { PriceRefusal, Quote } from '../../domain/quote/quote.js';
import { readPriceList } from '../../domain/quote/read-price-list.js';
import { afterQuoteMove, possibleQuoteMoves, type QuoteMove, type QuoteState } from '../../domain/quote/quote-states.js';
import { Clock } from '../../platform/clock/clock.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { Row } from '../../platform/database/tables.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { knownId } from '../contract/page.js';
import { PeopleRepository } from '../people/people.repository.js';
import { permit } from '../people/permissions.js';
import type { PriceListWithDocument } from '../prices/prices.repository.js';
import { PricesService } from '../prices/prices.service.js';
import { TakeoffsService, type ShownJob } from '../takeoffs/takeoffs.service.js';
import type { TicketRow } from '../tickets/tickets.repository.js';
import { TicketsService } from '../tickets/tickets.service.js';
import { becauseAnswer, holdAnswer, quoteAnswer } from './quote-answer.js';
import { QuotesRepository, type QuoteRow } from './quotes.repository.js';
import type { BecauseAnswer, QuoteAnswer } from './quotes.schemas.js';

const EVENTS: Readonly<Record<QuoteMove, string>> = {
  issue: 'quote.issued',
  accept: 'quote.accepted',
  decline: 'quote.declined',
  withdraw: 'quote.withdrawn',
  expire: 'quote.expired',
  supersede: 'quote.superseded',
};

/** Places of an item without a price that a refusal names. */
const MOST_CAUSES = 20;

/** What else is written with the new state. */
type Settling = (tx: Transaction, row: QuoteRow) => Promise<Row>;

const settledNow: Settling = (tx) => Promise.resolve({ settled_at: tx.now() });

@Injectable()
export class QuotesService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly takeoffs: TakeoffsService,
    private readonly tickets: TicketsService,
    private readonly prices: PricesService,
    private readonly people: PeopleRepository,
    private readonly repository: QuotesRepository,
  ) {}

  async make(actor: Actor, jobId: string): Promise<QuoteAnswer> {
    permit(actor, 'quote.make');
    return this.database.transaction(actor, async (tx) => {
      const shown = await this.takeoffs.shown(tx, jobId);
      const today = await this.today(tx);
      const list = await this.prices.inForce(tx, today);
      const quote = await this.priced(tx, shown, list, today);
      return this.answer(tx, await this.store(tx, shown, list, quote));
    });
  }

  async one(actor: Actor, id: string): Promise<QuoteAnswer> {
    permit(actor, 'quote.read');
    return this.database.transaction(actor, async (tx) =>
      this.answer(tx, found(await this.repository.one(tx, knownId(id, 'quote')))),
    );
  }

  async ofJob(actor: Actor, jobId: string): Promise<QuoteAnswer[]> {
    permit(actor, 'quote.read');
    return this.database.transaction(actor, async (tx) => {
      const answers: QuoteAnswer[] = [];
      for (const row of await this.repository.ofJob(tx, jobId)) answers.push(await this.answer(tx, row));
      return answers;
    });
  }

  async because(actor: Actor, id: string, n: number): Promise<BecauseAnswer> {
    permit(actor, 'quote.read');
    return this.database.transaction(actor, async (tx) => {
      const row = found(await this.repository.one(tx, knownId(id, 'quote')));
      const line = await this.repository.line(tx, row.id, n);
      if (!line) throw new Refusal('not-found', 'There is no such line.');
      return becauseAnswer(line);
    });
  }

  async accept(actor: Actor, id: string, expected: number | null): Promise<QuoteAnswer> {
    permit(actor, 'quote.accept');
    return this.moved(actor, id, expected, 'accept');
  }

  async decline(actor: Actor, id: string, expected: number | null): Promise<QuoteAnswer> {
    permit(actor, 'quote.decline');
    return this.moved(actor, id, expected, 'decline');
  }

  async withdraw(actor: Actor, id: string, expected: number | null): Promise<QuoteAnswer> {
    permit(actor, 'quote.withdraw');
    return this.moved(actor, id, expected, 'withdraw');
  }

  /** Moves the quote in a commit of its own, after everything that keeps it from moving was looked at. */
  async moved(
    actor: Actor,
    id: string,
    expected: number | null,
    move: QuoteMove,
    settle: Settling = settledNow,
  ): Promise<QuoteAnswer> {
    return this.database.transaction(actor, async (tx) => {
      const row = found(await this.repository.moving(tx, knownId(id, 'quote')));
      const state = await this.after(tx, row, move);
      await tx.update(
        'quotes',
        row.id,
        expected,
        { ...(await settle(tx, row)), state },
        { kind: EVENTS[move], data: { quote: row.number, state } },
      );
      return this.answer(tx, found(await this.repository.one(tx, row.id)));
    });
  }

  /** The state after the move, or the refusal that says why there is none. */
  async after(tx: Transaction, row: QuoteRow, move: QuoteMove): Promise<QuoteState> {
    const state = afterQuoteMove(row.state, move);
    if (state === null) throw illegalMove(row.state, move);
    if (move === 'issue' || move === 'accept') await this.inForce(tx, row);
    if (move === 'accept') notHeld(await this.tickets.openHolds(tx, row.job_id));
    return state;
  }

  private async inForce(tx: Transaction, row: QuoteRow): Promise<void> {
    const revision = await this.repository.jobRevision(tx, row.job_id);
    if (revision !== row.job_revision) {
      throw new Refusal(
        'illegal-move',
        `The quote is for revision ${row.job_revision} of the schedule; revision ${revision} is in force. Make a new quote.`,
      );
    }
    const today = await this.today(tx);
    if (today > row.valid_until)
      throw new Refusal('illegal-move', `The quote was valid until ${row.valid_until}. Make a new quote.`);
  }

  private async today(tx: Transaction): Promise<string> {
    return this.clock.today((await this.people.supplier(tx)).time_zone);
  }

  private async priced(
    tx: Transaction,
    { job, measurementId }: ShownJob,
    list: PriceListWithDocument,
    today: string,
  ): Promise<Quote> {
    const read = readPriceList(list.body);
    if (!read.ok) throw new Error(`the stored price list ${list.id} is not one`);
    const organisation = await this.people.organisation(tx, job.organisation_id);
    const customer = { organisation: organisation?.name ?? '', place: organisation?.place ?? null };
    const quote = price(await this.takeoffs.counted(tx, measurementId), read.value, customer, today);
    if (!quote.ok) throw priceRefusal(quote.error);
    return quote.value;
  }

  private async store(
    tx: Transaction,
    { job, measurementId }: ShownJob,
    list: PriceListWithDocument,
    quote: Quote,
  ): Promise<QuoteRow> {
    const { date, validUntil, currency, lines, subtotalMinor, taxMinor, totalMinor, ...body } = quote;
    const number = await tx.nextNumber('quote');
    const row = await tx.insert<QuoteRow>(
      'quotes',
      {
        organisation_id: job.organisation_id,
        number,
        revision: 1,
        job_id: job.id,
        job_revision: job.revision,
        measurement_id: measurementId,
        price_list_id: list.id,
        state: 'draft',
        currency,
        subtotal_minor: subtotalMinor,
        tax_minor: taxMinor,
        total_minor: totalMinor,
        tax_place: quote.tax.place,
        tax_rate: quote.tax.rate,
        quoted_on: date,
        valid_until: validUntil,
        body,
        created_by: tx.actor.personId,
      },
      { kind: 'quote.made', data: { quote: number, totalMinor, currency } },
    );
    await this.repository.insertLines(tx, row, lines);
    return row;
  }

  private async answer(tx: Transaction, row: QuoteRow): Promise<QuoteAnswer> {
    const live = row.state === 'draft' || row.state === 'issued';
    const holds = live ? await this.tickets.openHolds(tx, row.job_id) : [];
    return quoteAnswer(row, await this.repository.lines(tx, row.id), holds);
  }
}

function found(row: QuoteRow | null): QuoteRow {
  if (!row) throw new Refusal('not-found', 'There is no such quote.');
  return row;
}

function illegalMove(state: QuoteState, move: QuoteMove): Refusal {
  const possible = possibleQuoteMoves(state).join(', ');
  return new Refusal(
    'illegal-move',
    `The quote is ${state}; it cannot ${move}. It can ${possible === '' ? 'do nothing more' : possible}.`,
  );
}

function notHeld(holds: readonly TicketRow[]): void {
  if (holds.length === 0) return;
  const named = holds.map(({ number, question }) => `${number} (${question})`).join('; ');
  throw new Refusal('open-hold', `Questions that hold the quote are open: ${named}.`, [], { tickets: holds.map(holdAnswer) });
}

function priceRefusal(error: PriceRefusal): Refusal {
  if (error.code === 'list-not-in-force')
    return new Refusal('illegal-move', `The price list ${error.priceList} is in force from ${error.inForceFrom}.`);
  if (error.code === 'list-ended')
    return new Refusal('illegal-move', `The price list ${error.priceList} was in force until ${error.inForceTo}.`);
  if (error.code === 'amount-too-large')
    return new Refusal(
      'illegal-move',
      `By the price list ${error.priceList} ${error.sku ?? 'the whole'} costs more than can be counted exactly.`,
    );
  if (error.code === 'too-many-trucks')
    return new Refusal(
      'illegal-move',
      `By the price list ${error.priceList} one delivery takes more than ${error.most} trucks: make its truck larger.`,
    );
  const skus = error.items
    .map(({ sku, reason }) => `${sku} (${reason === 'not-listed' ? 'not listed' : 'sold in another unit'})`)
    .join(', ');
  return new Refusal('illegal-move', `The price list ${error.priceList} prices not everything the job takes: ${skus}.`, [], {
    unpriced: error.items.map(({ because, ...item }) => ({ ...item, because: because.slice(0, MOST_CAUSES) })),
  });
}
