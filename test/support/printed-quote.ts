import { finding } from '../../src/domain/evidence/finding.js';
import type { QuotePdfInput } from '../../src/domain/drawing/index.js';
import { price } from '../../src/domain/quote/pricing.js';
import { readPriceList } from '../../src/domain/quote/read-price-list.js';
import type { Quote } from '../../src/domain/quote/quote.js';
import { PRICES, material, measuredJob, unit } from './priced-job.js';

/** A quote of a given number of lines, priced from the small invented list with skus of its own. */
export function quoteOfLines(count: number): Quote {
  const skus = Array.from({ length: count - 1 }, (_, i) => `ST6-${String(i + 1).padStart(3, '0')}`);
  const list = readPriceList({
    ...PRICES,
    items: [...PRICES.items, ...skus.map((sku, i) => ({ sku, unit: 'each', price: `${i + 1}.0${i % 10}` }))],
  });
  if (!list.ok) throw new Error(JSON.stringify(list.error));
  const job = measuredJob({
    units: skus.map((sku, i) => unit(sku, ((i * 37) % 1500) + 1, i % 3 === 0 ? { kind: 'corner', hand: 'left' } : {})),
    materials: [material('TAPE-4', 'tape', 310.5, { quantity: 150, unit: 'ft' })],
    concrete: [{ storey: 'S1', nm3: 0n, orderYd3: 30.25 }],
    findings: [
      finding('turn-not-made', { storey: 'S1', walls: ['A', 'B'], numbers: { turnDeg: 112.4, core: '6' } }),
      finding('core-change', { storey: 'S1', walls: ['C', 'D'], numbers: { core: '6', otherCore: '8' } }),
      finding('seam', { storey: 'S1', wall: 'A', course: 3, atMm: 1016, numbers: { remainderMm: 12.7 } }),
      finding('site-not-stated', {}),
    ],
  });
  const quote = price(job, list.value, { organisation: 'Northgate Builders', place: 'Alder County' }, '2026-03-10');
  if (!quote.ok) throw new Error(JSON.stringify(quote.error));
  if (quote.value.lines.length !== count) throw new Error(`${quote.value.lines.length} lines where ${count} were wanted`);
  return quote.value;
}

export const printed = (quote: Quote, changes: Partial<QuotePdfInput> = {}): QuotePdfInput => ({
  quote,
  number: 'Q-000045',
  revision: 2,
  state: 'issued',
  job: { number: 'J-000123', name: 'Harbour clinic, block B' },
  supplier: { name: 'Heron Form Supply (demo)', lines: ['14 Quay Street, Alder', 'orders@heron.example'] },
  openHolds: [],
  plans: [],
  elevations: [],
  paper: 'letter',
  createdAt: new Date('2026-03-10T15:00:00Z'),
  ...changes,
});
