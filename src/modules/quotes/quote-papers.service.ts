import { Injectable } from '@nestjs/common';
import { v7 as uuidv7 } from 'uuid';
import type { QuoteState } from '../../domain/quote/quote-states.js';
import { BlobStore } from '../../platform/blobs/blob-store.js';
import { Clock } from '../../platform/clock/clock.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { WorkerPool } from '../../platform/workers/worker-pool.js';
import { knownId } from '../contract/page.js';
import { drawingCaution } from '../drawings/drawing-caution.js';
import { paperFor } from '../drawings/paper-for.js';
import { PeopleRepository } from '../people/people.repository.js';
import { permit } from '../people/permissions.js';
import { RangesService } from '../ranges/ranges.service.js';
import { SchedulesRepository } from '../schedules/schedules.repository.js';
import { TakeoffsRepository } from '../takeoffs/takeoffs.repository.js';
import { TicketsService } from '../tickets/tickets.service.js';
import type { PaperInput } from './paper.worker.js';
import { frozenQuote } from './quote-answer.js';
import { QuotesRepository, type QuoteRow } from './quotes.repository.js';
import type { QuoteAnswer } from './quotes.schemas.js';
import { QuotesService } from './quotes.service.js';

/** More walls than these are not drawn behind a quote: each has its drawing under the job. */
const MOST_DRAWN = 300;
const NOT_DRAWN =
  `This job has more than ${MOST_DRAWN} walls: no drawings follow in this document. The plan of every storey, the elevation of every wall ` +
  'and the detail of every junction stand under the job.';

@Injectable()
export class QuotePapers {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly pool: WorkerPool,
    private readonly blobs: BlobStore,
    private readonly quotes: QuotesService,
    private readonly repository: QuotesRepository,
    private readonly takeoffs: TakeoffsRepository,
    private readonly tickets: TicketsService,
    private readonly schedules: SchedulesRepository,
    private readonly ranges: RangesService,
    private readonly people: PeopleRepository,
  ) {}

  /** Freezes the quote: from here on its paper is the one that is stored now. */
  async issue(actor: Actor, id: string, expected: number | null): Promise<QuoteAnswer> {
    permit(actor, 'quote.issue');
    const input = await this.database.transaction(actor, async (tx) => {
      const row = await this.row(tx, id);
      return this.input(tx, row, await this.quotes.after(tx, row, 'issue'));
    });
    const blob = await this.blobs.put(actor.supplierId, await this.printed(input));
    return this.quotes.moved(actor, id, expected, 'issue', async (tx, row) => {
      await tx.query(
        `insert into blobs (supplier_id, id, organisation_id, sha256, bytes, media_type, created_at)
         values ($1, $2, $3, $4, $5, $6, $7) on conflict do nothing`,
        [actor.supplierId, uuidv7(), row.organisation_id, blob.sha256, blob.bytes, 'application/pdf', tx.now()],
      );
      return { issued_at: tx.now(), pdf_sha256: blob.sha256 };
    });
  }

  /** The stored paper of an issued quote, or a draft printed as it stands. */
  async pdf(actor: Actor, id: string): Promise<Buffer> {
    permit(actor, 'quote.read');
    const { stored, input } = await this.database.transaction(actor, async (tx) => {
      const row = await this.row(tx, id);
      return row.pdf_sha256 === null
        ? { stored: null, input: await this.input(tx, row, row.state) }
        : { stored: row.pdf_sha256, input: null };
    });
    return stored === null ? this.printed(input) : this.blobs.read(actor.supplierId, stored);
  }

  private async printed(input: PaperInput): Promise<Buffer> {
    return Buffer.from(await this.pool.run<PaperInput, Uint8Array>('modules/quotes/paper.worker.js', 'paper', input));
  }

  private async input(tx: Transaction, row: QuoteRow, state: QuoteState): Promise<PaperInput> {
    const { summary, revision } = await this.takeoffs.measurement(tx, row.measurement_id, false);
    const walls = await this.takeoffs.walls(tx, row.measurement_id, true, 0, MOST_DRAWN + 1);
    const job = await this.takeoffs.job(tx, row.job_id);
    const schedule = await this.schedules.revision(tx, row.job_id, revision);
    if (!job || !schedule) throw new Error(`the quote ${row.id} has lost its job`);
    const supplier = await this.people.supplier(tx);
    const { units } = schedule.schedule;
    return {
      quote: frozenQuote(row, await this.repository.lines(tx, row.id)),
      number: row.number,
      revision: row.revision,
      state,
      job: { number: job.number, name: job.name },
      supplier: { name: supplier.name, lines: supplier.settings.lines ?? [] },
      openHolds: (await this.tickets.openHolds(tx, row.job_id)).map(({ number, question }) => ({ number, question })),
      paper: paperFor(units),
      createdAt: this.clock.now().toISOString(),
      ...(walls.length > MOST_DRAWN ? { notDrawn: NOT_DRAWN } : {}),
      measurement: walls.length > MOST_DRAWN ? null : { summary, walls: walls.map(({ wall }) => wall) },
      range: await this.ranges.version(tx, summary.range.code, summary.range.version),
      units,
      header: { job: job.number, jobName: job.name, revision, supplier: supplier.name, caution: drawingCaution() },
    };
  }

  private async row(tx: Transaction, id: string): Promise<QuoteRow> {
    const row = await this.repository.one(tx, knownId(id, 'quote'));
    if (!row) throw new Refusal('not-found', 'There is no such quote.');
    return row;
  }
}
