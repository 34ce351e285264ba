import { Injectable } from '@nestjs/common';
import type { PrintedItem } from '../../domain/drawing/index.js';
import { CAUTIONS } from '../../domain/evidence/cautions.js';
import { Clock } from '../../platform/clock/clock.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { WorkerPool } from '../../platform/workers/worker-pool.js';
import { paperFor } from '../drawings/paper-for.js';
import { PeopleRepository } from '../people/people.repository.js';
import { permit } from '../people/permissions.js';
import { SchedulesRepository } from '../schedules/schedules.repository.js';
import { TakeoffsService } from '../takeoffs/takeoffs.service.js';
import type { ChecklistPaperInput } from './checklist-paper.worker.js';
import { ChecklistsRepository, type ItemRow } from './checklists.repository.js';
import { Readiness } from './readiness.js';

/** About a thousand sheets: more is printed storey by storey. */
const MOST_PRINTED = 20_000;

@Injectable()
export class ChecklistPapers {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly pool: WorkerPool,
    private readonly takeoffs: TakeoffsService,
    private readonly schedules: SchedulesRepository,
    private readonly people: PeopleRepository,
    private readonly readiness: Readiness,
    private readonly repository: ChecklistsRepository,
  ) {}

  /** The checklist to take to the site, of one storey or of all, as it stands now. */
  async pdf(actor: Actor, jobId: string, storey: string | null): Promise<Buffer> {
    permit(actor, 'checklist.read');
    const input = await this.database.transaction(actor, (tx) => this.input(tx, jobId, storey));
    return Buffer.from(
      await this.pool.run<ChecklistPaperInput, Uint8Array>('modules/checklists/checklist-paper.worker.js', 'checklistPaper', input),
    );
  }

  private async input(tx: Transaction, jobId: string, storey: string | null): Promise<ChecklistPaperInput> {
    const { job, measurementId } = await this.takeoffs.shown(tx, jobId);
    const rows = await this.repository.page(tx, job.id, measurementId, storey, 0, MOST_PRINTED + 1);
    if (rows.length > MOST_PRINTED) {
      throw new Refusal('too-large', `More than ${MOST_PRINTED} items are printed storey by storey: ?storey= with the id of one.`);
    }
    if (rows.length === 0) throw new Refusal('not-found', 'There is nothing on the checklist there.');
    const schedule = await this.schedules.revision(tx, job.id, job.revision);
    if (!schedule) throw new Error(`revision ${job.revision} of job ${job.id} has no schedule`);
    const { units } = schedule.schedule;
    const supplier = await this.people.supplier(tx);
    const { readyToPour, ticked, total, openHolds } = await this.readiness.standing(tx, job, measurementId);
    return {
      job: { number: job.number, name: job.name },
      revision: job.revision,
      supplier: supplier.name,
      readyToPour,
      ticked,
      total,
      openHolds: openHolds.map(({ number, question }) => ({ number, question })),
      items: rows.map((row) => this.printed(row, supplier.time_zone)),
      cautions: CAUTIONS,
      metric: units === 'm' || units === 'mm',
      paper: paperFor(units),
      createdAt: this.clock.now().toISOString(),
    };
  }

  private printed(row: ItemRow, timeZone: string): PrintedItem {
    const { phase, rule, storey, wall, course, text, counts, person_name: by, ticked_at: at, note, photo_sha256: photo } = row;
    const tick = by === null || at === null ? null : { by, on: this.clock.day(new Date(at), timeZone), note, photo: photo !== null };
    return { phase, rule, storey, wall, course, text, counts, tick };
  }
}
