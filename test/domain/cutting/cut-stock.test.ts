import { describe, expect, it } from '@jest/globals';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { cutStock, type CutOrder, type CutPlan } from '../../../src/domain/cutting/index.js';
import { inches } from '../../../src/domain/quantity/length.js';
import { bruteForceBins } from '../../oracles/brute-force-bins.js';
import { seededRandom } from '../../support/seeded-random.js';

const items = (lengths: readonly number[]) => lengths.map((length, index) => ({ id: `p${index}`, length }));
const repeat = (length: number, times: number): number[] => Array.from({ length: times }, () => length);

/** Every part once, in its place, cuts between, offcut the rest: said the long way. */
function expectLegal(order: CutOrder, plan: CutPlan): void {
  const ids: string[] = [];
  for (const bin of plan.bins) {
    expect(bin.items.length).toBeGreaterThan(0);
    let at = 0;
    for (const { id, length, offset } of bin.items) {
      expect(offset).toBe(at);
      expect(offset + length).toBeLessThanOrEqual(order.stock);
      ids.push(id);
      at = offset + length + order.kerf;
    }
    expect(bin.offcut).toBe(Math.max(0, order.stock - at));
  }
  expect([...ids].sort()).toEqual(order.items.map(({ id }) => id).sort());
  const lengthOf = new Map(order.items.map(({ id, length }) => [id, length]));
  for (const { id, length } of plan.bins.flatMap((bin) => bin.items)) expect(length).toBe(lengthOf.get(id));
}

describe('cutting by hand', () => {
  const cases: readonly { name: string; stock: number; kerf?: number; lengths: number[]; bins: number; bound: number }[] = [
    { name: 'thirty halves are fifteen forms', stock: 48, lengths: repeat(24, 30), bins: 15, bound: 15 },
    { name: 'seventeens from 48 go two to a form, which L1 would not know', stock: 48, lengths: repeat(17, 10), bins: 5, bound: 5 },
    { name: 'whole forms go one to a form', stock: 48, lengths: repeat(48, 7), bins: 7, bound: 7 },
    { name: 'nothing needs nothing', stock: 48, lengths: [], bins: 0, bound: 0 },
    { name: 'thirds with no kerf', stock: 48, lengths: repeat(16, 6), bins: 2, bound: 2 },
    { name: 'thirds with a kerf of 1 go two to a form', stock: 48, kerf: 1, lengths: repeat(16, 6), bins: 3, bound: 3 },
    { name: 'a part that ends at the stock end needs no cut', stock: 49, kerf: 1, lengths: repeat(24, 4), bins: 2, bound: 2 },
    { name: 'one part over half each', stock: 48, lengths: [25, 26, 27, 28], bins: 4, bound: 4 },
    { name: 'largest first leaves what fills: 30+18, 26+22, not 30+18+...', stock: 48, lengths: [30, 26, 22, 18], bins: 2, bound: 2 },
    { name: 'where first fit decreasing loses one (Martello & Toth show the like): 3 sizes', stock: 30, lengths: [15, 15, 10, 10, 10, 6, 6, 6, 6, 6], bins: 3, bound: 3 },
  ];
  it.each(cases)('$name', ({ stock, kerf = 0, lengths, bins, bound }) => {
    const order = { stock: inches(stock), kerf: inches(kerf), items: items(lengths.map(inches)) };
    const plan = cutStock(order);
    expectLegal(order, plan);
    expect(plan.bins).toHaveLength(bins);
    expect(plan.lowerBound).toBe(bound);
  });

  it('gives offsets and the offcut after the last cut', () => {
    const plan = cutStock({ stock: 1000, kerf: 5, items: items([300, 400]) });
    expect(plan.bins).toEqual([
      { items: [{ id: 'p1', length: 400, offset: 0 }, { id: 'p0', length: 300, offset: 405 }], offcut: 290 },
    ]);
  });

  it('has no offcut when the last part stops short of the end by less than a cut', () => {
    expect(cutStock({ stock: 1000, kerf: 5, items: items([500, 493]) }).bins[0]!.offcut).toBe(0);
  });

  it('gives equal lengths their ids in the order in which they came', () => {
    const plan = cutStock({ stock: 48, kerf: 0, items: [...items(repeat(24, 4))] });
    expect(plan.bins.map((bin) => bin.items.map(({ id }) => id))).toEqual([['p0', 'p1'], ['p2', 'p3']]);
  });

  it('of two plans that buy the same takes the one that leaves more worth keeping', () => {
    const shape = (plan: CutPlan) => plan.bins.map(({ items: laid, offcut }) => ({ laid: laid.map(({ length }) => length), offcut }));
    const order = { stock: 48, kerf: 0, items: items([23, 20, 10, 8, 7]) };
    expect(shape(cutStock(order))).toEqual([{ laid: [23, 20], offcut: 5 }, { laid: [10, 8, 7], offcut: 23 }]);
    expect(shape(cutStock({ ...order, minOffcut: 12 }))).toEqual([{ laid: [23, 10, 8, 7], offcut: 0 }, { laid: [20], offcut: 28 }]);
  });
});

describe('cutting refuses', () => {
  it('a part longer than the stock, by name', () => {
    expect(() => cutStock({ stock: 48, kerf: 0, items: [{ id: 'A/3/2', length: 49 }] })).toThrow(/A\/3\/2/);
    expect(() => cutStock({ stock: 48, kerf: 0, items: [{ id: 'A/3/2', length: 49 }] })).toThrow(RangeError);
  });
  it.each([0, -1, 0.5, NaN, Infinity])('a length of %p', (length) => {
    expect(() => cutStock({ stock: 48, kerf: 0, items: [{ id: 'x', length }] })).toThrow(RangeError);
    expect(() => cutStock({ stock: length, kerf: 0, items: [] })).toThrow(RangeError);
  });
  it('a negative kerf', () => {
    expect(() => cutStock({ stock: 48, kerf: -1, items: [] })).toThrow(RangeError);
  });
});

describe('cutting against every arrangement', () => {
  it('bound <= optimum <= plan <= optimum + 1 for 1,500 random orders of up to eight parts', () => {
    const random = seededRandom(20_260_117);
    let boundMet = 0;
    let planMet = 0;
    for (let round = 0; round < 1500; round++) {
      const stock = random.pick([10, 24, 48, 100, 997]);
      const kerf = random.pick([0, 0, 1, 2]);
      const longest = random.pick([stock, Math.ceil(stock / 2), Math.ceil(stock * 0.4)]);
      const lengths = Array.from({ length: random.whole(1, 8) }, () => random.whole(Math.max(1, Math.floor(stock / 8)), longest));
      const order = { stock, kerf, items: items(lengths) };
      const plan = cutStock(order);
      const optimum = bruteForceBins(lengths, stock, kerf);
      expectLegal(order, plan);
      expect(plan.lowerBound).toBeLessThanOrEqual(optimum);
      expect(plan.bins.length).toBeGreaterThanOrEqual(optimum);
      expect(plan.bins.length).toBeLessThanOrEqual(optimum + 1);
      if (plan.lowerBound === optimum) boundMet++;
      if (plan.bins.length === optimum) planMet++;
    }
    expect(planMet).toBeGreaterThanOrEqual(1495);
    expect(boundMet).toBeGreaterThanOrEqual(1440);
  });

  it('does not depend on the order in which parts come', () => {
    const random = seededRandom(7);
    for (let round = 0; round < 50; round++) {
      const lengths = Array.from({ length: 60 }, () => random.whole(8, 47));
      const shuffled = [...lengths].map((length) => ({ length, key: random.next() })).sort((a, b) => a.key - b.key).map(({ length }) => length);
      const shape = (plan: CutPlan) => ({ bound: plan.lowerBound, bins: plan.bins.map((bin) => bin.items.map(({ length }) => length)) });
      const whole = (parts: number[]) => shape(cutStock({ stock: 48, kerf: 0, items: items(parts), minOffcut: 8 }));
      expect(whole(shuffled)).toEqual(whole(lengths));
    }
  });
});

describe('cutting many', () => {
  it('triplets that fill their stock exactly: the bound is the known optimum and the plan at most one more', () => {
    const random = seededRandom(3);
    for (let round = 0; round < 10; round++) {
      const triplets = Array.from({ length: 20 }, () => {
        const first = random.whole(380, 490);
        const second = random.whole(250, Math.floor((1000 - first) / 2));
        return [first, second, 1000 - first - second];
      });
      const plan = cutStock({ stock: 1000, kerf: 0, items: items(triplets.flat()) });
      expect(plan.lowerBound).toBe(20);
      expect(plan.bins.length).toBeLessThanOrEqual(21);
    }
  });

  it('ten thousand parts on an inch module and ten thousand of any length: legal and near the bound', () => {
    const random = seededRandom(11);
    const module = { stock: inches(48), kerf: 0, items: items(Array.from({ length: 10_000 }, () => inches(random.whole(8, 48)))) };
    const any = { stock: inches(48), kerf: inches(0.125), items: items(Array.from({ length: 10_000 }, () => random.whole(inches(8), inches(48)))) };
    const onModule = cutStock(module);
    const anyLength = cutStock(any);
    expectIdsOnce(module, onModule);
    expectIdsOnce(any, anyLength);
    expect(onModule.bins.length - onModule.lowerBound).toBeLessThanOrEqual(2);
    expect(anyLength.bins.length).toBeLessThanOrEqual(anyLength.lowerBound * 1.01);
  });
});

function expectIdsOnce(order: CutOrder, plan: CutPlan): void {
  expect(new Set(plan.bins.flatMap((bin) => bin.items.map(({ id }) => id))).size).toBe(order.items.length);
  expect(plan.bins.reduce((count, bin) => count + bin.items.length, 0)).toBe(order.items.length);
}

const FALKENAUER = fileURLToPath(new URL('../../../../shared/reference/data/binpack/binpack1.txt', import.meta.url));

/**
 * Falkenauer's u120 class: twenty instances of 120 whole sizes, capacity 150, with the best number of bins then known.
 * Source: Falkenauer 1996, J. Heuristics 2, 5–30; read where the folder of references lies beside the checkout.
 * Discrepancy: u120_08 and u120_19 are printed one too high (51 and 50; 50 and 49 are reached, as Gent 1998, J. Heuristics
 * 3, 299–304, found, from memory); a plan that beats the printed number is proved by laying it out.
 */
(existsSync(FALKENAUER) ? describe : describeAbsent)('cutting Falkenauer u120', () => {
  for (const { name, capacity, best, sizes } of existsSync(FALKENAUER) ? readInstances(FALKENAUER) : []) {
    it(`${name}: ${best} bins known`, () => {
      const order = { stock: capacity, kerf: 0, items: items(sizes) };
      const plan = cutStock(order);
      const optimum = name === 'u120_08' || name === 'u120_19' ? best - 1 : best;
      expectLegal(order, plan);
      expect(plan.lowerBound).toBe(optimum);
      expect(plan.bins.length).toBeGreaterThanOrEqual(optimum);
      expect(plan.bins.length).toBeLessThanOrEqual(optimum + 1);
    });
  }
});

function describeAbsent(name: string): void {
  process.stdout.write(`${name}: the folder of references is not beside the checkout; generated triplets stand in for it\n`);
}

function readInstances(path: string): readonly { name: string; capacity: number; best: number; sizes: number[] }[] {
  const words = readFileSync(path, 'utf8').split(/\s+/).filter(Boolean);
  const instances: { name: string; capacity: number; best: number; sizes: number[] }[] = [];
  for (let at = 1; at < words.length; ) {
    const [name, capacity, count, best] = [words[at]!, Number(words[at + 1]), Number(words[at + 2]), Number(words[at + 3])];
    instances.push({ name, capacity, best, sizes: words.slice(at + 4, at + 4 + count).map(Number) });
    at += 4 + count;
  }
  return instances;
}
