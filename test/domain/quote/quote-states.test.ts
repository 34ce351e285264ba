import { describe, expect, it } from '@jest/globals';
import { afterQuoteMove, type QuoteMove, type QuoteState } from '../../../src/domain/quote/quote-states.js';

const states: readonly QuoteState[] = ['draft', 'issued', 'accepted', 'declined', 'withdrawn'];
const possible: Readonly<Record<QuoteMove, Readonly<Record<string, QuoteState>>>> = {
  issue: { draft: 'issued' },
  accept: { issued: 'accepted' },
  decline: { issued: 'declined' },
  withdraw: { draft: 'withdrawn', issued: 'withdrawn' },
};

describe('quote states', () => {
  it.each(states.flatMap((state) => (Object.keys(possible) as QuoteMove[]).map((move) => ({ state, move }))))('$state + $move', ({ state, move }) => {
    expect(afterQuoteMove(state, move)).toBe(possible[move][state] ?? null);
  });
});
