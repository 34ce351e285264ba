import { describe, expect, it } from '@jest/globals';
import { cutStock } from '../../src/domain/cutting/index.js';
import { inches } from '../../src/domain/quantity/length.js';

const items = (rows: readonly (readonly [length: number, count: number])[]) =>
  rows.flatMap(([length, count], row) => Array.from({ length: count }, (_, n) => ({ id: `${row}-${n}`, length })));

describe('published cutting orders with a proven optimum', () => {
  const orders: readonly { name: string; stock: number; rows: readonly (readonly [number, number])[]; optimum: number }[] = [
    /**
     * Raw rolls of 100; the optimum of the programme is 452.25. Source: the roll cutting example of Gilmore & Gomory in Chvátal
     * 1983, Linear Programming, ch. 13, data as in the GAMS model library (cutstock). Proven: patterns (45 36 14) x 97,
     * (36 36 14 14) x 158 and (36 31 31) x 198 are 453 rolls.
     */
    { name: 'rolls of 100', stock: 100, rows: [[45, 97], [36, 610], [31, 395], [14, 211]], optimum: 453 },
    /** Source: the cutting stock problem of the article of that name in Wikipedia, 5600 mm master rolls, optimum 73; from memory. */
    {
      name: 'master rolls of 5600 mm',
      stock: 5600,
      rows: [[1380, 22], [1520, 25], [1560, 12], [1710, 14], [1820, 18], [1880, 18], [1930, 20], [2000, 10], [2050, 12], [2100, 14], [2140, 16], [2150, 18], [2200, 20]],
      optimum: 73,
    },
  ];

  it.each(orders)('$name: $optimum', ({ stock, rows, optimum }) => {
    const plan = cutStock({ stock, kerf: 0, items: items(rows) });
    expect(plan.bins).toHaveLength(optimum);
    expect(plan.lowerBound).toBe(optimum);
  });

  it('the same rolls in inches, with a kerf that the stock and every part give up: still 453', () => {
    const kerf = inches(0.25);
    const rows = [[45, 97], [36, 610], [31, 395], [14, 211]] as const;
    const plan = cutStock({ stock: inches(100) - kerf, kerf, items: items(rows.map(([length, count]) => [inches(length) - kerf, count])) });
    expect([plan.bins.length, plan.lowerBound]).toEqual([453, 453]);
  });
});
