export const QUOTE_STATES = ['draft', 'issued', 'accepted', 'declined', 'expired', 'withdrawn', 'superseded'] as const;
export type QuoteState = (typeof QUOTE_STATES)[number];

/** `expire`: its last day has passed. `supersede`: a later revision of it is issued. */
export type QuoteMove = 'issue' | 'accept' | 'decline' | 'withdraw' | 'expire' | 'supersede';

/**
 * From which state a move leads to which; a move that a state does not list is refused.
 *
 * Accepted, withdrawn and superseded quotes are settled for good. A declined or expired one, or a draft that was left, can still be
 * followed by a revision.
 */
export const QUOTE_MOVES: Readonly<Record<QuoteMove, Readonly<Partial<Record<QuoteState, QuoteState>>>>> = {
  issue: { draft: 'issued' },
  accept: { issued: 'accepted' },
  decline: { issued: 'declined' },
  withdraw: { draft: 'withdrawn', issued: 'withdrawn' },
  expire: { issued: 'expired' },
  supersede: { draft: 'superseded', issued: 'superseded', declined: 'superseded', expired: 'superseded' },
};

/** The state after the move, null where the move is not possible. */
export const afterQuoteMove = (state: QuoteState, move: QuoteMove): QuoteState | null => QUOTE_MOVES[move][state] ?? null;

/** The moves that a state allows. */
export const possibleQuoteMoves = (state: QuoteState): readonly QuoteMove[] =>
  (Object.keys(QUOTE_MOVES) as QuoteMove[]).filter((move) => QUOTE_MOVES[move][state] !== undefined);
