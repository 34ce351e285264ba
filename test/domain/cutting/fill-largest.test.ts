import { describe, expect, it } from '@jest/globals';
import { fillLargest } from '../../../src/domain/cutting/fill-largest.js';
import { stockLengths } from '../../../src/domain/cutting/packing.js';

describe('largest first, remainder filled', () => {
  it('fills beside the largest what first fit would spend elsewhere: 15 6 5 5 5 4 of 20 by hand', () => {
    expect(fillLargest([{ size: 15, count: 1 }, { size: 6, count: 1 }, { size: 5, count: 3 }, { size: 4, count: 1 }], 20)).toEqual([
      { sizes: [15, 5], times: 1 },
      { sizes: [6, 5, 5, 4], times: 1 },
    ]);
  });

  it('repeats a filling while the parts for it last', () => {
    expect(fillLargest([{ size: 31, count: 5 }, { size: 17, count: 3 }], 48)).toEqual([
      { sizes: [31, 17], times: 3 },
      { sizes: [31], times: 2 },
    ]);
  });

  it('takes no more of a size than there are: two 10s and a 7 beside 20 of 50', () => {
    expect(fillLargest([{ size: 20, count: 1 }, { size: 10, count: 2 }, { size: 7, count: 1 }], 50)).toEqual([
      { sizes: [20, 10, 10, 7], times: 1 },
    ]);
  });

  it('ends with first-fit-decreasing where the sums would cost too many steps, every part laid once', () => {
    const sizes = Array.from({ length: 20_000 }, (_, index) => ({ size: 999_983 - index * 37, count: 1 }));
    const packing = fillLargest(sizes, 1_000_000);
    const laid = packing.flatMap((pattern) => pattern.sizes).sort((a, b) => b - a);
    expect(laid).toEqual(sizes.map(({ size }) => size));
    expect(stockLengths(packing)).toBeLessThanOrEqual(20_000);
  });
});
