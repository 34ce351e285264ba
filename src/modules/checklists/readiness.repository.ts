import { Injectable } from '@nestjs/common';
import { holdsQuote } from '../../domain/ticket/ticket-states.js';
import type { Transaction } from '../../platform/database/transaction.js';
import type { JobState } from '../jobs/jobs.schemas.js';
import type { TicketRow } from '../tickets/tickets.repository.js';

export interface ReadyJob {
  readonly id: string;
  readonly state: JobState;
  readonly revision: number;
  readonly version: number;
  readonly measurement_id: string | null;
}

export interface Counted {
  readonly ticked: number;
  readonly total: number;
}

export interface ChangedTick {
  readonly id: string;
  readonly item: string;
  /** `storey/wall/course/rule` of the item. */
  readonly key: string;
  readonly person_name: string;
}

export type Hold = Pick<TicketRow, 'id' | 'number' | 'question'>;

@Injectable()
export class ReadinessRepository {
  /** The job, whose ticks, holds and state nobody else changes until this commit is through. */
  locked(tx: Transaction, id: string): Promise<ReadyJob | null> {
    return tx.one(
      'select id, state, revision, version, measurement_id from jobs where supplier_id = $1 and id = $2 for no key update',
      [tx.actor.supplierId, id],
    );
  }

  async counted(tx: Transaction, jobId: string, measurementId: string): Promise<Counted> {
    const row = await tx.one<Counted>(
      `select count(*) as total, count(t.id) as ticked from checklist_items i
       left join checklist_ticks t on t.supplier_id = i.supplier_id and t.job_id = $2 and t.item = i.item and t.digest = i.digest and t.standing
       where i.supplier_id = $1 and i.measurement_id = $3`,
      [tx.actor.supplierId, jobId, measurementId],
    );
    return { ticked: row?.ticked ?? 0, total: row?.total ?? 0 };
  }

  /** Ticks that count until now and are for what this measurement says otherwise, or not at all. */
  changedTicks(tx: Transaction, jobId: string, measurementId: string): Promise<ChangedTick[]> {
    return tx.query(
      `select t.id, t.item, t.key, t.person_name from checklist_ticks t
       where t.supplier_id = $1 and t.job_id = $2 and t.standing and not exists (
         select from checklist_items i where i.supplier_id = $1 and i.measurement_id = $3 and i.item = t.item and i.digest = t.digest)
       order by t.id`,
      [tx.actor.supplierId, jobId, measurementId],
    );
  }

  /** Questions that hold the job, as they hold its quotes. */
  async openHolds(tx: Transaction, jobId: string): Promise<Hold[]> {
    const rows = await tx.query<Hold & Pick<TicketRow, 'severity' | 'state'>>(
      'select id, number, question, severity, state from tickets where supplier_id = $1 and job_id = $2 order by id',
      [tx.actor.supplierId, jobId],
    );
    return rows.filter(holdsQuote);
  }
}
