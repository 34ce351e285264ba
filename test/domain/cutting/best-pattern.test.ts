import { describe, expect, it } from '@jest/globals';
import { bestPattern } from '../../../src/domain/cutting/best-pattern.js';
import { seededRandom } from '../../support/seeded-random.js';

const LIMITS = { gain: 0.5, branches: 100_000 };

/** Every filling there is. */
function bestByTrying(sizes: readonly { size: number; count: number }[], values: readonly number[], room: number, from = 0): number {
  let best = 0;
  for (let index = from; index < sizes.length; index++) {
    const { size, count } = sizes[index]!;
    for (let take = 1; take <= count && take * size <= room; take++) {
      best = Math.max(best, take * values[index]! + bestByTrying(sizes, values, room - take * size, index + 1));
    }
  }
  return best;
}

describe('best pattern', () => {
  it('fills 48 by hand: two 17s at 5 beat 31 + 17 at 9', () => {
    const sizes = [{ size: 31, count: 3 }, { size: 17, count: 3 }];
    expect(bestPattern(sizes, [4, 5], 48, LIMITS)).toMatchObject({ counts: [0, 2], value: 10, proven: true });
    expect(bestPattern(sizes, [4, 5], 31, LIMITS)).toMatchObject({ counts: [0, 1], value: 5 });
    expect(bestPattern(sizes, [4, 0], 48, LIMITS)).toMatchObject({ counts: [1, 0], value: 4 });
  });

  it('finds the value that trying everything finds, in 500 random cases', () => {
    const random = seededRandom(41);
    for (let round = 0; round < 500; round++) {
      const sizes = Array.from({ length: random.whole(1, 6) }, () => ({ size: random.whole(5, 40), count: random.whole(1, 4) }));
      const values = sizes.map(() => random.whole(0, 30));
      const room = random.whole(5, 100);
      const found = bestPattern(sizes, values, room, LIMITS);
      expect(found.proven).toBe(true);
      expect(found.value).toBe(bestByTrying(sizes, values, room));
      expect(found.counts.reduce((sum, count, index) => sum + count * sizes[index]!.size, 0)).toBeLessThanOrEqual(room);
      expect(found.counts.reduce((sum, count, index) => sum + count * values[index]!, 0)).toBe(found.value);
      found.counts.forEach((count, index) => expect(count).toBeLessThanOrEqual(sizes[index]!.count));
    }
  });

  it('says so where the branches ran out', () => {
    const sizes = Array.from({ length: 30 }, (_, index) => ({ size: 1000 + index * 7, count: 9 }));
    expect(bestPattern(sizes, sizes.map(({ size }) => size), 20_011, { gain: 0.5, branches: 10 }).proven).toBe(false);
  });
});
