import { Injectable } from '@nestjs/common';
import type { Role } from '../../platform/database/actor.js';
import type { Transaction } from '../../platform/database/transaction.js';

export interface EventRow {
  readonly id: string;
  readonly kind: string;
  readonly subject_type: string;
  readonly subject_id: string;
  readonly data: Readonly<Record<string, unknown>>;
  readonly person_name: string | null;
  readonly role: Role;
  readonly created_at: Date;
}

@Injectable()
export class HistoriesRepository {
  ofJob(tx: Transaction, jobId: string, after: string | null, take: number): Promise<EventRow[]> {
    return tx.query(
      `select e.id, e.kind, e.subject_type, e.subject_id, e.data, p.name as person_name, e.role, e.created_at
       from history_events e left join people p on p.supplier_id = e.supplier_id and p.id = e.person_id
       where e.supplier_id = $1 and e.job_id = $2 and ($3::uuid is null or e.id > $3) order by e.id limit $4`,
      [tx.actor.supplierId, jobId, after, take],
    );
  }

  async jobExists(tx: Transaction, jobId: string): Promise<boolean> {
    return (await tx.one('select 1 from jobs where supplier_id = $1 and id = $2', [tx.actor.supplierId, jobId])) !== null;
  }
}
