import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/transaction.js';
import type { JobProgress, JobState } from './jobs.schemas.js';

export interface JobRow {
  readonly id: string;
  readonly organisation_id: string;
  readonly number: string;
  readonly name: string;
  readonly state: JobState;
  readonly revision: number;
  readonly version: number;
}

const JOB = 'select id, organisation_id, number, name, state, revision, version from jobs';

@Injectable()
export class JobsRepository {
  list(tx: Transaction, after: string | null, take: number): Promise<JobRow[]> {
    return tx.query(`${JOB} where supplier_id = $1 and ($2::uuid is null or id < $2) order by id desc limit $3`, [
      tx.actor.supplierId,
      after,
      take,
    ]);
  }

  one(tx: Transaction, id: string): Promise<JobRow | null> {
    return tx.one(`${JOB} where supplier_id = $1 and id = $2`, [tx.actor.supplierId, id]);
  }

  locked(tx: Transaction, id: string): Promise<JobRow | null> {
    return tx.one(`${JOB} where supplier_id = $1 and id = $2 for no key update`, [tx.actor.supplierId, id]);
  }

  progress(tx: Transaction, id: string): Promise<(JobProgress & { readonly revision: number }) | null> {
    return tx.one('select revision, stage, done, total from job_progress where supplier_id = $1 and job_id = $2', [
      tx.actor.supplierId,
      id,
    ]);
  }

  async organisationExists(tx: Transaction, id: string): Promise<boolean> {
    return (await tx.one('select 1 from organisations where supplier_id = $1 and id = $2', [tx.actor.supplierId, id])) !== null;
  }
}
