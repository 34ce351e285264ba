import { Injectable } from '@nestjs/common';
import type { EventNote, Transaction } from '../../platform/database/transaction.js';
import { isMeasured } from '../jobs/jobs.schemas.js';
import { ReadinessRepository, type Counted, type Hold, type ReadyJob } from './readiness.repository.js';

/** Where the checklist of a job stands. */
export interface Standing extends Counted {
  readonly revision: number;
  readonly version: number;
  readonly readyToPour: boolean;
  readonly openHolds: readonly Hold[];
}

/** Why a job is ready no more. */
type NotReadyBecause = 'revised' | 'item-unticked' | 'hold-opened';

export const notReady = (revision: number, because: NotReadyBecause): EventNote => ({ kind: 'job.not-ready', data: { revision, because } });

/**
 * Whether a job is ready to pour: every item of the measurement it shows is ticked and no question holds it.
 *
 * Whoever ticks, unticks, answers or asks locks the job first and settles it last, in one commit: of two people who tick the last two
 * items at once, the second sees what the first did.
 */
@Injectable()
export class Readiness {
  constructor(private readonly repository: ReadinessRepository) {}

  lock(tx: Transaction, jobId: string): Promise<ReadyJob | null> {
    return this.repository.locked(tx, jobId);
  }

  /** Brings the state of a locked job in line with its ticks and holds; a job that is being measured is left as it is. */
  async settle(tx: Transaction, jobId: string): Promise<void> {
    const job = await this.repository.locked(tx, jobId);
    if (!job || !isMeasured(job.state) || job.measurement_id === null) return;
    const { ticked, total, openHolds } = await this.standing(tx, job, job.measurement_id);
    const ready = total > 0 && ticked === total && openHolds.length === 0;
    if (ready === (job.state === 'ready-to-pour')) return;
    const event = ready
      ? { kind: 'job.ready-to-pour', data: { revision: job.revision, items: total } }
      : notReady(job.revision, openHolds.length > 0 ? 'hold-opened' : 'item-unticked');
    await tx.update('jobs', job.id, null, { state: ready ? 'ready-to-pour' : 'measured' }, event);
    await tx.signal('job', job.id);
  }

  /**
   * Takes back every tick for what a revision changed, for good: where a later revision asks for the same again, the wall may have been changed
   * meanwhile, and somebody has to look.
   */
  async untickChanged(tx: Transaction, jobId: string, measurementId: string, revision: number): Promise<void> {
    for (const { id, item, key, person_name: tickedBy } of await this.repository.changedTicks(tx, jobId, measurementId)) {
      const event = { kind: 'checklist.unticked', data: { item, key, note: null, tickedBy, revision, because: 'revised' } };
      await tx.update('checklist_ticks', id, null, { standing: false }, event);
    }
  }

  async standing(tx: Transaction, job: ReadyJob, measurementId: string): Promise<Standing> {
    const counted = await this.repository.counted(tx, job.id, measurementId);
    const openHolds = await this.repository.openHolds(tx, job.id);
    const { revision, version, state } = job;
    return { ...counted, revision, version, readyToPour: state === 'ready-to-pour', openHolds };
  }
}
