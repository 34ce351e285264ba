import { Injectable } from '@nestjs/common';
import { afterTicketMove, holdsQuote, type TicketMove } from '../../domain/ticket/ticket-states.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { Row } from '../../platform/database/tables.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import type { Page } from '../contract/contract.schemas.js';
import { idAfter, isId, knownId, pageOf } from '../contract/page.js';
import { Readiness } from '../checklists/readiness.js';
import { permit } from '../people/permissions.js';
import { ticketAnswer } from './ticket-answer.js';
import { TicketsRepository, type MessageKind, type TicketRow } from './tickets.repository.js';
import type { CloseBody, ReplyBody, TicketAnswer, TicketQuery } from './tickets.schemas.js';

interface Move {
  readonly move: TicketMove;
  readonly event: string;
  readonly message?: { readonly kind: MessageKind; readonly text: string };
  readonly set?: Row;
}

const DESK: readonly string[] = ['support', 'admin'];

@Injectable()
export class TicketsService {
  constructor(
    private readonly database: Database,
    private readonly repository: TicketsRepository,
    private readonly readiness: Readiness,
  ) {}

  async list(actor: Actor, query: TicketQuery): Promise<Page<TicketAnswer>> {
    permit(actor, 'ticket.read');
    if (query.job !== undefined && !isId(query.job)) return { items: [], next: null };
    const filter = { state: query.state ?? null, job: query.job ?? null };
    return this.database.transaction(actor, async (tx) => {
      const page = pageOf(
        await this.repository.list(tx, filter, idAfter(query), query.first + 1),
        query.first,
        ({ id }) => id,
        (row) => row,
      );
      return { items: await this.answers(tx, page.items), next: page.next };
    });
  }

  async one(actor: Actor, id: string): Promise<TicketAnswer> {
    permit(actor, 'ticket.read');
    return this.database.transaction(actor, async (tx) =>
      this.answer(tx, found(await this.repository.one(tx, knownId(id, 'ticket')))),
    );
  }

  async ofJob(actor: Actor, jobId: string): Promise<TicketAnswer[]> {
    permit(actor, 'ticket.read');
    return this.database.transaction(actor, async (tx) => this.answers(tx, await this.repository.ofJob(tx, jobId)));
  }

  async claim(actor: Actor, id: string, expected: number | null): Promise<TicketAnswer> {
    permit(actor, 'ticket.claim');
    return this.moved(actor, id, expected, { move: 'claim', event: 'ticket.claimed', set: { assignee_id: actor.personId } });
  }

  async reply(actor: Actor, id: string, body: ReplyBody, expected: number | null): Promise<TicketAnswer> {
    permit(actor, 'ticket.reply');
    const desk = DESK.includes(actor.role);
    return this.moved(actor, id, expected, {
      move: desk ? 'answer' : 'comment',
      event: desk ? 'ticket.answered' : 'ticket.commented',
      message: { kind: desk ? 'answer' : 'comment', text: body.text },
    });
  }

  async close(actor: Actor, id: string, body: CloseBody, expected: number | null): Promise<TicketAnswer> {
    permit(actor, 'ticket.close');
    return this.moved(actor, id, expected, {
      move: 'close',
      event: 'ticket.closed',
      ...(body.text === undefined ? {} : { message: { kind: 'comment', text: body.text } }),
    });
  }

  async reopen(actor: Actor, id: string, body: CloseBody, expected: number | null): Promise<TicketAnswer> {
    permit(actor, 'ticket.reopen');
    return this.moved(actor, id, expected, {
      move: 'reopen',
      event: 'ticket.reopened',
      message: { kind: 'opened', text: body.text ?? 'Reopened.' },
      set: { assignee_id: null },
    });
  }

  /** Tickets that keep the quotes of a job from being accepted. */
  async openHolds(tx: Transaction, jobId: string): Promise<TicketRow[]> {
    return (await this.repository.ofJob(tx, jobId)).filter(holdsQuote);
  }

  private async moved(
    actor: Actor,
    id: string,
    expected: number | null,
    { move, event, message, set }: Move,
  ): Promise<TicketAnswer> {
    return this.database.transaction(actor, async (tx) => {
      // The job first: a run that is being stored holds it too, and then its tickets.
      await this.readiness.lock(tx, found(await this.repository.one(tx, knownId(id, 'ticket'))).job_id);
      const ticket = found(await this.repository.moving(tx, id));
      const state = afterTicketMove(ticket.state, move);
      if (state === null) throw new Refusal('illegal-move', `The ticket is ${ticket.state}; ${refusedBecause(move)}`);
      await tx.update('tickets', ticket.id, expected, { ...set, state }, { kind: event, data: { ticket: ticket.number, state } });
      if (message) {
        await tx.insert(
          'ticket_messages',
          {
            organisation_id: ticket.organisation_id,
            ticket_id: ticket.id,
            author_id: actor.personId,
            author_name: await this.repository.authorName(tx),
            author_role: actor.role,
            kind: message.kind,
            body: message.text,
          },
          { kind: 'ticket.message-added', data: { ticket: ticket.number, message: message.kind } },
        );
      }
      if (ticket.severity === 'hold') await this.readiness.settle(tx, ticket.job_id);
      return this.answer(tx, found(await this.repository.one(tx, ticket.id)));
    });
  }

  private async answer(tx: Transaction, row: TicketRow): Promise<TicketAnswer> {
    return (await this.answers(tx, [row]))[0]!;
  }

  private async answers(tx: Transaction, rows: readonly TicketRow[]): Promise<TicketAnswer[]> {
    const ids = rows.map(({ id }) => id);
    const findings = await this.repository.findings(tx, ids);
    const messages = await this.repository.messages(tx, ids);
    return rows.map((row) => ticketAnswer(row, findings.get(row.id) ?? [], messages.get(row.id) ?? []));
  }
}

function found(row: TicketRow | null): TicketRow {
  if (!row) throw new Refusal('not-found', 'There is no such ticket.');
  return row;
}

function refusedBecause(move: TicketMove): string {
  if (move === 'close') return 'only an answered ticket can be closed.';
  if (move === 'reopen') return 'only an answered or closed ticket can be reopened.';
  if (move === 'claim') return 'only an open ticket can be claimed.';
  return 'a closed ticket must be reopened first.';
}
