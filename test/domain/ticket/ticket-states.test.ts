import { describe, expect, it } from '@jest/globals';
import { afterTicketMove, holdsQuote, type TicketMove, type TicketState } from '../../../src/domain/ticket/ticket-states.js';

const table: readonly { state: TicketState; move: TicketMove; then: TicketState | null }[] = [
  { state: 'open', move: 'claim', then: 'claimed' },
  { state: 'claimed', move: 'claim', then: null },
  { state: 'answered', move: 'claim', then: null },
  { state: 'closed', move: 'claim', then: null },
  { state: 'open', move: 'answer', then: 'answered' },
  { state: 'claimed', move: 'answer', then: 'answered' },
  { state: 'closed', move: 'answer', then: null },
  { state: 'claimed', move: 'comment', then: 'claimed' },
  { state: 'closed', move: 'comment', then: null },
  { state: 'open', move: 'close', then: null },
  { state: 'claimed', move: 'close', then: null },
  { state: 'answered', move: 'close', then: 'closed' },
  { state: 'answered', move: 'reopen', then: 'open' },
  { state: 'closed', move: 'reopen', then: 'open' },
  { state: 'open', move: 'reopen', then: null },
  { state: 'claimed', move: 'settle', then: 'closed' },
];

describe('ticket states', () => {
  it.each(table)('$state + $move = $then', ({ state, move, then }) => {
    expect(afterTicketMove(state, move)).toBe(then);
  });

  it.each([
    { severity: 'hold', state: 'open', holds: true },
    { severity: 'hold', state: 'claimed', holds: true },
    { severity: 'hold', state: 'answered', holds: false },
    { severity: 'hold', state: 'closed', holds: false },
    { severity: 'advise', state: 'open', holds: false },
  ] as const)('a ticket that is $severity and $state holds the quote: $holds', ({ severity, state, holds }) => {
    expect(holdsQuote({ severity, state })).toBe(holds);
  });
});
