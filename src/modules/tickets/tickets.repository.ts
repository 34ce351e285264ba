import { Injectable } from '@nestjs/common';
import type { Severity } from '../../domain/evidence/finding.js';
import type { TicketState } from '../../domain/ticket/ticket-states.js';
import type { Role } from '../../platform/database/actor.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { grouped } from '../contract/grouped.js';
import type { FindingRow } from '../takeoffs/findings.repository.js';

export interface TicketRow {
  readonly id: string;
  readonly organisation_id: string;
  readonly number: string;
  readonly job_id: string;
  readonly question_key: string;
  readonly question: string;
  readonly severity: Severity;
  readonly state: TicketState;
  readonly assignee_id: string | null;
  readonly assignee_name: string | null;
  readonly revision: number;
  readonly version: number;
}

export interface MessageRow {
  readonly id: string;
  readonly ticket_id: string;
  readonly author_name: string;
  readonly author_role: Role;
  readonly kind: MessageKind;
  readonly body: string;
  readonly created_at: Date;
}

/** answer: the desk's reply. comment: anybody else's. note: what the program did. opened: it counts as unanswered from here. */
export type MessageKind = 'answer' | 'comment' | 'note' | 'opened';

export interface TicketFilter {
  readonly state: TicketState | null;
  readonly job: string | null;
}

const TICKET = `select t.id, t.organisation_id, t.number, t.job_id, t.question_key, t.question, t.severity, t.state, t.assignee_id,
    p.name as assignee_name, t.revision, t.version
  from tickets t left join people p on p.supplier_id = t.supplier_id and p.id = t.assignee_id`;

@Injectable()
export class TicketsRepository {
  list(tx: Transaction, filter: TicketFilter, after: string | null, take: number): Promise<TicketRow[]> {
    return tx.query(
      `${TICKET} where t.supplier_id = $1 and ($2::ticket_state is null or t.state = $2) and ($3::uuid is null or t.job_id = $3)
         and ($4::uuid is null or t.id < $4) order by t.id desc limit $5`,
      [tx.actor.supplierId, filter.state, filter.job, after, take],
    );
  }

  one(tx: Transaction, id: string): Promise<TicketRow | null> {
    return tx.one(`${TICKET} where t.supplier_id = $1 and t.id = $2`, [tx.actor.supplierId, id]);
  }

  /** The ticket, which nobody else moves until this commit is through. */
  moving(tx: Transaction, id: string): Promise<TicketRow | null> {
    return tx.one(`${TICKET} where t.supplier_id = $1 and t.id = $2 for update of t`, [tx.actor.supplierId, id]);
  }

  ofJob(tx: Transaction, jobId: string): Promise<TicketRow[]> {
    return tx.query(`${TICKET} where t.supplier_id = $1 and t.job_id = $2 order by t.id`, [tx.actor.supplierId, jobId]);
  }

  async messages(tx: Transaction, ids: readonly string[]): Promise<Map<string, MessageRow[]>> {
    const rows = await tx.query<MessageRow>(
      `select id, ticket_id, author_name, author_role, kind, body, created_at from ticket_messages
       where supplier_id = $1 and ticket_id = any($2::uuid[]) order by id`,
      [tx.actor.supplierId, ids],
    );
    return grouped(rows, ({ ticket_id: ticketId }) => ticketId);
  }

  /** Findings of each ticket's question in the revision in which it was last seen. */
  async findings(tx: Transaction, ids: readonly string[]): Promise<Map<string, FindingRow[]>> {
    const rows = await tx.query<FindingRow & { readonly ticket_id: string }>(
      `select t.id as ticket_id, f.n, f.code, f.severity, f.storey, f.wall, f.walls, f.course, f.at_mm, f.numbers, f.source
       from tickets t
       cross join lateral (
         select m.id from measurements m where m.supplier_id = t.supplier_id and m.job_id = t.job_id and m.revision = t.revision
         order by m.id desc limit 1) m
       join findings f on f.supplier_id = t.supplier_id and f.measurement_id = m.id and f.question_key = t.question_key and not f.lifted
       where t.supplier_id = $1 and t.id = any($2::uuid[]) order by f.n`,
      [tx.actor.supplierId, ids],
    );
    return grouped(rows, ({ ticket_id: ticketId }) => ticketId);
  }

  async authorName(tx: Transaction): Promise<string> {
    if (tx.actor.personId === null) return 'Wallcourse';
    const row = await tx.one<{ name: string }>('select name from people where supplier_id = $1 and id = $2', [
      tx.actor.supplierId,
      tx.actor.personId,
    ]);
    return row?.name ?? 'unknown';
  }
}
