import type { Finding } from '../evidence/finding.js';
import type { Question } from './question.js';
import type { TicketState } from './ticket-states.js';

/** A ticket as it stands before a run's questions are laid against it. */
export interface StandingTicket {
  readonly id: string;
  readonly questionKey: string;
  readonly state: TicketState;
  /** The desk has answered since the question was last opened. */
  readonly answered: boolean;
  /** Findings of the question when it was last seen. */
  readonly findings: readonly Pick<Finding, 'storey' | 'wall'>[];
}

/** What a run's questions mean for the tickets of its job. */
export interface TicketPlan {
  /** Questions nobody has asked in this job. */
  readonly raise: readonly Question[];
  /** Same question, same ticket, same state; its findings are those of the new run. */
  readonly keep: readonly { readonly id: string; readonly question: Question }[];
  /** Closed without an answer and back, or answered and now at a wall that the answer did not reach. */
  readonly reopen: readonly { readonly id: string; readonly question: Question; readonly because: 'cause-returned' | 'new-place' }[];
  /** Their cause is gone. */
  readonly settle: readonly string[];
}

const placeOf = (finding: Pick<Finding, 'storey' | 'wall'>): string => JSON.stringify([finding.storey, finding.wall]);

/**
 * Lays the questions of a run against the tickets of the job: one ticket per question, kept as long as its question is asked.
 *
 * An answer reaches the walls that it was given for. A question that a run finds at a further wall is therefore open again.
 */
export function ticketPlan(standing: readonly StandingTicket[], questions: readonly Question[]): TicketPlan {
  const byKey = new Map(standing.map((ticket) => [ticket.questionKey, ticket]));
  const asked = new Set(questions.map(({ key }) => key));
  const plan = { raise: [] as Question[], keep: [] as TicketPlan['keep'][number][], reopen: [] as TicketPlan['reopen'][number][] };
  for (const question of questions) {
    const ticket = byKey.get(question.key);
    const because = ticket ? reopenedBecause(ticket, question) : null;
    if (!ticket) plan.raise.push(question);
    else if (because) plan.reopen.push({ id: ticket.id, question, because });
    else plan.keep.push({ id: ticket.id, question });
  }
  return { ...plan, settle: standing.filter(({ state, questionKey }) => state !== 'closed' && !asked.has(questionKey)).map(({ id }) => id) };
}

function reopenedBecause(ticket: StandingTicket, question: Question): 'cause-returned' | 'new-place' | null {
  if (ticket.state === 'open' || ticket.state === 'claimed') return null;
  if (!ticket.answered) return 'cause-returned';
  return reachesFurther(ticket, question) ? 'new-place' : null;
}

function reachesFurther(ticket: StandingTicket, question: Question): boolean {
  const known = new Set(ticket.findings.map(placeOf));
  return question.findings.some((found) => !known.has(placeOf(found)));
}
