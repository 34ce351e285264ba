import { describe, expect, it } from '@jest/globals';
import { readPriceList } from '../../../src/domain/quote/read-price-list.js';

/** Every field of the contract once; the names and figures are invented. */
const FULL = {
  format: 'wallcourse/prices@1', code: 'HERON-2026', currency: 'USD', inForceFrom: '2026-01-01', inForceTo: '2026-12-31', validDays: 30,
  items: [{
    sku: 'ST6', unit: 'each', price: '23.40', cost: '14.05', bundle: 12, breakBundle: '0.10', group: 'forms',
    breaks: [{ from: 120, price: '22.60' }, { from: 480, price: '21.90' }],
    tiers: { builder: { price: '22.90', breaks: [{ from: 240, price: '22.10' }] } },
    customers: { 'Alder Ridge Builders': { price: '22.00' } },
    volumeM3: '0.149', weightKg: '3.1',
  }],
  customers: [{ organisation: 'Alder Ridge Builders', tier: 'builder', taxExempt: 'EX-1234' }],
  discounts: [{ group: 'forms', rate: '0.05' }, { group: 'forms', tier: 'builder', rate: '0.08' }, { group: 'materials', organisation: 'Alder Ridge Builders', rate: '0.1' }],
  minimumOrder: { amount: '500.00', charge: '45.00' },
  taxes: [{ place: 'Alder County', name: 'sales tax', rate: '0.0825', freight: false }, { place: 'Alder County', name: 'county tax', rate: '0.01' }],
  freight: {
    truck: { volumeM3: '70', pieces: 1200, weightKg: '9000' }, split: 'storey',
    zones: [{ zone: 'A', places: ['Alder County', 'Fenmoor'], perTruck: '420.00', perDelivery: '60.00' }],
  },
};
const item = (changes: object) => ({ ...FULL, items: [{ ...FULL.items[0], ...changes }] });
const freight = (changes: object) => ({ ...FULL, freight: { ...FULL.freight, ...changes } });
const zone = (changes: object) => freight({ zones: [{ ...FULL.freight.zones[0], ...changes }] });
const truck = (size: object) => freight({ truck: size });

describe('a price list with every field', () => {
  it('is read as it is written', () => {
    const read = readPriceList(FULL);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(read.value).toEqual({
      code: 'HERON-2026', currency: 'USD', inForceFrom: '2026-01-01', inForceTo: '2026-12-31', validDays: 30,
      items: new Map([['ST6', {
        sku: 'ST6', unit: 'each', price: '23.40', cost: '14.05', bundle: 12, breakBundle: '0.10', group: 'forms',
        breaks: [{ from: 120, price: '22.60' }, { from: 480, price: '21.90' }],
        tiers: new Map([['builder', { price: '22.90', breaks: [{ from: 240, price: '22.10' }] }]]),
        customers: new Map([['Alder Ridge Builders', { price: '22.00', breaks: [] }]]),
        volumeM3: '0.149', weightKg: '3.1',
      }]]),
      customers: new Map([['Alder Ridge Builders', { organisation: 'Alder Ridge Builders', tier: 'builder', taxExempt: 'EX-1234' }]]),
      discounts: [
        { group: 'forms', tier: null, organisation: null, rate: '0.05' },
        { group: 'forms', tier: 'builder', organisation: null, rate: '0.08' },
        { group: 'materials', tier: null, organisation: 'Alder Ridge Builders', rate: '0.1' },
      ],
      minimumOrder: { amount: '500.00', charge: '45.00' },
      taxes: new Map([['Alder County', [{ name: 'sales tax', rate: '0.0825', freight: false }, { name: 'county tax', rate: '0.01', freight: true }]]]),
      freight: { ...FULL.freight },
    });
  });

  it('may leave out every new part of a part', () => {
    const read = readPriceList({ ...FULL, minimumOrder: { amount: '0' }, freight: { truck: { pieces: 1 }, zones: [] } });
    expect(read.ok && [read.value.minimumOrder, read.value.freight]).toEqual([
      { amount: '0', charge: null }, { truck: { volumeM3: null, pieces: 1, weightKg: null }, split: 'job', zones: [] },
    ]);
  });
});

describe('what is wrong with a price list, each with its place and what would do', () => {
  it.each([
    { name: 'it ends before it begins', list: { ...FULL, inForceTo: '2025-12-31' }, at: '/inForceTo', read: '2025-12-31', fix: '2026-01-01 or later' },
    { name: 'a last day that is none', list: { ...FULL, inForceTo: '2026-02-30' }, at: '/inForceTo', read: '2026-02-30', fix: 'a day' },
    { name: 'breaks out of order', list: item({ breaks: [{ from: 480, price: '2' }, { from: 120, price: '3' }] }), at: '/items/0/breaks/1/from', read: '120', fix: 'more than 480' },
    { name: 'a break twice', list: item({ breaks: [{ from: 12, price: '2' }, { from: 12, price: '3' }] }), at: '/items/0/breaks/1/from', read: '12', fix: 'more than 12' },
    { name: 'a break from one', list: item({ breaks: [{ from: 1, price: '2' }] }), at: '/items/0/breaks/0/from', read: '1', fix: 'from 2' },
    { name: 'half a break', list: item({ breaks: [{ from: 2.5, price: '2' }] }), at: '/items/0/breaks/0/from', read: '2.5', fix: 'whole' },
    { name: 'a break that costs less than nothing', list: item({ breaks: [{ from: 2, price: '-2' }] }), at: '/items/0/breaks/0/price', read: '-2', fix: 'decimal' },
    { name: 'a break out of order in a tier', list: item({ tiers: { builder: { price: '1', breaks: [{ from: 9, price: '1' }, { from: 8, price: '1' }] } } }), at: '/items/0/tiers/builder/breaks/1/from', read: '8', fix: 'more than 9' },
    { name: 'a huge price', list: item({ price: '1000000000' }), at: '/items/0/price', read: '1000000000', fix: 'at most 9 digits' },
    { name: 'a price of a tier in no quotes', list: item({ tiers: { builder: { price: 22.9 } } }), at: '/items/0/tiers/builder/price', read: '22.9', fix: 'in quotes' },
    { name: 'a tier nobody is in', list: item({ tiers: { builders: { price: '1' } } }), at: '/items/0/tiers/builders', read: 'builders', fix: ': builder' },
    { name: 'a tier nobody is in, of a discount', list: { ...FULL, discounts: [{ group: 'forms', tier: 'gold', rate: '0.1' }] }, at: '/discounts/0/tier', read: 'gold', fix: ': builder' },
    { name: 'a customer price with a key that nobody reads', list: item({ customers: { 'A/B': { price: '1', rate: '2' } } }), at: '/items/0/customers/A~1B/rate', read: 'rate', fix: 'one of price, breaks' },
    { name: 'a bundle to break that is none', list: item({ bundle: undefined }), at: '/items/0/breakBundle', read: '0.10', fix: 'a bundle' },
    { name: 'a surcharge in per cent', list: item({ breakBundle: '10' }), at: '/items/0/breakBundle', read: '10', fix: '"0.10" is 10 %' },
    { name: 'goods in the group of freight', list: item({ group: 'freight' }), at: '/items/0/group', read: 'freight', fix: 'lines of their own' },
    { name: 'a form larger than the truck', list: item({ volumeM3: '70.00000001' }), at: '/items/0/volumeM3', read: '70.00000001', fix: 'at most 70' },
    { name: 'a form heavier than the truck carries', list: item({ weightKg: '9000.5' }), at: '/items/0/weightKg', read: '9000.5', fix: 'at most 9000' },
    { name: 'an organisation twice', list: { ...FULL, customers: [FULL.customers[0], FULL.customers[0]] }, at: '/customers/1/organisation', read: 'Alder Ridge Builders', fix: 'once' },
    { name: 'a discount of 100 %', list: { ...FULL, discounts: [{ group: 'forms', rate: '1' }] }, at: '/discounts/0/rate', read: '1', fix: 'below 1' },
    { name: 'a discount over 100 %', list: { ...FULL, discounts: [{ group: 'forms', rate: '5' }] }, at: '/discounts/0/rate', read: '5', fix: '"0.05" is 5 %' },
    { name: 'a discount below nought', list: { ...FULL, discounts: [{ group: 'forms', rate: '-0.1' }] }, at: '/discounts/0/rate', read: '-0.1', fix: 'decimal' },
    { name: 'a discount for nothing', list: { ...FULL, discounts: [{ rate: '0.1' }] }, at: '/discounts/0/group', read: '', fix: 'text' },
    { name: 'a discount for a tier and an organisation', list: { ...FULL, discounts: [{ group: 'forms', tier: 'builder', organisation: 'X', rate: '0.1' }] }, at: '/discounts/0/organisation', read: 'X', fix: 'not both' },
    { name: 'a discount twice', list: { ...FULL, discounts: [FULL.discounts[1], FULL.discounts[1]] }, at: '/discounts/1/group', read: 'forms', fix: 'once' },
    { name: 'a minimum below nought', list: { ...FULL, minimumOrder: { amount: '-5' } }, at: '/minimumOrder/amount', read: '-5', fix: 'decimal' },
    { name: 'a tax twice at a place', list: { ...FULL, taxes: [FULL.taxes[1], FULL.taxes[1]] }, at: '/taxes/1/name', read: 'county tax', fix: 'once' },
    { name: 'freight taxed by a word', list: { ...FULL, taxes: [{ ...FULL.taxes[0], freight: 'no' }] }, at: '/taxes/0/freight', read: 'no', fix: 'true' },
    { name: 'a truck of no size', list: truck({}), at: '/freight/truck', read: 'an object', fix: 'volumeM3, pieces or weightKg' },
    { name: 'a truck that takes nothing', list: truck({ pieces: 0 }), at: '/freight/truck/pieces', read: '0', fix: 'from 1' },
    { name: 'a truck without room', list: { ...truck({ weightKg: '0' }), items: [] }, at: '/freight/truck/weightKg', read: '0', fix: 'more than nought' },
    { name: 'another split', list: freight({ split: 'wall' }), at: '/freight/split', read: 'wall', fix: '"storey"' },
    { name: 'a place twice in a zone', list: zone({ places: ['Fenmoor', 'Fenmoor'] }), at: '/freight/zones/0/places/1', read: 'Fenmoor', fix: 'once' },
    { name: 'a place in two zones', list: freight({ zones: [FULL.freight.zones[0], { zone: 'B', places: ['Fenmoor'], perTruck: '1' }] }), at: '/freight/zones/1/places/0', read: 'Fenmoor', fix: 'one zone' },
    { name: 'a zone twice', list: freight({ zones: [FULL.freight.zones[0], { zone: 'A', places: [], perTruck: '1' }] }), at: '/freight/zones/1/zone', read: 'A', fix: 'once' },
    { name: 'a zone without a price', list: zone({ perTruck: undefined }), at: '/freight/zones/0/perTruck', read: '', fix: 'decimal' },
  ])('$name', ({ list, at, read, fix }) => {
    const result = readPriceList(list);
    expect(result.ok ? [] : result.error).toEqual([{ sheet: null, row: null, column: null, pointer: at, read, fix: expect.stringContaining(fix) }]);
  });

  it('names of the language itself are names like others', () => {
    const list = JSON.parse(JSON.stringify(item({ customers: undefined })).replace('"sku":', '"customers":{"__proto__":{"price":"1"},"constructor":{"price":"2"}},"sku":'));
    const read = readPriceList(list);
    expect(read.ok && [...(read.value.items.get('ST6')?.customers ?? [])].map(([name, { price }]) => [name, price])).toEqual([['__proto__', '1'], ['constructor', '2']]);
  });
});
