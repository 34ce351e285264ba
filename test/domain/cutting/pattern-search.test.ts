import { describe, expect, it } from '@jest/globals';
import { Budget, USUAL_EFFORT } from '../../../src/domain/cutting/effort.js';
import { fillLargest } from '../../../src/domain/cutting/fill-largest.js';
import { firstFitDecreasing } from '../../../src/domain/cutting/first-fit-decreasing.js';
import { lowerBound } from '../../../src/domain/cutting/lower-bound.js';
import { stockLengths, type Packing, type SizeCount } from '../../../src/domain/cutting/packing.js';
import { patternSearch } from '../../../src/domain/cutting/pattern-search.js';
import { bruteForceBins } from '../../oracles/brute-force-bins.js';
import { seededRandom } from '../../support/seeded-random.js';

function expectWhole(packing: Packing, sizes: readonly SizeCount[], capacity: number): void {
  const laid = new Map<number, number>();
  for (const pattern of packing) {
    expect(pattern.sizes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(capacity);
    for (const size of pattern.sizes) laid.set(size, (laid.get(size) ?? 0) + pattern.times);
  }
  expect([...laid].sort((a, b) => b[0] - a[0])).toEqual(sizes.map(({ size, count }) => [size, count]));
}

function counted(lengths: readonly number[]): SizeCount[] {
  const counts = new Map<number, number>();
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].map(([size, count]) => ({ size, count })).sort((a, b) => b.size - a.size);
}

/** From first-fit-decreasing and no bound at all, so that the search does the work itself. */
function columnGeneration(sizes: readonly SizeCount[], capacity: number): { packing: Packing; bound: number } {
  return patternSearch(sizes, capacity, { packing: firstFitDecreasing(sizes, capacity), bound: 0 }, new Budget(USUAL_EFFORT));
}

describe('pattern search', () => {
  it('cuts 44 x 21, 60 x 14, 36 x 13 from no more of 48 than a plan made by hand', () => {
    const sizes = [{ size: 21, count: 44 }, { size: 14, count: 60 }, { size: 13, count: 36 }];
    const { packing, bound } = columnGeneration(sizes, 48);
    expectWhole(packing, sizes, 48);
    // By hand: 36 of 21 + 14 + 13, which fill 48; of the 8 x 21 and 24 x 14 left, 4 of 21 + 21 and 8 of 14 + 14 + 14.
    expect(stockLengths(packing)).toBeLessThanOrEqual(36 + 4 + 8);
    expect(bound).toBeGreaterThanOrEqual(Math.ceil((44 * 21 + 60 * 14 + 36 * 13) / 48));
    expect(bound).toBeLessThanOrEqual(stockLengths(packing));
  });

  it('its bound and its plan stand either side of the optimum of 300 small orders', () => {
    const random = seededRandom(90);
    for (let round = 0; round < 300; round++) {
      const capacity = random.pick([48, 100]);
      const lengths = Array.from({ length: random.whole(2, 9) }, () => random.whole(8, Math.floor(capacity * 0.6)));
      const sizes = counted(lengths);
      const { packing, bound } = columnGeneration(sizes, capacity);
      const optimum = bruteForceBins(lengths, capacity, 0);
      expectWhole(packing, sizes, capacity);
      expect(bound).toBeLessThanOrEqual(optimum);
      expect(bound).toBeGreaterThanOrEqual(optimum - 1);
      expect(stockLengths(packing)).toBe(optimum);
    }
  });

  it('is within one of its bound for 100 orders of 200 parts of few lengths', () => {
    const random = seededRandom(17);
    for (let round = 0; round < 100; round++) {
      const choices = Array.from({ length: random.whole(2, 9) }, () => random.whole(8, 40));
      const sizes = counted(Array.from({ length: 200 }, () => random.pick(choices)));
      const { packing, bound } = columnGeneration(sizes, 48);
      expectWhole(packing, sizes, 48);
      expect(stockLengths(packing)).toBeLessThanOrEqual(bound + 1);
      expect(bound).toBeGreaterThanOrEqual(lowerBound(sizes, 48) - 1);
    }
  });

  it('hands back what it was given where the budget is spent', () => {
    const sizes = [{ size: 31, count: 5 }, { size: 17, count: 9 }];
    const start = { packing: fillLargest(sizes, 48), bound: 1 };
    expect(patternSearch(sizes, 48, start, new Budget({ steps: 0 }))).toBe(start);
    expect(patternSearch(sizes, 48, start, new Budget({ ...USUAL_EFFORT, outOfTime: () => true }))).toBe(start);
  });
});
