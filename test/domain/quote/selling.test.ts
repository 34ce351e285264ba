import { describe, expect, it } from '@jest/globals';
import type { PriceItem } from '../../../src/domain/quote/price-list.js';
import { sell, type Need } from '../../../src/domain/quote/selling.js';

const item = (unit: PriceItem['unit'], bundle: number | null = null): PriceItem => ({ sku: 'X', unit, price: '1', cost: null, bundle });
const feet = (needed: number): Need => ({ needed, neededUnit: 'ft', pack: { quantity: 60, unit: 'ft' }, covered: 0 });
const pieces = (needed: number, covered = 0): Need => ({ needed, neededUnit: 'each', pack: { quantity: 100, unit: 'each' }, covered });

describe('from need to sale', () => {
  it.each([
    { name: 'feet by the pack', need: feet(61), sold: item('pack'), before: 2, after: 2 },
    { name: 'feet by the foot, whole feet', need: feet(61.01), sold: item('ft'), before: 62, after: 62 },
    { name: 'pieces by the pack', need: pieces(100), sold: item('pack'), before: 1, after: 1 },
    { name: 'pieces one by one', need: pieces(101), sold: item('each'), before: 101, after: 101 },
    { name: 'packs by the dozen', need: pieces(1201), sold: item('pack', 12), before: 13, after: 24 },
    { name: 'what is already covered is not sold again', need: pieces(10, 4), sold: item('each', 12), before: 6, after: 12 },
    { name: 'all of it covered', need: pieces(4, 4), sold: item('each', 12), before: 0, after: 0 },
  ])('$name', ({ need, sold, before, after }) => expect(sell(need, sold)).toMatchObject({ beforeBundling: before, afterBundling: after }));

  it.each([
    { name: 'feet one by one', need: feet(10), sold: item('each') },
    { name: 'pieces by the foot', need: pieces(10), sold: item('ft') },
    { name: 'a form by the pack', need: { ...pieces(10), pack: null }, sold: item('pack') },
    { name: 'feet from a pack of pieces', need: { ...feet(10), pack: { quantity: 5, unit: 'each' as const } }, sold: item('pack') },
  ])('not: $name', ({ need, sold }) => expect(sell(need, sold)).toBeNull());
});
