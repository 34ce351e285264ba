import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { NM_PER_FOOT } from '../../../src/domain/quantity/length.js';
import { MINOR_DIGITS } from '../../../src/domain/quantity/money.js';
import { price } from '../../../src/domain/quote/pricing.js';
import type { MeasuredJob, Quote } from '../../../src/domain/quote/quote.js';
import type { PriceListDocument } from '../../support/priced-job.js';
import { material, measuredJob, priceList, unit } from '../../support/priced-job.js';
import { pricedByOracle, type OracleJob } from '../../oracles/price-oracle.js';
import { seededRandom, type SeededRandom } from '../../support/seeded-random.js';

interface RandomQuote {
  readonly document: PriceListDocument;
  readonly job: MeasuredJob;
  readonly plain: OracleJob;
  readonly place: string | null;
}

const CURRENCIES = ['USD', 'JPY', 'KWD', 'EUR'] as const;

function decimal(random: SeededRandom, whole: number, places: number): string {
  const digits = Array.from({ length: random.whole(0, places) }, () => random.whole(0, 9)).join('');
  return `${random.whole(0, whole)}${digits && `.${digits}`}`;
}

/** Prices with halves in them on purpose: many end in a five one place past the currency's digits. */
function priceText(random: SeededRandom, digits: number): string {
  if (random.chance(0.3)) return `${random.whole(0, 99)}.${'0'.repeat(digits)}5`;
  return decimal(random, 9_999, 8);
}

function randomQuote(random: SeededRandom): RandomQuote {
  const currency = random.pick(CURRENCIES);
  const skus = Array.from({ length: random.whole(1, 12) }, (_, n) => ({
    sku: `S${n}`, unit: n % 2 === 0 ? 'each' : 'pack', price: priceText(random, MINOR_DIGITS[currency]),
    ...(random.chance(0.5) ? { bundle: random.whole(1, 40) } : {}),
  }));
  const sold = { unit: skus.filter(({ unit: how }) => how === 'each'), pack: skus.filter(({ unit: how }) => how === 'pack') };
  const units = sold.unit.map(({ sku }) => ({ sku, bought: random.whole(0, 5_000), spare: random.whole(0, 60) }));
  const materials = sold.pack.map(({ sku }) => {
    const packFeet = random.whole(1, 200);
    const exact = random.chance(0.4);
    return { sku, nm: exact ? random.whole(1, 40) * packFeet * NM_PER_FOOT : random.whole(1, 3_000 * NM_PER_FOOT), packFeet };
  });
  return {
    document: {
      format: 'wallcourse/prices@1', code: 'R', currency, inForceFrom: '2026-01-01', validDays: 30, items: skus,
      taxes: [{ place: 'Here', rate: decimal(random, 0, 5) }],
    },
    job: measuredJob({
      units: units.map(({ sku, bought, spare }) => unit(sku, bought, { spare })),
      materials: materials.map(({ sku, nm, packFeet }) => material(sku, 'tape', nm / NM_PER_FOOT, { quantity: packFeet, unit: 'ft' })),
    }),
    plain: {
      units: units.map(({ sku, bought, spare }) => ({ sku, bought: BigInt(bought), spare: BigInt(spare) })),
      materials: materials.map(({ sku, nm, packFeet }) => ({ sku, amount: BigInt(nm), pack: BigInt(packFeet) * BigInt(NM_PER_FOOT) })),
    },
    place: random.chance(0.7) ? 'Here' : null,
  };
}

function quoted({ job, document, place }: Pick<RandomQuote, 'job' | 'document' | 'place'>): Quote {
  const result = price(job, priceList(document), { organisation: 'N', place }, '2026-02-01');
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

describe('2,000 random quotes', () => {
  const random = seededRandom(20_260_310);
  const quotes = Array.from({ length: 2_000 }, () => randomQuote(random));

  it('agree to the minor unit with a pricing by fractions of big integers', () => {
    let lines = 0;
    for (const given of quotes) {
      const { lines: priced, subtotalMinor, taxMinor, totalMinor } = quoted(given);
      const { place, document, plain } = given;
      const expected = pricedByOracle(plain, document.items, MINOR_DIGITS[document.currency as 'USD'], place === null ? null : document.taxes[0]!.rate);
      const byLine = new Map(priced.map(({ kind, sku, amountMinor }) => [`${kind} ${sku}`, amountMinor]));
      expect([...byLine.values()].map(BigInt).sort()).toEqual([...expected.amounts].sort());
      expect([subtotalMinor, taxMinor, totalMinor].map(BigInt)).toEqual([expected.subtotal, expected.tax, expected.total]);
      lines += priced.length;
    }
    expect(lines).toBeGreaterThan(10_000);
  });

  it('add up: the lines to the subtotal, subtotal and tax to the total', () => {
    for (const given of quotes) {
      const { lines, subtotalMinor, taxMinor, totalMinor } = quoted(given);
      expect(lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0)).toBe(subtotalMinor);
      expect(subtotalMinor + taxMinor).toBe(totalMinor);
      expect(lines.map(({ n }) => n)).toEqual(lines.map((_, index) => index + 1));
    }
  });

  it('sell whole bundles, enough for units and spares together, and less than a bundle too much', () => {
    for (const given of quotes) {
      const { lines } = quoted(given);
      for (const { sku, bought, spare } of given.job.takeoff.units) {
        const sold = lines.filter((line) => line.sku === sku);
        const total = sold.reduce((sum, { quantity }) => sum + quantity, 0);
        const bundle = given.document.items.find((item) => item.sku === sku)?.bundle ?? 1;
        expect(total).toBeGreaterThanOrEqual(bought + spare);
        expect(total - bought - spare).toBeLessThan(bundle);
        for (const { quantity } of sold) expect(quantity % bundle).toBe(0);
      }
    }
  });
});

describe('the order in which a job is told', () => {
  it('moves neither a line nor the total', () => {
    fc.assert(
      fc.property(fc.integer(), fc.func(fc.integer()), (seed, rank) => {
        const given = randomQuote(seededRandom(seed));
        const units = [...given.job.takeoff.units].sort((a, b) => rank(a.sku) - rank(b.sku));
        const shuffled = { ...given, job: measuredJob({ units, materials: given.job.materials }) };
        expect(quoted(shuffled)).toEqual(quoted(given));
      }),
      { numRuns: 200 },
    );
  });
});
