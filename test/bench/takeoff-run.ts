import { readFileSync } from 'node:fs';
import { measure, measureEach, type Measurement } from '../../src/domain/pipeline.js';
import { price } from '../../src/domain/quote/pricing.js';
import { readPriceList } from '../../src/domain/quote/read-price-list.js';
import type { PriceList } from '../../src/domain/quote/price-list.js';
import { readRange } from '../../src/domain/range/read-range.js';
import type { FormRange } from '../../src/domain/range/range.js';
import type { Schedule } from '../../src/domain/schedule/schedule.js';
import { estate, houseByHouse } from './estate.js';

/** What one run says of itself. Times are of take-off, rules, checks and price together, without making the schedule [ms]. */
export interface RunReport {
  readonly walls: number;
  readonly ms: readonly number[];
  readonly peakMb: number;
  readonly forms: number;
  readonly lowerBound: number;
  readonly bondBreaks: number;
  readonly totalMinor: number;
}

const sample = (file: string): unknown => JSON.parse(readFileSync(new URL(`../../shared/samples/${file}`, import.meta.url), 'utf8'));

function valueOf<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

interface Counted {
  readonly forms: number;
  readonly lowerBound: number;
  readonly bondBreaks: number;
  readonly totalMinor: number;
}

/** Everything the answer rests on is made; three totals are kept. */
function quoted(measured: Measurement, lengthUnit: Schedule['units'], list: PriceList): Counted {
  const quote = valueOf(price({ ...measured, lengthUnit }, list, { organisation: 'Bench', place: null }, '2026-06-01'));
  return {
    forms: measured.takeoff.units.reduce((sum, { bought }) => sum + bought, 0),
    lowerBound: measured.takeoff.units.reduce((sum, { lowerBound }) => sum + lowerBound, 0),
    bondBreaks: measured.takeoff.bondBreaks.length,
    totalMinor: quote.totalMinor,
  };
}

const plus = (a: Counted, b: Counted): Counted => ({
  forms: a.forms + b.forms,
  lowerBound: a.lowerBound + b.lowerBound,
  bondBreaks: a.bondBreaks + b.bondBreaks,
  totalMinor: a.totalMinor + b.totalMinor,
});

/** One job, taken off again and again in one process: the first time is a cold start. */
function asOneJob(walls: number, times: number, range: FormRange, list: PriceList): Omit<RunReport, 'peakMb'> {
  const schedule = estate(walls);
  const ms: number[] = [];
  let counted: Counted = { forms: 0, lowerBound: 0, bondBreaks: 0, totalMinor: 0 };
  for (let time = 0; time < times; time++) {
    const begun = performance.now();
    counted = quoted(measure(schedule, range), schedule.units, list);
    ms.push(performance.now() - begun);
  }
  return { walls: schedule.walls.length, ms, ...counted };
}

/** House by house from a generator, the totals folded, nothing kept. The time is of everything, making the houses included. */
function streamed(walls: number, range: FormRange, list: PriceList): Omit<RunReport, 'peakMb'> {
  let count = 0;
  let counted: Counted = { forms: 0, lowerBound: 0, bondBreaks: 0, totalMinor: 0 };
  const begun = performance.now();
  for (const measured of measureEach(houseByHouse(walls), range)) {
    counted = plus(counted, quoted(measured, 'in', list));
    count += measured.takeoff.laid.storeys.reduce((sum, storey) => sum + storey.walls.length, 0);
  }
  return { walls: count, ms: [performance.now() - begun], ...counted };
}

const [kind, walls, times] = process.argv.slice(2);
const range = valueOf(readRange(sample('heron-16.range.json')));
const list = valueOf(readPriceList(sample('prices.json')));
const report = kind === 'streamed' ? streamed(Number(walls), range, list) : asOneJob(Number(walls), Number(times), range, list);
console.log(JSON.stringify({ ...report, peakMb: process.resourceUsage().maxRSS / 1024 }));
