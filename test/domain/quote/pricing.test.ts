import { NM_PER_INCH } from '../../../src/domain/quantity/length.js';
import { describe, expect, it } from '@jest/globals';
import { CAUTIONS } from '../../../src/domain/evidence/cautions.js';
import { finding } from '../../../src/domain/evidence/finding.js';
import { price } from '../../../src/domain/quote/pricing.js';
import type { Customer, MeasuredJob, Quote } from '../../../src/domain/quote/quote.js';
import { material, measuredJob, PRICES, priceList, unit } from '../../support/priced-job.js';

const ALDER: Customer = { organisation: 'Northgate Builders', place: 'Alder County' };
const DATE = '2026-03-10';

function quoted(job: MeasuredJob, customer = ALDER, list = priceList()): Quote {
  const result = price(job, list, customer, DATE);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const TAPE = { quantity: 150, unit: 'ft' } as const;
const STRAP = { quantity: 8, unit: 'ft' } as const;
const WIRE = { quantity: 500, unit: 'each' } as const;

describe('a quote, worked by hand', () => {
  const job = measuredJob({
    units: [
      unit('EC6', 12, { kind: 'end-closure' }),
      unit('ST6', 30, { spare: 1, pieces: 36 }),
      unit('SQ6-L', 10, { kind: 'corner', hand: 'left' }),
    ],
    materials: [material('TAPE-4', 'tape', 310.5, TAPE), material('STRAP-1x3', 'strap', 40, STRAP), material('WIRE-16', 'wire-tie', 16, WIRE), material('FOAM-24', 'foam', 40.25, { quantity: 60, unit: 'ft' })],
  });
  const quote = quoted(job);

  it('has a line for each sku, spares on a line of their own, units before materials', () => {
    expect(quote.lines.map(({ n, kind, sku, quantity, unit: sold, unitPrice, amountMinor }) => [n, kind, sku, quantity, sold, unitPrice, amountMinor])).toEqual([
      [1, 'unit', 'ST6', 36, 'each', '23.40', 84_240],
      [2, 'spare', 'ST6', 0, 'each', '23.40', 0],
      [3, 'unit', 'SQ6-L', 12, 'each', '29.25', 35_100],
      [4, 'unit', 'EC6', 12, 'each', '2.80', 3_360],
      [5, 'material', 'TAPE-4', 3, 'pack', '18.60', 5_580],
      [6, 'material', 'STRAP-1x3', 8, 'pack', '2.15', 1_720],
      [7, 'material', 'WIRE-16', 1, 'pack', '14.25', 1_425],
      [8, 'material', 'FOAM-24', 41, 'ft', '0.315', 1_292],
    ]);
  });

  it('adds up: 84240 + 35100 + 3360 + 5580 + 1720 + 1425 + 1292 = 132717; 8 1/4 % of it is 10949.1525', () => {
    expect([quote.subtotalMinor, quote.taxMinor, quote.totalMinor]).toEqual([132_717, 10_949, 143_666]);
    expect(quote.tax).toEqual({ place: 'Alder County', rate: '0.0825', reason: null });
  });

  it('holds thirty days from its date', () => expect([quote.date, quote.validUntil]).toEqual(['2026-03-10', '2026-04-09']));

  it('says in words what is sold', () => {
    expect(quote.lines.map(({ text }) => text)).toEqual([
      'Straight form, core 6',
      'Spare straight form, core 6: 1, of which 1 comes with the bundles above',
      'Square corner form, core 6, left hand',
      'End closure, core 6',
      'Tape 4 in, pack of 150 ft',
      'Strap 4 in, pack of 8 ft',
      'Wire ties 4 in, pack of 500',
      'Adhesive foam 4 in',
    ]);
  });

  it('traces every line to what caused it', () => {
    expect(quote.lines.map(({ because }) => because)).toEqual([
      [{ rule: 'course', storey: 'S1', wall: 'A', course: 1, quantity: 30 }],
      [{ rule: 'spare-forms', storey: null, wall: null, course: null, quantity: 1 }],
      [{ rule: 'course', storey: 'S1', wall: 'A', course: 1, quantity: 10 }],
      [{ rule: 'course', storey: 'S1', wall: 'A', course: 1, quantity: 12 }],
      [{ rule: 'end-closure', storey: 'S1', wall: 'A', course: 1, quantity: 310.5 }],
      [{ rule: 'end-closure', storey: 'S1', wall: 'A', course: 1, quantity: 40 }],
      [{ rule: 'end-closure', storey: 'S1', wall: 'A', course: 1, quantity: 16 }],
      [{ rule: 'end-closure', storey: 'S1', wall: 'A', course: 1, quantity: 40.25 }],
    ]);
  });

  it('traces quantities from need to sale: before and after packs and bundles', () => {
    expect(quote.lines[0]?.selling).toEqual({ needed: 30, neededUnit: 'each', pack: null, covered: 0, beforeBundling: 30, bundle: 12, afterBundling: 36 });
    expect(quote.lines[1]?.selling).toEqual({ needed: 1, neededUnit: 'each', pack: null, covered: 1, beforeBundling: 0, bundle: 12, afterBundling: 0 });
    expect(quote.lines[4]?.selling).toEqual({ needed: 310.5, neededUnit: 'ft', pack: 150, covered: 0, beforeBundling: 3, bundle: null, afterBundling: 3 });
    expect(quote.lines[5]?.selling).toEqual({ needed: 40, neededUnit: 'ft', pack: 8, covered: 0, beforeBundling: 5, bundle: 8, afterBundling: 8 });
  });

  it('carries the cautions and never the cost', () => {
    expect(quote.cautions).toEqual(CAUTIONS);
    expect(JSON.stringify(quote)).not.toContain('14.05');
  });
});

describe('spares and bundles', () => {
  it.each([
    { bought: 24, spare: 1, lines: [24, 12], why: 'no rest: a bundle for the spare' },
    { bought: 23, spare: 1, lines: [24, 0], why: 'the rest of one form is the spare' },
    { bought: 23, spare: 2, lines: [24, 12], why: 'one spare is over, and is sold by the dozen' },
    { bought: 0, spare: 3, lines: [12], why: 'spares alone' },
    { bought: 12, spare: 0, lines: [12], why: 'a whole bundle' },
  ])('$bought + $spare spare: $lines ($why)', ({ bought, spare, lines }) => {
    expect(quoted(measuredJob({ units: [unit('ST6', bought, { spare })] })).lines.map(({ quantity }) => quantity)).toEqual(lines);
  });
});

describe('packs', () => {
  it.each([
    { feet: 150, packs: 1 },
    { feet: 300, packs: 2 },
    { feet: 150.000001, packs: 2 },
    { feet: 46 / 12 + 46 / 12 + 46 / 12, packs: 1 },
    { feet: 450 - 1e-7, packs: 3 },
  ])('$feet ft of tape is $packs packs', ({ feet, packs }) => {
    expect(quoted(measuredJob({ materials: [material('TAPE-4', 'tape', feet, TAPE)] })).lines[0]?.quantity).toBe(packs);
  });
});

describe('bars', () => {
  it('are priced by the whole stock bar their pieces are cut from, once for the job, and the trace says so', () => {
    const list = priceList({ ...PRICES, items: [...PRICES.items, { sku: 'BAR-4', unit: 'pack', price: '9.85' }] });
    const bar = { ...material('BAR-4', 'bar', 138, { quantity: 20, unit: 'ft' as const }), pieces: [{ length: 46 * NM_PER_INCH, count: 36 }] };
    const result = price(measuredJob({ materials: [bar] }), list, ALDER, DATE);
    expect(result.ok && result.value.lines[0]).toMatchObject({
      quantity: 8, amountMinor: 7_880, text: 'Reinforcing bar 4 in, bars of 20 ft cut into 36 pieces',
      selling: { needed: 138, neededUnit: 'ft', pack: 20, cutting: { stockMm: 6096, pieces: [{ lengthMm: 1168.4, count: 36 }], lowerBound: 8 }, beforeBundling: 8 },
    });
  });
});

describe('tax', () => {
  const job = measuredJob({ units: [unit('EC6', 10)] });
  it.each([
    { customer: { organisation: 'N' }, tax: { place: null, rate: null, reason: 'place-not-stated' } },
    { customer: { organisation: 'N', place: 'Elsewhere' }, tax: { place: 'Elsewhere', rate: null, reason: 'place-not-listed' } },
  ])('none for $customer, and the quote says why', ({ customer, tax }) => {
    const quote = quoted(job, customer);
    expect([quote.tax, quote.taxMinor, quote.totalMinor]).toEqual([tax, 0, 2_800]);
  });
});

describe('what keeps a job from being priced', () => {
  it('everything that is missing at once, with the lines that need it, and never a price of nought', () => {
    const job = measuredJob({ units: [unit('ST10', 7, { spare: 1 }), unit('ST6', 1)], materials: [material('BAR-4', 'bar', 12, { quantity: 20, unit: 'ft' })] });
    const result = price(job, priceList(), ALDER, DATE);
    expect(result).toEqual({
      ok: false,
      error: {
        code: 'not-priced',
        priceList: 'TEST-1',
        items: [
          { sku: 'ST10', reason: 'not-listed', listedUnit: null, needed: 7, neededUnit: 'each', because: [{ rule: 'course', storey: 'S1', wall: 'A', course: 1, quantity: 7 }] },
          { sku: 'ST10', reason: 'not-listed', listedUnit: null, needed: 1, neededUnit: 'each', because: [{ rule: 'spare-forms', storey: null, wall: null, course: null, quantity: 1 }] },
          { sku: 'BAR-4', reason: 'not-listed', listedUnit: null, needed: 12, neededUnit: 'ft', because: [{ rule: 'end-closure', storey: 'S1', wall: 'A', course: 1, quantity: 12 }] },
        ],
      },
    });
  });

  it.each([
    { sku: 'ST6', sold: 'ft', job: measuredJob({ units: [unit('ST6', 7)] }) },
    { sku: 'ST6', sold: 'pack', job: measuredJob({ units: [unit('ST6', 7)] }) },
    { sku: 'TAPE-4', sold: 'each', job: measuredJob({ materials: [material('TAPE-4', 'tape', 12, TAPE)] }) },
    { sku: 'WIRE-16', sold: 'ft', job: measuredJob({ materials: [material('WIRE-16', 'wire-tie', 12, WIRE)] }) },
  ])('$sku sold by $sold cannot be counted', ({ sku, sold, job }) => {
    const list = priceList({ ...PRICES, items: PRICES.items.map((item) => (item.sku === sku ? { sku, unit: sold, price: item.price } : item)) });
    const result = price(job, list, ALDER, DATE);
    expect(result.ok ? [] : result.error).toMatchObject({ code: 'not-priced', items: [{ sku, reason: 'sold-otherwise', listedUnit: sold }] });
  });

  it('a list that is not yet in force', () => {
    expect(price(measuredJob(), priceList(), ALDER, '2025-12-31')).toEqual({
      ok: false, error: { code: 'list-not-in-force', priceList: 'TEST-1', inForceFrom: '2026-01-01', date: '2025-12-31' },
    });
  });
});

describe('conditions', () => {
  it('prints every finding with its place, in the units of the schedule', () => {
    const findings = [
      finding('turn-not-made', { storey: 'S1', walls: ['A', 'B'], numbers: { turnDeg: 112.4, core: '6' } }),
      finding('site-not-stated'),
      finding('seam', { storey: 'S1', wall: 'A', atMm: 1219.2 }),
    ];
    const quote = quoted(measuredJob({ findings, lengthUnit: 'mm' }));
    expect(quote.conditions.map(({ severity, finding: cause }) => [severity, cause])).toEqual([['hold', findings[0]], ['note', findings[1]], ['note', findings[2]]]);
    expect(quote.conditions[0]?.text).toMatch(/^Storey S1, walls A and B: .*112\.4°.*core 6\.$/);
    expect(quote.conditions[1]?.text).toMatch(/^The schedule states no site/);
    expect(quote.conditions[2]?.text).toMatch(/^Storey S1, wall A, at 1219 mm along its axis: /);
  });
});
