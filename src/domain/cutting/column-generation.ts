import type { Nm } from '../quantity/length.js';
import { bestPattern } from './best-pattern.js';
import { fillLargest } from './fill-largest.js';
import { firstFitDecreasing } from './first-fit-decreasing.js';
import { stockLengths, type Packing, type Pattern, type SizeCount } from './packing.js';
import { PatternBasis } from './pattern-basis.js';

/** Branches of the knapsack for one pattern, and for a whole packing. */
const BRANCHES_PER_PATTERN = 20_000;
const BRANCHES_PER_PACKING = 2_000_000;
/** A pattern enters when it is worth this much more than the stock length it costs. */
const WORTH = 1e-7;
/** Duals are rounded to these denominators; the first keeps every fraction up to sixteenths exact. */
const DUAL_SCALES = [720_720, 1_000_000_000];

/**
 * Cutting patterns from the linear programme of Gilmore and Gomory, and the bound that comes with it.
 *
 * The programme buys patterns by fractions; its patterns' whole parts are taken, the rest of the demand is solved again, and
 * where nothing whole is left the pattern with the largest fraction is cut once. At every step the remainder is also packed by
 * the two heuristics and the best complete plan is kept. The bound is Farley's: the demand at any values of the sizes, divided by
 * the value of the best pattern, bounds the number of stock lengths; values and division are whole numbers, so no rounding
 * of the programme can lift it over the optimum.
 *
 * @param sizes    distinct sizes in descending order, none above the capacity [nm]
 * @param capacity room of one stock length                                    [nm]
 * @param known    a lower bound known already: a plan that meets it, or the new bound, ends the search
 * @returns the best packing met, and a lower bound (0 where no best pattern could be proven)
 * @source Gilmore & Gomory 1961, Oper. Res. 9, 849–859; Farley 1990, Oper. Res. 38, 922–923; from memory, checked against
 *         exhaustive search
 */
export function columnGeneration(sizes: readonly SizeCount[], capacity: Nm, known: number): { packing: Packing; bound: number } {
  const patterns: Pattern[] = [];
  let best: Packing = fillLargest(sizes, capacity);
  let bound = 0;
  let branches = 0;
  for (let left = sizes; left.length > 0 && branches < BRANCHES_PER_PACKING; ) {
    const { basis, spent } = solve(left, capacity, BRANCHES_PER_PACKING - branches);
    branches += spent;
    if (left === sizes) bound = farleyBound(left, basis.values(), capacity);
    const { taken, demand } = takeWhole(left, basis);
    patterns.push(...taken);
    left = demand;
    for (const rest of [firstFitDecreasing(left, capacity), fillLargest(left, capacity)]) {
      if (stockLengths(patterns) + stockLengths(rest) < stockLengths(best)) best = [...patterns, ...rest];
    }
    if (stockLengths(best) <= Math.max(known, bound)) break;
  }
  return { packing: best, bound };
}

function solve(sizes: readonly SizeCount[], capacity: Nm, allowed: number): { basis: PatternBasis; spent: number } {
  const basis = new PatternBasis(sizes, capacity);
  let spent = 0;
  while (spent < allowed) {
    const pattern = bestPattern(sizes, basis.values(), capacity, { gain: WORTH, branches: BRANCHES_PER_PATTERN });
    spent += pattern.branches + sizes.length * sizes.length;
    if (pattern.value <= 1 + WORTH || !basis.enter(pattern.counts)) break;
  }
  return { basis, spent };
}

function farleyBound(sizes: readonly SizeCount[], values: readonly number[], capacity: Nm): number {
  let bound = 0;
  for (const scale of DUAL_SCALES) {
    const whole = values.map((value) => Math.max(0, Math.round(value * scale)));
    const pattern = bestPattern(sizes, whole, capacity, { gain: 0.5, branches: 10 * BRANCHES_PER_PATTERN });
    if (!pattern.proven || pattern.value === 0) continue;
    const worth = sizes.reduce((sum, { count }, index) => sum + count * whole[index]!, 0);
    bound = Math.max(bound, (worth - (worth % pattern.value)) / pattern.value + (worth % pattern.value > 0 ? 1 : 0));
  }
  return bound;
}

/** Cuts the whole part of every pattern of the solution; where there is none, the pattern with the largest fraction once. */
function takeWhole(sizes: readonly SizeCount[], basis: PatternBasis): { taken: Pattern[]; demand: readonly SizeCount[] } {
  const counts = sizes.map(({ count }) => count);
  const taken: Pattern[] = [];
  const cut = (pattern: readonly number[], wanted: number): void => {
    const laid = wanted > 1 ? pattern : pattern.map((count, index) => Math.min(count, counts[index]!));
    const times = laid.reduce((most, count, index) => (count > 0 ? Math.min(most, Math.floor(counts[index]! / count)) : most), wanted);
    if (times < 1 || laid.every((count) => count === 0)) return;
    laid.forEach((count, index) => (counts[index]! -= times * count));
    taken.push({ sizes: sizes.flatMap(({ size }, index) => Array.from({ length: laid[index]! }, () => size)), times });
  };
  const bought = basis.solution();
  for (const { pattern, amount } of bought) cut(pattern, Math.floor(amount + WORTH));
  if (taken.length === 0) {
    const largest = bought.reduce((most, each) => (each.amount > most.amount + WORTH ? each : most));
    cut(largest.pattern, 1);
  }
  return { taken, demand: sizes.map(({ size }, index) => ({ size, count: counts[index]! })).filter(({ count }) => count > 0) };
}
