import { Injectable } from '@nestjs/common';
import type { Question } from '../../domain/ticket/question.js';
import { ticketPlan, type StandingTicket } from '../../domain/ticket/ticket-plan.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { TicketsRepository, type MessageKind, type MessageRow, type TicketRow } from './tickets.repository.js';

export interface AskingJob {
  readonly id: string;
  readonly organisationId: string;
  readonly revision: number;
}

/** Brings the tickets of a job in line with the questions of a new run, within the run's own commit. */
@Injectable()
export class TicketSettler {
  constructor(private readonly repository: TicketsRepository) {}

  /** Must be called before the measurement of the new revision is stored: it reads the findings of the one before. */
  async standing(tx: Transaction, jobId: string): Promise<StandingTicket[]> {
    const rows = await this.repository.ofJob(tx, jobId);
    const ids = rows.map(({ id }) => id);
    const findings = await this.repository.findings(tx, ids);
    const messages = await this.repository.messages(tx, ids);
    return rows.map((row) => ({
      id: row.id,
      questionKey: row.question_key,
      state: row.state,
      answered: isAnswered(messages.get(row.id) ?? []),
      findings: findings.get(row.id) ?? [],
    }));
  }

  async settle(
    tx: Transaction,
    job: AskingJob,
    standing: readonly StandingTicket[],
    questions: readonly Question[],
  ): Promise<void> {
    const plan = ticketPlan(standing, questions);
    const rows = new Map((await this.repository.ofJob(tx, job.id)).map((row) => [row.id, row]));
    for (const question of plan.raise) await this.raise(tx, job, question);
    for (const { id, question } of plan.keep) await this.see(tx, job, rows.get(id)!, question);
    for (const { id, question, because } of plan.reopen) {
      await this.see(tx, job, rows.get(id)!, question, { state: 'open', assignee_id: null });
      const text =
        because === 'new-place'
          ? 'Opened again: the question now stands at walls that the answer did not name.'
          : 'Opened again: its cause is back.';
      await this.note(tx, rows.get(id)!, 'opened', text);
    }
    for (const id of plan.settle) {
      const row = rows.get(id)!;
      await tx.update(
        'tickets',
        id,
        null,
        { state: 'closed' },
        { kind: 'ticket.closed', data: { ticket: row.number, state: 'closed' } },
      );
      await this.note(tx, row, 'note', `Closed: revision ${job.revision} of the schedule no longer raises the question.`);
    }
  }

  private async raise(tx: Transaction, job: AskingJob, question: Question): Promise<void> {
    const number = await tx.nextNumber('ticket');
    await tx.insert(
      'tickets',
      {
        organisation_id: job.organisationId,
        number,
        job_id: job.id,
        question_key: question.key,
        code: question.code,
        severity: question.severity,
        question: question.text,
        state: 'open',
        revision: job.revision,
      },
      { kind: 'ticket.opened', data: { ticket: number, question: question.key } },
    );
  }

  private async see(
    tx: Transaction,
    job: AskingJob,
    row: TicketRow,
    question: Question,
    reopened: { state?: 'open'; assignee_id?: null } = {},
  ): Promise<void> {
    await tx.update(
      'tickets',
      row.id,
      null,
      { revision: job.revision, severity: question.severity, question: question.text, ...reopened },
      { kind: reopened.state ? 'ticket.reopened' : 'ticket.kept', data: { ticket: row.number, revision: job.revision } },
    );
  }

  private async note(tx: Transaction, row: TicketRow, kind: MessageKind, body: string): Promise<void> {
    await tx.insert(
      'ticket_messages',
      {
        organisation_id: row.organisation_id,
        ticket_id: row.id,
        author_id: null,
        author_name: 'Wallcourse',
        author_role: 'system',
        kind,
        body,
      },
      { kind: 'ticket.message-added', data: { ticket: row.number, message: kind } },
    );
  }
}

function isAnswered(messages: readonly MessageRow[]): boolean {
  const kinds = messages.map(({ kind }) => kind).filter((kind) => kind === 'answer' || kind === 'opened');
  return kinds.at(-1) === 'answer';
}
