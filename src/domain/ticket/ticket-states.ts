import type { Severity } from '../evidence/finding.js';

export type TicketState = 'open' | 'claimed' | 'answered' | 'closed';

/**
 * What happens to a ticket. `answer` is the desk's reply, `comment` anybody else's; `settle` and `return` are said by a new run of
 * the job: the cause of the question is gone, or stands somewhere the answer did not reach.
 */
export type TicketMove = 'claim' | 'answer' | 'comment' | 'close' | 'reopen' | 'settle' | 'return';

/** From which state a move leads to which; a move that a state does not list is refused. An unanswered question cannot be closed by hand. */
export const TICKET_MOVES: Readonly<Record<TicketMove, Readonly<Partial<Record<TicketState, TicketState>>>>> = {
  claim: { open: 'claimed' },
  answer: { open: 'answered', claimed: 'answered', answered: 'answered' },
  comment: { open: 'open', claimed: 'claimed', answered: 'answered' },
  close: { answered: 'closed' },
  reopen: { answered: 'open', closed: 'open' },
  settle: { open: 'closed', claimed: 'closed', answered: 'closed' },
  return: { answered: 'open', closed: 'open' },
};

/** The state after the move, null where the move is not possible. */
export const afterTicketMove = (state: TicketState, move: TicketMove): TicketState | null => TICKET_MOVES[move][state] ?? null;

/** True where the ticket keeps a quote from being accepted. */
export const holdsQuote = (ticket: { readonly severity: Severity; readonly state: TicketState }): boolean =>
  ticket.severity === 'hold' && (ticket.state === 'open' || ticket.state === 'claimed');
