export type QuoteState = 'draft' | 'issued' | 'accepted' | 'declined' | 'withdrawn';
export type QuoteMove = 'issue' | 'accept' | 'decline' | 'withdraw';

/** From which state a move leads to which; a move that a state does not list is refused. An accepted quote is settled for good. */
export const QUOTE_MOVES: Readonly<Record<QuoteMove, Readonly<Partial<Record<QuoteState, QuoteState>>>>> = {
  issue: { draft: 'issued' },
  accept: { issued: 'accepted' },
  decline: { issued: 'declined' },
  withdraw: { draft: 'withdrawn', issued: 'withdrawn' },
};

/** The state after the move, null where the move is not possible. */
export const afterQuoteMove = (state: QuoteState, move: QuoteMove): QuoteState | null => QUOTE_MOVES[move][state] ?? null;

/** The moves that a state allows. */
export const possibleQuoteMoves = (state: QuoteState): readonly QuoteMove[] =>
  (Object.keys(QUOTE_MOVES) as QuoteMove[]).filter((move) => QUOTE_MOVES[move][state] !== undefined);
