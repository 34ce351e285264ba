import { Injectable } from '@nestjs/common';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import type { Page, PageQuery } from '../contract/contract.schemas.js';
import { idAfter, knownId, pageOf } from '../contract/page.js';
import { permit } from '../people/permissions.js';
import { HistoriesRepository, type EventRow } from './histories.repository.js';
import type { EventAnswer } from './histories.schemas.js';

@Injectable()
export class HistoriesService {
  constructor(
    private readonly database: Database,
    private readonly repository: HistoriesRepository,
  ) {}

  async ofJob(actor: Actor, id: string, query: PageQuery): Promise<Page<EventAnswer>> {
    permit(actor, 'history.read');
    const after = idAfter(query);
    return this.database.transaction(actor, async (tx) => {
      if (!(await this.repository.jobExists(tx, knownId(id, 'job')))) throw new Refusal('not-found', 'There is no such job.');
      return pageOf(await this.repository.ofJob(tx, id, after, query.first + 1), query.first, (row) => row.id, eventAnswer);
    });
  }
}

const eventAnswer = (row: EventRow): EventAnswer => ({
  id: row.id,
  at: new Date(row.created_at).toISOString(),
  kind: row.kind,
  by: row.person_name,
  role: row.role,
  subject: { type: row.subject_type, id: row.subject_id },
  data: row.data,
});
