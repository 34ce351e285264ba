import { describe, expect, it } from '@jest/globals';
import { cutStock, stockPieces, stockPiecesWithin } from '../../../src/domain/cutting/index.js';
import { seededRandom } from '../../support/seeded-random.js';

const ORDERS = 300;

/** Orders of every mix: few lengths often, many once, halves that fit in pairs, whole stock lengths among them. */
function order(seed: number): { stock: number; kerf: number; lengths: Map<number, number> } {
  const random = seededRandom(seed);
  const stock = random.pick([48, 96, 1_000]);
  const lengths = new Map<number, number>();
  for (let size = random.whole(1, 14); size > 0; size--) lengths.set(random.whole(Math.ceil(stock / 6), stock), random.whole(1, 12));
  return { stock, kerf: random.pick([0, 0, 1]), lengths };
}

describe('counting stock pieces without a plan', () => {
  it(`tells the number cutStock cuts, and bounds round it, on ${ORDERS} orders`, () => {
    const told = Array.from({ length: ORDERS }, (_, seed) => {
      const { stock, kerf, lengths } = order(seed);
      const items = [...lengths].flatMap(([length, count]) => Array.from({ length: count }, (__, index) => ({ id: `${length}/${index}`, length })));
      const cut = cutStock({ stock, kerf, items }).bins.length;
      const { least, most } = stockPiecesWithin({ stock, kerf }, lengths);
      return { cut, counted: stockPieces({ stock, kerf }, lengths), bounded: least <= cut && cut <= most };
    });
    expect(told.filter(({ cut, counted, bounded }) => cut !== counted || !bounded)).toEqual([]);
  });

  it('needs one for each whole length and none for nothing', () => {
    expect(stockPieces({ stock: 48, kerf: 0 }, new Map([[48, 5]]))).toBe(5);
    expect(stockPieces({ stock: 48, kerf: 0 }, new Map())).toBe(0);
    expect(stockPieces({ stock: 48, kerf: 0 }, new Map([[24, 3], [48, 1]]))).toBe(3);
  });
});
