import { describe, expect, it } from '@jest/globals';
import { sellSku } from '../../../src/domain/quote/bundling.js';
import type { PriceItem } from '../../../src/domain/quote/price-list.js';
import { inches } from '../../../src/domain/quantity/length.js';
import { demandOf, type Demand, type Need } from '../../../src/domain/quote/selling.js';

type Sold = Pick<PriceItem, 'unit' | 'bundle'>;
const item = (unit: PriceItem['unit'], bundle: number | null = null): Sold => ({ unit, bundle });
/** One line of its sku, in whole bundles. */
function sell(need: Need, sold: Sold): (Demand & { readonly beforeBundling: number; readonly afterBundling: number }) | null {
  const demand = demandOf(need, sold);
  if (!demand) return null;
  const sale = sellSku([demand.count], { bundle: sold.bundle, breakBundle: null }, { audience: 'list', price: '1', breaks: [] });
  return { ...demand, beforeBundling: demand.count, afterBundling: sale.parts[0]!.quantity };
}
const feet = (needed: number): Need => ({ needed, neededUnit: 'ft', pack: { quantity: 60, unit: 'ft' } });
const pieces = (needed: number): Need => ({ needed, neededUnit: 'each', pack: { quantity: 100, unit: 'each' } });

describe('from need to sale', () => {
  it.each([
    { name: 'feet by the pack', need: feet(61), sold: item('pack'), before: 2, after: 2 },
    { name: 'feet by the foot, whole feet', need: feet(61.01), sold: item('ft'), before: 62, after: 62 },
    { name: 'pieces by the pack', need: pieces(100), sold: item('pack'), before: 1, after: 1 },
    { name: 'pieces one by one', need: pieces(101), sold: item('each'), before: 101, after: 101 },
    { name: 'packs by the dozen', need: pieces(1201), sold: item('pack', 12), before: 13, after: 24 },
  ])('$name', ({ need, sold, before, after }) => expect(sell(need, sold)).toMatchObject({ beforeBundling: before, afterBundling: after }));

  it.each([
    { name: 'feet one by one', need: feet(10), sold: item('each') },
    { name: 'pieces by the foot', need: pieces(10), sold: item('ft') },
    { name: 'a form by the pack', need: { ...pieces(10), pack: null }, sold: item('pack') },
    { name: 'feet from a pack of pieces', need: { ...feet(10), pack: { quantity: 5, unit: 'each' as const } }, sold: item('pack') },
  ])('not: $name', ({ need, sold }) => expect(sell(need, sold)).toBeNull());
});

/** Pieces as [inches, count]; the need is their total length, as the rules give it. */
const bars = (...pieces: readonly (readonly [number, number])[]): Need => ({
  needed: pieces.reduce((sum, [length, count]) => sum + (length * count) / 12, 0), neededUnit: 'ft', pack: { quantity: 20, unit: 'ft' },
  pieces: pieces.map(([length, count]) => ({ length: inches(length), count })),
});

describe('bars, whose pieces are never made up of two', () => {
  it.each([
    { name: '36 pieces of 46 in are 138 ft, yet 240 in hold five: eight bars', need: bars([46, 36]), sold: 8, lowerBound: 8 },
    { name: '35 of them fill seven', need: bars([46, 35]), sold: 7, lowerBound: 7 },
    { name: 'pieces of two lengths share a bar: 4 x 46 + 56 = 240 in', need: bars([56, 3], [46, 12]), sold: 3, lowerBound: 3 },
    { name: 'a piece as long as the bar', need: bars([240, 2]), sold: 2, lowerBound: 2 },
    { name: 'pieces over half a bar take one each', need: bars([121, 5]), sold: 5, lowerBound: 5 },
    { name: 'four of 60 in are one bar: a cut takes no width', need: bars([60, 4]), sold: 1, lowerBound: 1 },
  ])('$name', ({ need, sold, lowerBound }) => {
    const selling = sell(need, item('pack'));
    expect(selling).toMatchObject({ beforeBundling: sold, afterBundling: sold, pack: 20 });
    expect(selling?.cutting).toEqual({
      stockMm: 6096, lowerBound, pieces: need.pieces?.map(({ length, count }) => ({ lengthMm: length / 1e6, count })),
    });
  });

  it('bundles of bars are whole', () => expect(sell(bars([46, 36]), item('pack', 5))).toMatchObject({ beforeBundling: 8, afterBundling: 10 }));

  it('by the foot the total length is sold, and nothing is cut', () => {
    const selling = sell(bars([46, 36]), item('ft'));
    expect(selling).toMatchObject({ beforeBundling: 138 });
    expect(selling).not.toHaveProperty('cutting');
  });

  it('tape has no pieces and goes by total length', () => expect(sell({ ...bars([46, 36]), pieces: undefined }, item('pack'))).toMatchObject({ beforeBundling: 7 }));

  it('twenty thousand pins are cut in bounded time', () => {
    const start = performance.now();
    expect(sell(bars([46, 20_000]), item('pack'))).toMatchObject({ beforeBundling: 4_000 });
    expect(performance.now() - start).toBeLessThan(5_000);
  });
});
