import { describe, expect, it } from '@jest/globals';
import { lowerBound } from '../../../src/domain/cutting/lower-bound.js';

const counted = (sizes: Readonly<Record<number, number>>) =>
  Object.entries(sizes).map(([size, count]) => ({ size: Number(size), count })).sort((a, b) => b.size - a.size);

describe('lower bound of stock lengths', () => {
  const cases: readonly { name: string; capacity: number; sizes: Record<number, number>; bound: number }[] = [
    { name: 'nothing', capacity: 48, sizes: {}, bound: 0 },
    { name: 'material alone: 10 x 12 of 48', capacity: 48, sizes: { 12: 10 }, bound: 3 },
    { name: 'L2: three over half and one that fits beside none', capacity: 10, sizes: { 7: 3, 4: 1 }, bound: 4 },
    { name: 'u(2): more than a third goes two to a stock length', capacity: 48, sizes: { 17: 9 }, bound: 5 },
    { name: 'u(3): more than a quarter goes three to a stock length', capacity: 48, sizes: { 13: 10 }, bound: 4 },
    { name: 'u(5): more than a sixth goes five to a stock length', capacity: 48, sizes: { 9: 11 }, bound: 3 },
    { name: 'half exactly goes two to a stock length, one more needs another', capacity: 48, sizes: { 24: 5 }, bound: 3 },
    { name: 'phi(16): 31 leaves room for one 16, three of which fill 48', capacity: 48, sizes: { 31: 4, 16: 5 }, bound: 5 },
    { name: 'the whole length', capacity: 48, sizes: { 48: 6 }, bound: 6 },
  ];
  it.each(cases)('$name', ({ capacity, sizes, bound }) => {
    expect(lowerBound(counted(sizes), capacity)).toBe(bound);
  });

  it('does not overshoot where quotients are not exact in a double: 3 x 0.1 of 0.3', () => {
    expect(lowerBound([{ size: 100_000_000_001, count: 3 }], 300_000_000_003)).toBe(1);
    expect(lowerBound([{ size: 100_000_000_001, count: 3 }], 300_000_000_002)).toBe(2);
  });
});
