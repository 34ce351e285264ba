import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { price } from '../../../src/domain/quote/pricing.js';
import type { Quote } from '../../../src/domain/quote/quote.js';
import { internalFigures } from '../../../src/domain/quote/internal-figures.js';
import { pricedByOracle } from '../../oracles/price-oracle.js';
import { measuredJob, priceList, unit } from '../../support/priced-job.js';
import { agrees } from '../../support/priced-twice.js';
import { randomQuote, type RandomQuote } from '../../support/random-quotes.js';
import { seededRandom } from '../../support/seeded-random.js';

function quoted({ job, document, organisation, place }: Pick<RandomQuote, 'job' | 'document' | 'organisation' | 'place'>): Quote {
  const result = price(job, priceList(document), { organisation, place }, '2026-02-01');
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const rows = <T>(list: readonly T[], rank: (n: number) => number): readonly T[] =>
  list.map((each, n) => ({ each, rank: rank(n) })).sort((a, b) => a.rank - b.rank).map(({ each }) => each);

describe('10,000 random quotes', () => {
  it('agree to the minor unit, line by line and tax by tax, with a pricing by fractions of big integers, and add up', () => {
    const random = seededRandom(20_260_310);
    const met = { lines: 0, loose: 0, whole: 0, minimum: 0, freight: 0, customer: 0, tier: 0, break: 0, discount: 0, taxes: 0, exempt: 0 };
    for (let n = 0; n < 10_000; n++) {
      const given = randomQuote(random);
      const quote = quoted(given);
      const { wrong } = agrees(quote, pricedByOracle(given.plain, given.document, given.digits, given.organisation, given.place));
      if (wrong !== null) throw new Error(`quote ${n}: ${wrong}`);
      met.lines += quote.lines.length;
      for (const line of quote.lines) {
        if (line.looseQuantity > 0) met.loose += 1;
        if (line.selling.broken?.sold === 'whole') met.whole += 1;
        if (line.kind === 'minimum' || line.kind === 'freight') met[line.kind] += 1;
        if (line.audience !== 'list') met[line.audience] += 1;
        if (line.break) met.break += 1;
        if (line.discountRate !== null) met.discount += 1;
      }
      if (quote.taxes.length > 1) met.taxes += 1;
      if (quote.tax.reason === 'exempt') met.exempt += 1;
    }
    // Every feature is met often, so that agreement says something about each.
    expect(Object.entries(met).filter(([, count]) => count < 500)).toEqual([]);
  });
});

describe('properties', () => {
  const seeds = { numRuns: 60 };

  it('neither the order of the job, of items nor of any other list of the price list moves anything', () => {
    fc.assert(
      fc.property(fc.integer(), fc.func(fc.integer()), (seed, rank) => {
        const given = randomQuote(seededRandom(seed));
        const { document } = given;
        const job = { ...given.job, takeoff: { ...given.job.takeoff, units: rows(given.job.takeoff.units, rank) } };
        const shuffled = { ...document, items: rows(document.items, rank), customers: rows(document.customers ?? [], rank), discounts: rows(document.discounts ?? [], rank) };
        expect(quoted({ ...given, job, document: shuffled })).toEqual(quoted(given));
      }),
      seeds,
    );
  });

  it('nothing depends on how a sum of doubles came about: causes told in another order load the same trucks', () => {
    fc.assert(
      fc.property(fc.integer(), fc.func(fc.integer()), (seed, rank) => {
        const given = randomQuote(seededRandom(seed));
        const materials = given.job.materials.map((line) => ({ ...line, because: rows(line.because, rank) }));
        const { freight, totalMinor } = quoted({ ...given, job: { ...given.job, materials } });
        const expected = quoted(given);
        expect([freight, totalMinor]).toEqual([expected.freight, expected.totalMinor]);
      }),
      seeds,
    );
  });

  it('more of a sku never costs more per unit where no break says so', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 60 }), (quantity, more) => {
        const document = { format: 'wallcourse/prices@1' as const, code: 'R', currency: 'USD', inForceFrom: '2026-01-01', validDays: 1, items: [{ sku: 'S', unit: 'each', price: '3.10', breaks: [{ from: 50, price: '3' }, { from: 200, price: '2.75' }] }], taxes: [] };
        const unitPrice = (count: number): number => Number(quoted({ document, job: measuredJob({ units: [unit('S', count)] }), organisation: 'N', place: null }).lines[0]!.unitPrice);
        const crosses = [50, 200].some((from) => quantity < from && quantity + more >= from);
        if (crosses) expect(unitPrice(quantity + more)).toBeLessThan(unitPrice(quantity));
        else expect(unitPrice(quantity + more)).toBe(unitPrice(quantity));
      }),
      { numRuns: 200 },
    );
  });

  it('whole bundles and packs cover the job, with less than a bundle of each sku too much', () => {
    const random = seededRandom(7);
    for (let n = 0; n < 300; n++) {
      const given = randomQuote(random);
      const { lines } = quoted(given);
      for (const { sku, bought, spare } of given.job.takeoff.units) {
        const total = lines.filter((line) => line.sku === sku).reduce((sum, { quantity }) => sum + quantity, 0);
        const bundle = given.document.items.find((item) => item.sku === sku)?.bundle ?? 1;
        expect(total >= bought + spare && total - bought - spare < bundle).toBe(true);
      }
    }
  });

  it('cost and margin of a line sum to its amount', () => {
    const random = seededRandom(8);
    for (let n = 0; n < 100; n++) {
      const given = randomQuote(random);
      const document = { ...given.document, items: given.document.items.map((item, index) => (index % 3 === 0 ? item : { ...item, cost: '0.37' })) };
      const quote = quoted({ ...given, document });
      const figures = internalFigures(quote, priceList(document));
      const costed = quote.lines.filter((line) => !figures.withoutCost.includes(line.n));
      expect(figures.costMinor + figures.marginMinor).toBe(costed.reduce((sum, { amountMinor }) => sum + amountMinor, 0));
      expect(quote.lines.filter(({ kind }) => kind === 'freight').every((line) => figures.withoutCost.includes(line.n))).toBe(true);
    }
  });
});
