import { describe, expect, it } from '@jest/globals';
import { PatternMaster } from '../../../src/domain/cutting/pattern-master.js';

const sizes = [{ size: 31, count: 4 }, { size: 17, count: 4 }];

describe('pattern master', () => {
  it('starts with one size to a pattern and takes in a better one, by hand: 4 x 31 and 4 x 17 of 48', () => {
    const master = new PatternMaster(sizes, 48);
    expect([...master.values]).toEqual([1, 0.5]);
    expect(master.solution()).toEqual([
      { column: { rows: [0], counts: [1] }, amount: 4 },
      { column: { rows: [1], counts: [2] }, amount: 2 },
    ]);
    expect(master.bought).toBe(6);
    expect(master.enter({ rows: [0, 1], counts: [1, 1] })).toBe(true);
    expect(master.bought).toBe(4);
    expect(master.solution()).toEqual([{ column: { rows: [0, 1], counts: [1, 1] }, amount: 4 }]);
  });

  it('refuses a pattern that is worth no more than it costs', () => {
    expect(new PatternMaster(sizes, 48).enter({ rows: [1], counts: [1] })).toBe(false);
  });

  it('is put right for a lower demand by the patterns it knows: 4 x 31 and 1 x 17 still cost 4, 1 x 31 and 4 x 17 cost 2 1/2', () => {
    for (const { demand, cost } of [{ demand: [4, 1], cost: 4 }, { demand: [1, 4], cost: 2.5 }, { demand: [0, 4], cost: 2 }, { demand: [0, 0], cost: 0 }]) {
      const master = new PatternMaster(sizes, 48);
      master.enter({ rows: [0, 1], counts: [1, 1] });
      expect(master.lower(demand, 20)).toBeGreaterThanOrEqual(0);
      expect(master.bought).toBeCloseTo(cost, 9);
      for (const { amount } of master.solution()) expect(amount).toBeGreaterThan(0);
    }
  });
});
