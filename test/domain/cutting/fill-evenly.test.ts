import { describe, expect, it } from '@jest/globals';
import { fillEvenly } from '../../../src/domain/cutting/fill-evenly.js';
import { seededRandom } from '../../support/seeded-random.js';

describe('stock lengths filled evenly', () => {
  it('lays every part once or hands it back, fills without waste, and leaves few', () => {
    const random = seededRandom(31);
    const sizes = [...new Set(Array.from({ length: 4_000 }, () => random.whole(110_000, 300_000)))].sort((a, b) => b - a).map((size) => ({ size, count: random.whole(1, 2) }));
    const capacity = 1_000_000;
    const total = sizes.reduce((sum, { size, count }) => sum + size * count, 0);
    const bound = Math.ceil(total / capacity);
    const { packing, rest } = fillEvenly(sizes, capacity, bound);
    const counts = new Map(rest.map(({ size, count }) => [size, count]));
    let wasted = 0;
    for (const { sizes: laid } of packing) {
      const used = laid.reduce((sum, size) => sum + size, 0);
      expect(used).toBeLessThanOrEqual(capacity);
      wasted += capacity - used;
      for (const size of laid) counts.set(size, (counts.get(size) ?? 0) + 1);
    }
    expect([...counts].sort((a, b) => b[0] - a[0])).toEqual(sizes.map(({ size, count }) => [size, count]));
    expect(wasted).toBeLessThan(0.3 * capacity);
    expect(rest.reduce((sum, { count }) => sum + count, 0)).toBeLessThanOrEqual(200);
  });

  it('hands all back where nothing fills: 31s of 48', () => {
    expect(fillEvenly([{ size: 31, count: 500 }], 48, 500)).toEqual({ packing: [], rest: [{ size: 31, count: 500 }] });
  });
});
