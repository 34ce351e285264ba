import type { Nm } from '../quantity/length.js';
import { generateColumns } from './column-generation.js';
import type { Budget } from './effort.js';
import { fillLargest } from './fill-largest.js';
import { firstFitDecreasing } from './first-fit-decreasing.js';
import { stockLengths, type Packing, type Pattern, type SizeCount } from './packing.js';
import type { Bought, PatternMaster } from './pattern-master.js';

const ALMOST = 1e-6;
const DUAL_STEPS = 500;
/** One pattern is fixed for so many stock lengths that are still to be bought; at the end one at a time. */
const STOCKS_PER_FIX = 12;
/** Most of what is left of the budget that new patterns may cost after a fix. */
const PRICING_SHARE = 0.1;
/** The rest is packed by the constructive heuristics whenever it has shrunk so far, and every time when it is this small. */
const SHRUNK = 0.8;
const SMALL = 12;

type Left = readonly { readonly size: Nm; count: number }[];

/**
 * Whole counts from the programme's fractions: whole parts are cut first, then the patterns with the largest fractions once, and
 * the programme is put right for what is left, with new patterns where the rest makes some worth entering. On the way the rest is
 * also packed by the constructive heuristics; the best whole plan met is returned. The programme is used up.
 *
 * @param search `target`: a plan of so few stock lengths ends the search; `best`: the plan to beat
 * @source diving on the largest fraction, common practice, no source
 */
export function integerMaster(
  master: PatternMaster,
  sizes: readonly SizeCount[],
  capacity: Nm,
  search: { readonly target: number; readonly best: Packing; readonly budget: Budget },
): Packing {
  const { target, budget } = search;
  let { best } = search;
  const left: Left = sizes.map(({ size, count }) => ({ size, count }));
  const laid: Pattern[] = [];
  let tried = Infinity;
  while (stockLengths(best) > target && !budget.spent) {
    for (const { column, amount } of chosen(master.solution())) laid.push(...lay(left, column.rows, column.counts, amount));
    const rest = left.filter(({ count }) => count > 0);
    if (rest.length === 0) return fewer(best, laid);
    putRight(master, left, capacity, budget);
    if (master.bought < tried * SHRUNK || master.bought < SMALL) {
      tried = master.bought;
      for (const packing of [firstFitDecreasing(rest, capacity), fillLargest(rest, capacity)]) best = fewer(best, [...laid, ...packing]);
    }
    if (stockLengths(laid) + Math.ceil(master.bought - ALMOST) >= stockLengths(best)) break;
  }
  return best;
}

const fewer = (best: Packing, other: Packing): Packing => (stockLengths(other) < stockLengths(best) ? other : best);

function putRight(master: PatternMaster, left: Left, capacity: Nm, budget: Budget): void {
  const done = master.work;
  master.lower(left.map(({ count }) => count), DUAL_STEPS);
  budget.spend(master.work - done);
  generateColumns(master, left, capacity, budget.share(PRICING_SHARE));
}

/** Whole parts where there are any; else the largest fractions, once each. */
function chosen(solution: readonly Bought[]): readonly Bought[] {
  const whole = solution.filter(({ amount }) => amount >= 1 - ALMOST).map(({ column, amount }) => ({ column, amount: Math.floor(amount + ALMOST) }));
  if (whole.length > 0) return whole;
  const rest = solution.reduce((sum, { amount }) => sum + amount, 0);
  const falling = [...solution].sort((a, b) => b.amount - a.amount);
  return falling.slice(0, Math.max(1, Math.floor(rest / STOCKS_PER_FIX))).map(({ column }) => ({ column, amount: 1 }));
}

/** Lays a pattern so many times, at the end without the parts there are no more of. */
function lay(left: Left, rows: readonly number[], counts: readonly number[], wanted: number): readonly Pattern[] {
  const laid: Pattern[] = [];
  for (let still = wanted; still > 0; ) {
    const clipped = rows.map((row, place) => Math.min(counts[place]!, left[row]!.count));
    if (clipped.every((count) => count === 0)) break;
    const times = rows.reduce((most, row, place) => (clipped[place]! > 0 ? Math.min(most, Math.floor(left[row]!.count / clipped[place]!)) : most), still);
    rows.forEach((row, place) => (left[row]!.count -= times * clipped[place]!));
    laid.push({ sizes: rows.flatMap((row, place) => Array.from({ length: clipped[place]! }, () => left[row]!.size)), times });
    still -= times;
  }
  return laid;
}
