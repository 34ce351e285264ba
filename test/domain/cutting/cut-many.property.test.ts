import { describe, expect, it } from '@jest/globals';
import { cutStock, USUAL_EFFORT, type CutOrder, type CutPlan } from '../../../src/domain/cutting/index.js';
import { inches } from '../../../src/domain/quantity/length.js';
import { seededRandom, type SeededRandom } from '../../support/seeded-random.js';

const items = (lengths: readonly number[]) => lengths.map((length, index) => ({ id: `p${index}`, length }));

/** Every part once, none over the end of its stock, the cuts between them counted, nothing lost: said the long way. */
function expectLegal({ stock, kerf, items: wanted, minOffcut }: CutOrder, plan: CutPlan): void {
  const seen = new Map(wanted.map(({ id, length }) => [id, length]));
  let usable = 0;
  for (const bin of plan.bins) {
    let end = -kerf;
    for (const { id, length, offset } of bin.items) {
      if (seen.get(id) !== length || offset < end + kerf) throw new Error(`${id} is laid twice, changed or over its neighbour`);
      seen.delete(id);
      end = offset + length;
    }
    if (end > stock || bin.offcut !== Math.max(0, stock - end - kerf)) throw new Error('over the end, or an offcut that is not what is left');
    if (minOffcut !== undefined && bin.offcut >= minOffcut) usable += bin.offcut;
  }
  expect(seen.size).toBe(0);
  expect(plan.usable).toBe(usable);
  expect(plan.waste + plan.usable + wanted.reduce((sum, { length }) => sum + length, 0)).toBe(plan.bins.length * stock);
  expect(plan.bins.length).toBeGreaterThanOrEqual(plan.lowerBound);
}

/** Pieces of a storey: pieces cut on the inch module, or to any nanometre where a seam or a jamb takes the remainder. */
const forms = (random: SeededRandom, count: number, cuts: readonly number[]): CutOrder => ({
  stock: inches(48),
  kerf: random.pick([0, inches(0.125)]),
  minOffcut: inches(8),
  items: items(Array.from({ length: count }, () => (random.chance(0.3) ? inches(48) : random.pick(cuts)))),
});

describe('forms of a storey', () => {
  it('on an inch module: at the bound or one more in 60 orders of 50 to 1,500 pieces', () => {
    const random = seededRandom(77);
    for (let round = 0; round < 60; round++) {
      const cuts = Array.from({ length: random.whole(2, 30) }, () => inches(random.whole(8, 47)));
      const order = forms(random, random.whole(50, 1500), cuts);
      const plan = cutStock(order);
      expectLegal(order, plan);
      expect(plan.bins.length - plan.lowerBound).toBeLessThanOrEqual(1);
    }
  });

  it('of any length: at the bound or one more in 40 orders of 50 to 1,500 pieces of up to 60 lengths', () => {
    const random = seededRandom(78);
    for (let round = 0; round < 40; round++) {
      const cuts = Array.from({ length: random.whole(2, 60) }, () => random.whole(inches(8), inches(47)));
      const order = forms(random, random.whole(50, 1500), cuts);
      const plan = cutStock(order);
      expectLegal(order, plan);
      expect(plan.bins.length - plan.lowerBound).toBeLessThanOrEqual(1);
    }
  });

  it.each([40, 100, 200])('18,000 pieces of %d lengths to the nanometre: at the bound or one more', (lengths) => {
    const random = seededRandom(lengths);
    const cuts = Array.from({ length: lengths }, () => random.whole(inches(8), inches(47)));
    const order = { stock: 1_219_200_000, kerf: 0, items: items(Array.from({ length: 18_000 }, () => random.pick(cuts))) };
    const plan = cutStock(order);
    expectLegal(order, plan);
    expect(plan.bins.length - plan.lowerBound).toBeLessThanOrEqual(1);
  });

  it('10,000 pieces all of different lengths: legal, and near the bound', () => {
    const random = seededRandom(12);
    const order = { stock: inches(48), kerf: 0, items: items(Array.from({ length: 10_000 }, () => random.whole(inches(8), inches(48)))) };
    const plan = cutStock(order);
    expectLegal(order, plan);
    expect(plan.bins.length - plan.lowerBound).toBeLessThanOrEqual(2);
  });
});

describe('triplets with a known optimum', () => {
  /** Three parts that fill a stock length exactly, so that no waste is allowed: the class t of Falkenauer 1996, J. Heuristics 2, 5–30. */
  it.each([20, 40, 83])('%d triplets: the bound is the optimum, the plan at most one more', (triplets) => {
    const random = seededRandom(triplets);
    for (let round = 0; round < 3; round++) {
      const lengths = Array.from({ length: triplets }, () => {
        const first = random.whole(380, 490);
        const second = random.whole(250, Math.floor((1000 - first) / 2));
        return [first, second, 1000 - first - second];
      }).flat();
      const plan = cutStock({ stock: 1000, kerf: 0, items: items(lengths) });
      expect(plan.lowerBound).toBe(triplets);
      expect(plan.bins.length).toBeLessThanOrEqual(triplets + 1);
    }
  });
});

describe('how hard it looks', () => {
  const random = seededRandom(5);
  const cuts = Array.from({ length: 60 }, () => random.whole(inches(11), inches(20)));
  const order: CutOrder = { stock: inches(48), kerf: inches(0.125), minOffcut: inches(8), items: items(Array.from({ length: 3_000 }, () => random.pick(cuts))) };

  it('with no steps, or with no time, the constructive plan is whole and its bound holds', () => {
    const none = cutStock(order, { steps: 0 });
    expectLegal(order, none);
    const late = cutStock(order, { ...USUAL_EFFORT, outOfTime: () => true });
    expect(late).toEqual(none);
    const usual = cutStock(order);
    expectLegal(order, usual);
    expect(usual.bins.length).toBeLessThan(none.bins.length);
    expect(usual.lowerBound).toBeGreaterThanOrEqual(none.lowerBound);
    expect(none.bins.length).toBeGreaterThanOrEqual(usual.lowerBound);
  });

  it('ends with a whole plan wherever time runs out, and says the same for the same effort', () => {
    for (const asked of [1, 10, 100, 400]) {
      const late = () => {
        let left = asked;
        return cutStock(order, { ...USUAL_EFFORT, outOfTime: () => left-- <= 0 });
      };
      expectLegal(order, late());
      expect(late()).toEqual(late());
    }
    expect(cutStock(order, { steps: 2_000_000 })).toEqual(cutStock(order, { steps: 2_000_000 }));
  });
});
