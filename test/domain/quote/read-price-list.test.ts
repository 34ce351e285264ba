import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { readPriceList } from '../../../src/domain/quote/read-price-list.js';

const LIST = {
  format: 'wallcourse/prices@1',
  code: 'L1',
  currency: 'USD',
  inForceFrom: '2026-01-01',
  validDays: 30,
  items: [{ sku: 'ST6', unit: 'each', price: '23.40', cost: '14.05', bundle: 12 }, { sku: 'TAPE-4', unit: 'pack', price: '18.60' }],
  taxes: [{ place: 'Alder County', rate: '0.0825' }],
};
/** What an item has that a list says nothing of. */
const PLAIN = { breakBundle: null, group: null, breaks: [], tiers: new Map(), customers: new Map(), volumeM3: null, weightKg: null };
const item = (changes: object) => ({ ...LIST, items: [{ ...LIST.items[0], ...changes }] });

describe('reading a price list', () => {
  it('keeps prices as they are written', () => {
    const read = readPriceList(LIST);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(read.value).toEqual({
      code: 'L1', currency: 'USD', inForceFrom: '2026-01-01', inForceTo: null, validDays: 30,
      items: new Map([
        ['ST6', { ...PLAIN, sku: 'ST6', unit: 'each', price: '23.40', cost: '14.05', bundle: 12 }],
        ['TAPE-4', { ...PLAIN, sku: 'TAPE-4', unit: 'pack', price: '18.60', cost: null, bundle: null }],
      ]),
      customers: new Map(), discounts: [], minimumOrder: null, freight: null,
      taxes: new Map([['Alder County', [{ name: 'tax', rate: '0.0825', freight: true }]]]),
    });
  });

  it.each([
    { name: 'another format', list: { ...LIST, format: 'prices' }, pointer: '/format', read: 'prices' },
    { name: 'no code', list: { ...LIST, code: undefined }, pointer: '/code', read: '' },
    { name: 'a code of a million characters', list: { ...LIST, code: 'x'.repeat(1_000_000) }, pointer: '/code', read: `${'x'.repeat(79)}…` },
    { name: 'an unknown currency', list: { ...LIST, currency: 'usd' }, pointer: '/currency', read: 'usd' },
    { name: 'a day that is none', list: { ...LIST, inForceFrom: '2026-02-30' }, pointer: '/inForceFrom', read: '2026-02-30' },
    { name: 'half a day of validity', list: { ...LIST, validDays: 0.5 }, pointer: '/validDays', read: '0.5' },
    { name: 'items that are no list', list: { ...LIST, items: {} }, pointer: '/items', read: 'an object' },
    { name: 'no taxes', list: { ...LIST, taxes: undefined }, pointer: '/taxes', read: '' },
    { name: 'an item that is none', list: { ...LIST, items: [null] }, pointer: '/items/0', read: '' },
    { name: 'a price as a number', list: item({ price: 23.4 }), pointer: '/items/0/price', read: '23.4' },
    { name: 'a price below nought', list: item({ price: '-1' }), pointer: '/items/0/price', read: '-1' },
    { name: 'NaN for a price', list: item({ price: 'NaN' }), pointer: '/items/0/price', read: 'NaN' },
    { name: '1e309 for a price', list: item({ price: '1e309' }), pointer: '/items/0/price', read: '1e309' },
    { name: 'a cost with a comma', list: item({ cost: '14,05' }), pointer: '/items/0/cost', read: '14,05' },
    { name: 'an unknown unit', list: item({ unit: 'box' }), pointer: '/items/0/unit', read: 'box' },
    { name: 'a bundle of nothing', list: item({ bundle: 0 }), pointer: '/items/0/bundle', read: '0' },
    { name: 'a sku twice', list: { ...LIST, items: [LIST.items[0], LIST.items[0]] }, pointer: '/items/1/sku', read: 'ST6' },
    { name: 'a key that nobody reads', list: item({ 'break/s': [] }), pointer: '/items/0/break~1s', read: 'break/s' },
    { name: 'a rate in per cent', list: { ...LIST, taxes: [{ place: 'A', rate: '8.25' }] }, pointer: '/taxes/0/rate', read: '8.25' },
    { name: 'a place twice', list: { ...LIST, taxes: [LIST.taxes[0], LIST.taxes[0]] }, pointer: '/taxes/1/place', read: 'Alder County' },
  ])('$name', ({ list, pointer, read }) => {
    const result = readPriceList(list);
    expect(result.ok ? [] : result.error).toEqual([{ sheet: null, row: null, column: null, pointer, read, fix: expect.stringMatching(/\S/) }]);
  });

  it.each([null, [], 'text', 7])('%j is no price list', (json) => {
    const result = readPriceList(json);
    expect(result.ok ? [] : result.error.map(({ pointer }) => pointer)).toEqual(['']);
  });

  it('tells all errors at once, at most 200', () => {
    const bad = readPriceList({ ...LIST, currency: 'x', validDays: 'many', items: [{ sku: 'A', unit: 'each', price: 1, cost: 2 }] });
    expect(bad.ok ? [] : bad.error.map(({ pointer }) => pointer)).toEqual(['/currency', '/validDays', '/items/0/price', '/items/0/cost']);
    const many = readPriceList({ ...LIST, items: Array.from({ length: 1000 }, (_, n) => ({ sku: `S${n}`, unit: 'each', price: n })) });
    expect(many.ok ? [] : many.error).toHaveLength(200);
    expect(many.ok ? '' : many.error.at(-1)?.fix).toContain('801 more');
  });
});

describe('the sample price list', () => {
  const sample = readPriceList(JSON.parse(readFileSync('shared/samples/prices.json', 'utf8')));
  const range = JSON.parse(readFileSync('shared/samples/heron-16.range.json', 'utf8'));

  it('prices every sku that the sample range can bring into a take-off', () => {
    if (!sample.ok) throw new Error(JSON.stringify(sample.error));
    const units = range.unitsPerCore;
    const cores: readonly string[] = range.cores.map(({ code }: { code: string }) => code);
    const wanted = [
      ...cores.flatMap((core) => ['straight', 'corner-pair', 'corner-hinged', 'strip', 'end-closure'].map((kind) => `${units[kind].prefix}${core}`)),
      ...cores.flatMap((core) => ['L', 'R'].map((hand) => `${units.corner.prefix}${core}-${hand}`)),
      ...units.ledge.cores.map((core: string) => `${units.ledge.prefix}${core}`),
      ...units['taper-top'].cores.flatMap((core: string) => ['1', '2'].map((faces) => `${units['taper-top'].prefix}${core}-${faces}`)),
      ...range.materials.map(({ sku }: { sku: string }) => sku),
    ];
    expect([...sample.value.items.keys()].sort()).toEqual([...wanted].sort());
  });

  it('has a volume and a weight for everything that freight is charged on', () => {
    if (!sample.ok) throw new Error(JSON.stringify(sample.error));
    expect([...sample.value.items.values()].filter(({ volumeM3, weightKg }) => volumeM3 === null || weightKg === null)).toEqual([]);
  });

  it('sells materials by the pack, units one by one, and nothing below cost', () => {
    if (!sample.ok) throw new Error(JSON.stringify(sample.error));
    const materials = range.materials.map(({ sku }: { sku: string }) => sku);
    for (const { sku, unit, cost, tiers, customers, ...listed } of sample.value.items.values()) {
      expect([sku, unit]).toEqual([sku, materials.includes(sku) ? 'pack' : 'each']);
      const prices = [listed, ...tiers.values(), ...customers.values()].flatMap(({ price, breaks }) => [price, ...breaks.map((each) => each.price)]);
      for (const price of prices) expect(Number(price)).toBeGreaterThan(Number(cost));
    }
  });
});
