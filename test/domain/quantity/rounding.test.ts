import { describe, expect, it } from '@jest/globals';
import { partsToCover, upToMultiple } from '../../../src/domain/quantity/rounding.js';

describe('whole parts that cover an amount', () => {
  it.each([
    { amount: 0, part: 12, parts: 0, multiple: 0 },
    { amount: 1, part: 12, parts: 1, multiple: 12 },
    { amount: 12, part: 12, parts: 1, multiple: 12 },
    { amount: 13, part: 12, parts: 2, multiple: 24 },
    { amount: 9_007_199_254_740_990, part: 1, parts: 9_007_199_254_740_990, multiple: 9_007_199_254_740_990 },
    { amount: 4_503_599_627_370_497, part: 2, parts: 2_251_799_813_685_249, multiple: 4_503_599_627_370_498 },
  ])('$amount by $part: $parts', ({ amount, part, parts, multiple }) => {
    expect(partsToCover(amount, part)).toBe(parts);
    expect(upToMultiple(amount, part)).toBe(multiple);
  });

  it.each([
    [-1, 2], [1, 0], [1, -1], [0.5, 1], [1, 0.5], [Number.NaN, 1], [2 ** 53, 1], [Number.POSITIVE_INFINITY, 1],
  ])('refuses %p by %p', (amount, part) => expect(() => partsToCover(amount, part)).toThrow(RangeError));
});
