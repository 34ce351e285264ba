import { findingAnswer } from '../takeoffs/takeoff-answer.js';
import { findingOf, type FindingRow } from '../takeoffs/findings.repository.js';
import type { MessageRow, TicketRow } from './tickets.repository.js';
import type { TicketAnswer } from './tickets.schemas.js';

export function ticketAnswer(row: TicketRow, findings: readonly FindingRow[], messages: readonly MessageRow[]): TicketAnswer {
  return {
    id: row.id,
    number: row.number,
    job: row.job_id,
    question: row.question,
    severity: row.severity === 'hold' ? 'hold' : 'advise',
    state: row.state,
    assignee: row.assignee_name,
    version: row.version,
    findings: findings.map((finding) => findingAnswer(findingOf(finding))),
    messages: messages.map(({ created_at: at, author_name: by, author_role: role, kind, body }) => ({
      at: new Date(at).toISOString(),
      by,
      role,
      kind,
      text: body,
    })),
  };
}
