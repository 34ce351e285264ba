import { describe, expect, it } from '@jest/globals';
import { internalFigures } from '../../../src/domain/quote/internal-figures.js';
import { price } from '../../../src/domain/quote/pricing.js';
import type { Quote } from '../../../src/domain/quote/quote.js';
import { material, measuredJob, priceList, unit, type PriceListDocument } from '../../support/priced-job.js';

/** One form at 10.00, so that every figure can be worked in the head; each case adds one thing. */
const BARE: PriceListDocument = {
  format: 'wallcourse/prices@1', code: 'P', currency: 'USD', inForceFrom: '2026-01-01', validDays: 30, items: [{ sku: 'F', unit: 'each', price: '10.00' }], taxes: [],
};
const withItem = (changes: object, rest: object = {}): PriceListDocument => ({ ...BARE, items: [{ ...BARE.items[0]!, ...changes }], ...rest });
const forms = (bought: number, spare = 0) => measuredJob({ units: [unit('F', bought, { spare })] });
const US = { organisation: 'Us', place: 'Town' };

function quoted(list: PriceListDocument, job = forms(10), customer: { organisation: string; place?: string | null } = US, date = '2026-02-01'): Quote {
  const result = price(job, priceList(list), customer, date);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}
const amounts = (quote: Quote) => quote.lines.map(({ kind, quantity, looseQuantity, amountMinor }) => [kind, quantity, looseQuantity, amountMinor]);

describe('breaks', () => {
  const list = withItem({ breaks: [{ from: 120, price: '9' }, { from: 480, price: '8.5' }] });
  it.each([
    { bought: 119, spare: 0, unitPrice: '10.00', from: null, lines: [119_000] },
    { bought: 120, spare: 0, unitPrice: '9', from: 120, lines: [108_000] },
    // 118 + 2 = 120 selling units of the sku: both lines at 9.
    { bought: 118, spare: 2, unitPrice: '9', from: 120, lines: [106_200, 1_800] },
    { bought: 480, spare: 1, unitPrice: '8.5', from: 480, lines: [408_000, 850] },
  ])('$bought and $spare spare: $unitPrice', ({ bought, spare, unitPrice, from, lines }) => {
    const quote = quoted(list, forms(bought, spare));
    expect(quote.lines.map(({ amountMinor }) => amountMinor)).toEqual(lines);
    expect(new Set(quote.lines.map((line) => `${line.unitPrice} ${line.break?.from ?? null} ${line.listPrice} ${line.audience}`))).toEqual(new Set([`${unitPrice} ${from} 10.00 list`]));
  });

  it('are reached after bundling: 110 forms are 10 bundles of 12, 120 forms, 1080.00', () => {
    expect(amounts(quoted(withItem({ bundle: 12, breaks: [{ from: 120, price: '9' }] }), forms(110)))).toEqual([['unit', 120, 0, 108_000]]);
  });
});

describe('audiences', () => {
  const list = withItem(
    { breaks: [{ from: 5, price: '9' }], tiers: { builder: { price: '8', breaks: [{ from: 20, price: '7' }] } }, customers: { Own: { price: '6' } } },
    { customers: [{ organisation: 'Us', tier: 'builder' }, { organisation: 'Own', tier: 'builder' }, { organisation: 'Plain' }] },
  );
  it.each([
    { who: 'Stranger', bought: 10, audience: 'list', unitPrice: '9', amount: 9_000 },
    { who: 'Plain', bought: 10, audience: 'list', unitPrice: '9', amount: 9_000 },
    // The list's break at 5 is not the tier's.
    { who: 'Us', bought: 10, audience: 'tier', unitPrice: '8', amount: 8_000 },
    { who: 'Us', bought: 20, audience: 'tier', unitPrice: '7', amount: 14_000 },
    { who: 'Own', bought: 20, audience: 'customer', unitPrice: '6', amount: 12_000 },
  ])('$who, $bought: $unitPrice', ({ who, bought, ...expected }) => {
    const [line] = quoted(list, forms(bought), { organisation: who }).lines;
    expect({ audience: line?.audience, unitPrice: line?.unitPrice, amount: line?.amountMinor }).toEqual(expected);
  });
});

describe('a bundle of 12 that may be broken at 10 %', () => {
  const list = withItem({ bundle: 12, breakBundle: '0.10' });
  it.each([
    { bought: 24, spare: 0, lines: [['unit', 24, 0, 24_000]], why: 'whole bundles' },
    // 31 = 2 bundles and 7 loose: 31 + 0.7 = 31.7 forms' worth against 36.
    { bought: 31, spare: 0, lines: [['unit', 31, 7, 31_700]], why: 'loose is cheaper' },
    // 10 loose: 10 + 1 = 11 against 12. 11 loose: 12.1 against 12.
    { bought: 10, spare: 0, lines: [['unit', 10, 10, 11_000]], why: 'ten loose still are' },
    { bought: 11, spare: 0, lines: [['unit', 12, 0, 12_000]], why: 'a whole bundle costs less than eleven loose' },
    // 30 + 1: 24 in bundles, 7 loose, of which the spare is the last.
    { bought: 30, spare: 1, lines: [['unit', 30, 6, 30_600], ['spare', 1, 1, 1_100]], why: 'units are taken from the bundles first' },
    { bought: 23, spare: 2, lines: [['unit', 23, 0, 23_000], ['spare', 2, 1, 2_100]], why: 'one spare comes with the bundles' },
    { bought: 20, spare: 4, lines: [['unit', 24, 0, 24_000], ['spare', 0, 0, 0]], why: 'units and spares together are two bundles' },
  ])('$bought and $spare spare: $lines ($why)', ({ bought, spare, lines }) => expect(amounts(quoted(list, forms(bought, spare)))).toEqual(lines));

  it('at equal cost the bundle is whole: 8 loose of 10 at 25 % more cost as much as 10', () => {
    expect(amounts(quoted(withItem({ bundle: 10, breakBundle: '0.25' }), forms(8)))).toEqual([['unit', 10, 0, 10_000]]);
  });

  it('a break that only the whole bundle reaches counts: 100 at 10.00, 4 of them loose, are 1004.00; 108 at 9.00 are 972.00', () => {
    const quote = quoted(withItem({ bundle: 12, breakBundle: '0.10', breaks: [{ from: 108, price: '9' }] }), forms(100));
    expect(amounts(quote)).toEqual([['unit', 108, 0, 97_200]]);
    expect(quote.lines[0]?.selling.broken).toEqual({ surchargeRate: '0.10', needed: 100, loose: 4, looseCost: '1004', whole: 108, wholeCost: '972', sold: 'whole' });
  });

  it('the trace says what was weighed', () => {
    const [line] = quoted(list, forms(31)).lines;
    expect([line?.surchargeRate, line?.selling]).toEqual(['0.10', {
      needed: 31, neededUnit: 'each', pack: null, covered: 0, beforeBundling: 31, bundle: 12, afterBundling: 31,
      broken: { surchargeRate: '0.10', needed: 31, loose: 7, looseCost: '317', whole: 36, wholeCost: '360', sold: 'loose' },
    }]);
  });
});

describe('discounts', () => {
  const discounts = [{ group: 'forms', rate: '0.05' }, { group: 'forms', tier: 'builder', rate: '0.08' }, { group: 'forms', organisation: 'Own', rate: '0.02' }, { group: 'odd', rate: '0.5' }];
  const customers = [{ organisation: 'Us', tier: 'builder' }, { organisation: 'Own', tier: 'builder' }];
  it.each([
    { who: 'Stranger', group: undefined, rate: '0.05', amount: 9_500 },
    { who: 'Us', group: undefined, rate: '0.08', amount: 9_200 },
    // The most particular one, though another would be larger; never both.
    { who: 'Own', group: undefined, rate: '0.02', amount: 9_800 },
    { who: 'Us', group: 'odd', rate: '0.5', amount: 5_000 },
    { who: 'Us', group: 'other', rate: null, amount: 10_000 },
  ])('$who, group $group: $rate off 100.00', ({ who, group, rate, amount }) => {
    const [line] = quoted(withItem(group ? { group } : {}, { discounts, customers }), forms(10), { organisation: who }).lines;
    expect([line?.discountRate, line?.amountMinor, line?.unitPrice]).toEqual([rate, amount, '10.00']);
  });

  it.each([
    ['straight', 'forms'], ['ledge', 'forms'], ['taper-top', 'forms'], ['corner', 'corners'], ['corner-pair', 'corners'], ['corner-hinged', 'corners'], ['strip', 'strips'], ['end-closure', 'closures'],
  ] as const)('a %s is in the group of %s', (kind, group) => expect(quoted(BARE, measuredJob({ units: [unit('F', 1, { kind })] })).lines[0]?.group).toBe(group));

  it.each([['tape', 'materials'], ['foam', 'materials'], ['bar', 'bars']] as const)('%s is in the group of %s', (kind, group) => {
    expect(quoted({ ...BARE, items: [{ sku: 'M', unit: 'ft', price: '1' }] }, measuredJob({ materials: [material('M', kind, 3, { quantity: 1, unit: 'ft' })] })).lines[0]?.group).toBe(group);
  });

  it('surcharge, break and discount in one amount, rounded once: (31 + 0.7) x 2.225 x 0.93 = 65.595225', () => {
    const list = withItem({ price: '3', bundle: 12, breakBundle: '0.10', breaks: [{ from: 20, price: '2.225' }] }, { discounts: [{ group: 'forms', rate: '0.07' }] });
    expect(amounts(quoted(list, forms(31)))).toEqual([['unit', 31, 7, 6_560]]);
  });
});

describe('the minimum order of 150.00', () => {
  it.each([
    { bought: 15, minimum: { amount: '150.00' }, lines: [15_000] },
    { bought: 16, minimum: { amount: '150.00' }, lines: [16_000] },
    { bought: 10, minimum: { amount: '150.00' }, lines: [10_000, 5_000] },
    { bought: 10, minimum: { amount: '150.00', charge: '45.00' }, lines: [10_000, 4_500] },
    // 150.005 - 100 = 50.005 to the even cent.
    { bought: 10, minimum: { amount: '150.005' }, lines: [10_000, 5_000] },
    { bought: 0, minimum: { amount: '150.00' }, lines: [] },
  ])('$bought forms, $minimum: $lines', ({ bought, minimum, lines }) => {
    const quote = quoted({ ...BARE, minimumOrder: minimum }, forms(bought));
    expect(quote.lines.map(({ amountMinor }) => amountMinor)).toEqual(lines);
    expect(quote.totalMinor).toBe(lines.reduce((sum, amount) => sum + amount, 0));
  });

  it('is measured after discounts, without freight, and says what it is', () => {
    const list = { ...BARE, minimumOrder: { amount: '100' }, discounts: [{ group: 'forms', rate: '0.1' }], freight: { truck: { pieces: 5 }, zones: [{ zone: 'A', places: ['Town'], perTruck: '400' }] } };
    const quote = quoted(list);
    expect(quote.lines.map(({ kind, sku, text, amountMinor }) => [kind, sku, text, amountMinor])).toEqual([
      ['unit', 'F', 'Straight form, core 6; less 10 %', 9_000],
      ['minimum', 'MINIMUM', 'Made up to the minimum order of USD 100.00', 1_000],
      ['freight', 'FREIGHT', 'Freight to zone A: 2 trucks at USD 400 each', 80_000],
    ]);
    expect(quote.lines[1]).toMatchObject({ quantity: 1, unitPrice: '10.00', because: [{ rule: 'minimum-order', quantity: 1 }] });
  });
});

describe('taxes', () => {
  const taxes = [{ place: 'Town', name: 'sales tax', rate: '0.0825' }, { place: 'Town', name: 'county tax', rate: '0.0125', freight: false }];
  const freight = { truck: { pieces: 100 }, zones: [{ zone: 'A', places: ['Town'], perTruck: '60.20' }] };

  it('of several names, each rounded by itself: 8.25 % of 160.20 is 13.2165, 1.25 % of 100.00 without freight is 1.25', () => {
    const quote = quoted({ ...BARE, taxes, freight });
    expect(quote.taxes).toEqual([
      { name: 'sales tax', place: 'Town', rate: '0.0825', baseMinor: 16_020, amountMinor: 1_322 },
      { name: 'county tax', place: 'Town', rate: '0.0125', baseMinor: 10_000, amountMinor: 125 },
    ]);
    expect([quote.tax, quote.subtotalMinor, quote.taxMinor, quote.totalMinor]).toEqual([{ place: 'Town', rate: '0.095', reason: null }, 16_020, 1_447, 17_467]);
  });

  it('none for a customer with a certificate, and the quote names it', () => {
    const quote = quoted({ ...BARE, taxes, customers: [{ organisation: 'Us', taxExempt: 'EX-1234' }] });
    expect([quote.tax, quote.taxes, quote.taxMinor, quote.totalMinor]).toEqual([{ place: 'Town', rate: null, reason: 'exempt', certificate: 'EX-1234' }, [], 0, 10_000]);
  });
});

describe('freight', () => {
  const zones = [{ zone: 'A', places: ['Town', 'Next'], perTruck: '420.00', perDelivery: '60.00' }];
  const by = (truck: object, changes: object = {}, rest: object = {}): PriceListDocument => withItem({ volumeM3: '0.3', weightKg: '4', ...changes }, { freight: { truck, zones, ...rest } });

  it.each([
    // 3 of 0.3 m³ go into 1 m³: 10 forms take 4 trucks, the last with 1 form.
    { truck: { volumeM3: '1' }, loads: [3, 3, 3, 1], fill: [0.9, 0.9, 0.9, 0.3] },
    { truck: { volumeM3: '3' }, loads: [10], fill: [1] },
    { truck: { pieces: 4 }, loads: [4, 4, 2], fill: [1, 1, 0.5] },
    // 5 of 4 kg are 20 kg; by volume 6 would go.
    { truck: { volumeM3: '2', weightKg: '20' }, loads: [5, 5], fill: [1, 1] },
  ])('10 forms of 0.3 m³ and 4 kg on trucks of $truck: $loads', ({ truck, loads, fill }) => {
    const { freight, lines } = quoted(by(truck));
    expect(freight?.deliveries).toEqual([{
      storey: null, trucks: loads.length,
      loads: loads.map((pieces, n) => ({ n: n + 1, volumeM3: Number((pieces * 0.3).toFixed(6)), pieces, weightKg: pieces * 4, fill: fill[n], contents: [{ line: 1, sku: 'F', quantity: pieces }] })),
    }]);
    expect(lines.at(-1)).toMatchObject({ kind: 'freight', quantity: 1, unitPrice: `${loads.length * 420 + 60}.00`, amountMinor: loads.length * 42_000 + 6_000, storey: null });
  });

  const causes = (...places: readonly (readonly [string, number, number])[]) => places.map(([storey, course, quantity]) => ({ rule: 'course', storey, wall: 'A', course, quantity }));
  const storeys = ['S1', 'S2', 'S3'].map((storey) => ({ storey, nm3: 0n, orderYd3: 1 }));

  it('one delivery a storey, shared by causes, largest remainder first: 10 by 1 : 1 : 1 is 4, 3, 3', () => {
    const job = measuredJob({ units: [unit('F', 10, { because: causes(['S3', 1, 1], ['S1', 1, 1], ['S2', 1, 1]) })], concrete: storeys });
    const quote = quoted(by({ pieces: 3 }, {}, { split: 'storey' }), job);
    expect(quote.freight?.deliveries.map(({ storey, loads }) => [storey, loads.map(({ pieces }) => pieces)])).toEqual([['S1', [3, 1]], ['S2', [3]], ['S3', [3]]]);
    expect(quote.lines.slice(1).map(({ storey, text, amountMinor }) => [storey, text, amountMinor])).toEqual([
      ['S1', 'Freight to zone A for storey S1: 2 trucks at USD 420.00 each, USD 60.00 for the delivery', 90_000],
      ['S2', 'Freight to zone A for storey S2: 1 truck at USD 420.00, USD 60.00 for the delivery', 48_000],
      ['S3', 'Freight to zone A for storey S3: 1 truck at USD 420.00, USD 60.00 for the delivery', 48_000],
    ]);
  });

  it('spares go where the forms of their sku go: 4 by 3 : 1 are 3 and 1; a storey without goods has no delivery', () => {
    const job = measuredJob({ units: [unit('F', 8, { spare: 4, because: causes(['S1', 1, 6], ['S3', 1, 2]) })], concrete: storeys });
    const { freight } = quoted(by({ pieces: 100 }, {}, { split: 'storey' }), job);
    expect(freight?.deliveries.map(({ storey, loads }) => [storey, loads[0]?.contents])).toEqual([
      ['S1', [{ line: 1, sku: 'F', quantity: 6 }, { line: 2, sku: 'F', quantity: 3 }]],
      ['S3', [{ line: 1, sku: 'F', quantity: 2 }, { line: 2, sku: 'F', quantity: 1 }]],
    ]);
  });

  it('loads in laying order: what is laid first is on the first truck, spares last', () => {
    const list = { ...by({ pieces: 4 }), items: [{ sku: 'F', unit: 'each', price: '1' }, { sku: 'C', unit: 'each', price: '1' }] };
    const job = measuredJob({
      units: [unit('F', 3, { spare: 1, because: causes(['S2', 1, 3]) }), unit('C', 3, { kind: 'corner', because: causes(['S1', 2, 3]) })], concrete: storeys,
    });
    const { freight } = quoted(list, job);
    expect(freight?.deliveries[0]?.loads.map(({ contents }) => contents)).toEqual([
      [{ line: 3, sku: 'C', quantity: 3 }, { line: 1, sku: 'F', quantity: 1 }],
      [{ line: 1, sku: 'F', quantity: 2 }, { line: 2, sku: 'F', quantity: 1 }],
    ]);
  });

  const freightNote = (quote: Quote) => quote.scope.find(({ item }) => item === 'freight');
  it('says what is brought how, and what has no volume in the list', () => {
    expect(freightNote(quoted(by({ volumeM3: '1' })))).toEqual({ item: 'freight', status: 'included', note: 'To zone A on 4 trucks in 1 delivery, the last one 30 % full.' });
    const quote = quoted(by({ volumeM3: '1' }, { volumeM3: undefined }));
    expect([quote.freight?.notMeasured, quote.freight?.deliveries[0]?.trucks]).toEqual([['F'], 1]);
    expect(freightNote(quote)?.note).toContain('which the price list does not state: F.');
  });

  it.each([
    { place: 'Elsewhere', note: 'Elsewhere is in no zone of the price list: no freight is priced.' },
    { place: null, note: 'No place is stated: no freight is priced.' },
  ])('to $place is by others, said aloud', ({ place, note }) => {
    const quote = quoted(by({ volumeM3: '1' }), forms(10), { organisation: 'Us', place });
    expect([quote.freight, quote.lines.length, freightNote(quote)]).toEqual([null, 1, { item: 'freight', status: 'by others', note }]);
  });
});

describe('currencies', () => {
  it.each([
    // 10 x 0.125 in each: 1.25 yen is 1; 1.250 dinar is 1250 fils.
    { currency: 'JPY', price: '0.125', amount: 1, tax: 0 },
    { currency: 'KWD', price: '0.125', amount: 1_250, tax: 62 },
    { currency: 'JPY', price: '1250.5', amount: 12_505, tax: 625 },
  ])('10 at $price $currency: $amount, 5 % tax $tax', ({ currency, price: each, amount, tax }) => {
    const quote = quoted(withItem({ price: each }, { currency, taxes: [{ place: 'Town', rate: '0.05' }] }));
    expect([quote.lines[0]?.amountMinor, quote.taxMinor, quote.totalMinor]).toEqual([amount, tax, amount + tax]);
  });
});

describe('at the ends', () => {
  it('a line of price nought is a line', () => {
    expect(amounts(quoted(withItem({ price: '0', bundle: 12, breakBundle: '0.1' })))).toEqual([['unit', 12, 0, 0]]);
  });

  it('ten thousand lines add up', () => {
    const skus = Array.from({ length: 10_000 }, (_, n) => `X${n}`);
    const quote = quoted({ ...BARE, items: skus.map((sku, n) => ({ sku, unit: 'each', price: `${n}.005` })) }, measuredJob({ units: skus.map((sku) => unit(sku, 2)) }));
    // 2 x n.005 = 2n.01: the sum of 200 n + 1 for n below 10,000 is 200 x 49,995,000 + 10,000.
    expect([quote.lines.length, quote.totalMinor]).toEqual([10_000, 9_999_010_000]);
  });

  it.each([
    { name: 'a line', list: withItem({ price: '999999999' }), sku: 'F', bought: 2_000_000_000 },
    { name: 'their sum', list: { ...BARE, items: ['F', 'G'].map((sku) => ({ sku, unit: 'each', price: '80000000' })) }, sku: null, bought: 1_000_000 },
  ])('$name past exact counting is refused, not rounded', ({ list, sku, bought }) => {
    const job = measuredJob({ units: [unit('F', bought), ...(sku === null ? [unit('G', bought)] : [])] });
    expect(price(job, priceList(list), US, '2026-02-01')).toEqual({ ok: false, error: { code: 'amount-too-large', priceList: 'P', sku } });
  });

  it('more trucks than can be listed are refused', () => {
    const list = withItem({}, { freight: { truck: { pieces: 1 }, zones: [{ zone: 'A', places: ['Town'], perTruck: '1' }] } });
    expect(quoted(list, forms(10_000)).freight?.deliveries[0]?.trucks).toBe(10_000);
    expect(price(forms(10_001), priceList(list), US, '2026-02-01')).toEqual({ ok: false, error: { code: 'too-many-trucks', priceList: 'P', storey: null, most: 10_000 } });
  });

  it.each([
    { date: '2026-06-30', ok: true },
    { date: '2026-07-01', ok: false },
  ])('a list until 2026-06-30 on $date', ({ date, ok }) => {
    const result = price(forms(1), priceList({ ...BARE, inForceTo: '2026-06-30' }), US, date);
    expect(result.ok || result.error).toEqual(ok || { code: 'list-ended', priceList: 'P', inForceTo: '2026-06-30', date });
  });
});

describe('internal figures', () => {
  const list: PriceListDocument = {
    ...withItem({ cost: '6.10' }), items: [{ sku: 'F', unit: 'each', price: '10.00', cost: '6.10' }, { sku: 'G', unit: 'each', price: '1' }],
    minimumOrder: { amount: '200' }, freight: { truck: { pieces: 100 }, zones: [{ zone: 'A', places: ['Town'], perTruck: '60' }] },
  };
  const quote = quoted(list, measuredJob({ units: [unit('F', 10), unit('G', 10)] }));

  it('10 at 10.00 that cost 6.10: 61.00 and 39.00; the 90.00 of the minimum are all margin; no cost, no margin', () => {
    expect(internalFigures(quote, priceList(list))).toEqual({
      lines: [{ n: 1, costMinor: 6_100, marginMinor: 3_900 }, { n: 2, costMinor: null, marginMinor: null }, { n: 3, costMinor: 0, marginMinor: 9_000 }, { n: 4, costMinor: null, marginMinor: null }],
      costMinor: 6_100, marginMinor: 12_900, withoutCost: [2, 4],
    });
  });

  it('are nowhere in the quote', () => expect(JSON.stringify(quote)).not.toMatch(/6\.1|cost"|margin/i));
});
