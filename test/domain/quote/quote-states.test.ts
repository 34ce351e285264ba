import { describe, expect, it } from '@jest/globals';
import { afterQuoteMove, possibleQuoteMoves, QUOTE_STATES, type QuoteMove, type QuoteState } from '../../../src/domain/quote/quote-states.js';

/** Written state by state, where the program has it move by move. */
const LIFE: Readonly<Record<QuoteState, Readonly<Partial<Record<QuoteMove, QuoteState>>>>> = {
  draft: { issue: 'issued', withdraw: 'withdrawn', supersede: 'superseded' },
  issued: { accept: 'accepted', decline: 'declined', withdraw: 'withdrawn', expire: 'expired', supersede: 'superseded' },
  accepted: {},
  declined: { supersede: 'superseded' },
  expired: { supersede: 'superseded' },
  withdrawn: {},
  superseded: {},
};
const MOVES: readonly QuoteMove[] = ['issue', 'accept', 'decline', 'withdraw', 'expire', 'supersede'];

describe('quote states', () => {
  it('are the seven of the life', () => expect([...QUOTE_STATES].sort()).toEqual(Object.keys(LIFE).sort()));

  it.each(QUOTE_STATES.flatMap((state) => MOVES.map((move) => ({ state, move }))))('$state + $move', ({ state, move }) => {
    expect(afterQuoteMove(state, move)).toBe(LIFE[state][move] ?? null);
  });

  it.each(QUOTE_STATES)('%s says what it can do', (state) => expect([...possibleQuoteMoves(state)].sort()).toEqual(Object.keys(LIFE[state]).sort()));
});
