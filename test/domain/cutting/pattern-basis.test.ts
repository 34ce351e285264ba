import { describe, expect, it } from '@jest/globals';
import { PatternBasis } from '../../../src/domain/cutting/pattern-basis.js';

describe('pattern basis', () => {
  it('starts with one size to a pattern and takes in a better one, by hand: 4 x 31 and 4 x 17 of 48', () => {
    const basis = new PatternBasis([{ size: 31, count: 4 }, { size: 17, count: 4 }], 48);
    expect(basis.values()).toEqual([1, 0.5]);
    expect(basis.solution()).toEqual([{ pattern: [1, 0], amount: 4 }, { pattern: [0, 2], amount: 2 }]);
    expect(basis.enter([1, 1])).toBe(true);
    expect(basis.solution().reduce((sum, { amount }) => sum + amount, 0)).toBe(4);
    expect(basis.solution().filter(({ amount }) => amount > 0)).toEqual([{ pattern: [1, 1], amount: 4 }]);
  });

  it('refuses a pattern that nothing limits', () => {
    expect(new PatternBasis([{ size: 20, count: 4 }], 48).enter([0])).toBe(false);
  });
});
