import { describe, expect, it } from '@jest/globals';
import { price } from '../../../src/domain/quote/pricing.js';
import type { MeasuredJob, Quote } from '../../../src/domain/quote/quote.js';
import { revisionDiff, type DiffCause, type DiffStep } from '../../../src/domain/quote/revision-diff.js';
import { measuredJob, priceList, unit, type PriceListDocument } from '../../support/priced-job.js';
import { randomQuote } from '../../support/random-quotes.js';
import { seededRandom } from '../../support/seeded-random.js';

const LIST: PriceListDocument = {
  format: 'wallcourse/prices@1', code: 'P', currency: 'USD', inForceFrom: '2026-01-01', validDays: 30,
  items: [{ sku: 'F', unit: 'each', price: '10.00' }, { sku: 'G', unit: 'each', price: '3.00' }, { sku: 'H', unit: 'each', price: '0' }], taxes: [{ place: 'Town', name: 'sales tax', rate: '0.10' }],
};

function quoted(job: MeasuredJob, list: PriceListDocument, customer = { organisation: 'N', place: 'Town' as string | null }): Quote {
  const result = price(job, priceList(list), customer, '2026-02-01');
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

describe('a revision whose schedule, prices and advice changed', () => {
  const before = measuredJob({ units: [unit('F', 10), unit('G', 4)] });
  const after = measuredJob({ units: [unit('F', 12), unit('H', 5)] });
  const dearer = { ...LIST, items: [{ sku: 'F', unit: 'each', price: '11.00' }, ...LIST.items.slice(1)] };
  const advised = measuredJob({ units: [unit('F', 11), unit('H', 5)] });
  const diff = revisionDiff([
    { cause: null, quote: quoted(before, LIST) },
    { cause: 'schedule', quote: quoted(after, LIST) },
    { cause: 'range', quote: quoted(after, LIST) },
    { cause: 'price', quote: quoted(after, dearer) },
    { cause: 'advice', quote: quoted(advised, dearer) },
  ]);

  it('names one cause for each change, taxes included', () => {
    expect(diff.ok && diff.value.changes.map(({ cause, kind, sku, before: was, after: is, deltaMinor }) => [cause, kind, sku, was && [was.quantity, was.unitPrice, was.amountMinor], is && [is.quantity, is.unitPrice, is.amountMinor], deltaMinor])).toEqual([
      // 10 to 12 forms at 10.00; a line of price nought is new all the same; 4 at 3.00 are gone; tax 11.20 to 12.00.
      ['schedule', 'unit', 'F', [10, '10.00', 10_000], [12, '10.00', 12_000], 2_000],
      ['schedule', 'unit', 'H', null, [5, '0', 0], 0],
      ['schedule', 'tax', 'sales tax', [1, '0.10', 1_120], [1, '0.10', 1_200], 80],
      ['schedule', 'unit', 'G', [4, '3.00', 1_200], null, -1_200],
      ['price', 'unit', 'F', [12, '10.00', 12_000], [12, '11.00', 13_200], 1_200],
      ['price', 'tax', 'sales tax', [1, '0.10', 1_200], [1, '0.10', 1_320], 120],
      ['advice', 'unit', 'F', [12, '11.00', 13_200], [11, '11.00', 12_100], -1_100],
      ['advice', 'tax', 'sales tax', [1, '0.10', 1_320], [1, '0.10', 1_210], -110],
    ]);
  });

  it('sums: 123.20 to 133.10 are 8.80 by the schedule, nothing by the range, 13.20 by prices, -12.10 by advice', () => {
    expect(diff.ok && [diff.value.causes, diff.value.deltaMinor]).toEqual([
      [{ cause: 'schedule', deltaMinor: 880 }, { cause: 'range', deltaMinor: 0 }, { cause: 'price', deltaMinor: 1_320 }, { cause: 'advice', deltaMinor: -1_210 }], 990,
    ]);
  });
});

describe('the ends of a diff', () => {
  const quote = quoted(measuredJob({ units: [unit('F', 1)] }), LIST);
  it('a quote after itself has no change', () => expect(revisionDiff([{ cause: null, quote }, { cause: 'rule', quote }])).toEqual({ ok: true, value: { changes: [], causes: [{ cause: 'rule', deltaMinor: 0 }], deltaMinor: 0 } }));

  it('another currency has no difference in money', () => {
    const other = quoted(measuredJob({ units: [unit('F', 1)] }), { ...LIST, currency: 'CAD' });
    expect(revisionDiff([{ cause: null, quote }, { cause: 'price', quote: other }])).toEqual({ ok: false, error: { code: 'currency-changed', before: 'USD', after: 'CAD' } });
  });

  it('freight is matched by storey', () => {
    const list = { ...LIST, freight: { truck: { pieces: 5 }, split: 'storey', zones: [{ zone: 'A', places: ['Town'], perTruck: '100' }] } };
    const job = (first: number, second: number): MeasuredJob => measuredJob({
      units: [unit('F', first + second, { because: [{ rule: 'r', storey: 'S1', wall: 'A', course: 1, quantity: first }, { rule: 'r', storey: 'S2', wall: 'A', course: 1, quantity: second }] })],
    });
    const diff = revisionDiff([{ cause: null, quote: quoted(job(5, 5), list) }, { cause: 'schedule', quote: quoted(job(4, 6), list) }]);
    expect(diff.ok && diff.value.changes.map(({ kind, storey, deltaMinor }) => [kind, storey, deltaMinor])).toEqual([['freight', 'S2', 10_000], ['tax', null, 1_000]]);
  });
});

describe('200 random revisions', () => {
  it('causes sum to the change of the total, changes of a cause to the cause, and a line is told once a cause', () => {
    const random = seededRandom(5);
    const causes: readonly DiffCause[] = ['rule', 'schedule', 'range', 'price', 'advice'];
    let changes = 0;
    for (let n = 0; n < 200; n++) {
      const steps: DiffStep[] = [null, ...causes].map((cause) => {
        const { job, document, organisation, place } = randomQuote(random);
        return { cause, quote: quoted(job, { ...document, currency: 'USD' }, { organisation, place }) };
      });
      const diff = revisionDiff(steps);
      if (!diff.ok) throw new Error(JSON.stringify(diff.error));
      const sum = (parts: readonly { readonly deltaMinor: number }[]): number => parts.reduce((total, { deltaMinor }) => total + deltaMinor, 0);
      const { value } = diff;
      const wrong = value.causes.filter(({ cause, deltaMinor }) => sum(value.changes.filter((change) => change.cause === cause)) !== deltaMinor);
      expect([wrong, sum(value.causes)]).toEqual([[], steps.at(-1)!.quote.totalMinor - steps[0]!.quote.totalMinor]);
      const keys = value.changes.map(({ cause, kind, sku, storey }) => JSON.stringify([cause, kind, sku, storey]));
      expect(new Set(keys).size).toBe(keys.length);
      changes += keys.length;
    }
    expect(changes).toBeGreaterThan(2_000);
  });
});
