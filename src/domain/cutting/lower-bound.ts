import type { Nm } from '../quantity/length.js';
import type { SizeCount } from './packing.js';

const LARGEST_K = 60;
/** φ costs a pass over the large sizes for each threshold; the smallest thresholds are tried, which any bound may. */
const PHI_THRESHOLDS = 100;

/**
 * A number of stock lengths below which no cutting plan can go: the greatest of
 *
 * - the material bound ⌈Σ s / C⌉ and Martello and Toth's L2 over every threshold;
 * - Fekete and Schepers's dual feasible functions u(k) ∘ U(ε) for k = 1 … 60, and φ(ε), over every threshold ε.
 *
 * A dual feasible function maps sizes so that parts which fit one stock length still fit one of length 1; the sum of the
 * mapped sizes is then a lower bound, and so is its round-up. All sums are integers over a common denominator.
 *
 * @equation u(k)(x) = x where (k+1)·x is whole, else ⌊(k+1)·x⌋ / k
 * @equation U(ε)(x) = 1 for x > 1 − ε; x for ε ≤ x ≤ 1 − ε; 0 for x < ε
 * @equation φ(ε)(x) = 1 − ⌊(1 − x)/ε⌋ / ⌊1/ε⌋ for x > ½; 1 / ⌊1/ε⌋ for ε ≤ x ≤ ½; 0 for x < ε
 * @param sizes    distinct sizes in descending order, kerf added, none above the capacity [nm]
 * @param capacity stock + kerf                                                            [nm]
 * @param known    a packing of so many is known: no bound is higher, and nothing is looked for where it is met
 * @valid    Σ size · count < 2^53 and 61 · capacity < 2^53
 * @source   Martello & Toth 1990, Knapsack Problems, ch. 8, L2; Fekete & Schepers 2001, Math. Program. 91, 11–31; from memory,
 *           checked against exhaustive search
 */
export function lowerBound(sizes: readonly SizeCount[], capacity: Nm, known = Infinity): number {
  if (sizes.length === 0) return 0;
  const stretches = stretchesOf(sizes, capacity);
  let bound = martelloTothL2(sizes, capacity, stretches);
  for (let k = 1; k <= LARGEST_K && bound < known; k++) bound = Math.max(bound, steppedBound(sizes, capacity, k, stretches));
  return bound < known ? Math.max(bound, complementBound(sizes, capacity)) : bound;
}

/** The material bound and L2 alone. */
export const cheapBound = (sizes: readonly SizeCount[], capacity: Nm): number =>
  sizes.length === 0 ? 0 : martelloTothL2(sizes, capacity, stretchesOf(sizes, capacity));

/** For a threshold ε, how many of the descending sizes are above 1 − ε, and how many reach ε. */
interface Stretch {
  readonly alone: number;
  readonly end: number;
}

function stretchesOf(sizes: readonly SizeCount[], capacity: Nm): readonly Stretch[] {
  return thresholds(sizes, capacity).map((threshold) => ({
    alone: leading(sizes, (size) => size > capacity - threshold),
    end: leading(sizes, (size) => size >= threshold),
  }));
}

/** ⌈a / b⌉ of whole numbers, without a rounded quotient. */
const ceilOf = (a: number, b: number): number => (a - (a % b)) / b + (a % b > 0 ? 1 : 0);

/** Thresholds ε worth trying: each size up to half the capacity, and nothing left out at all. */
const thresholds = (sizes: readonly SizeCount[], capacity: Nm): readonly Nm[] =>
  [0, ...sizes.map(({ size }) => size).filter((size) => size * 2 <= capacity)];

/** Running sums of a weight over the descending sizes: `sums[i]` covers the first i of them. */
function runningSums(sizes: readonly SizeCount[], weight: (size: Nm) => number): readonly number[] {
  const sums = [0];
  let sum = 0;
  for (const { size, count } of sizes) {
    sum += weight(size) * count;
    sums.push(sum);
  }
  return sums;
}

/** How many of the descending sizes pass a test that the larger ones pass first. */
function leading(sizes: readonly SizeCount[], passes: (size: Nm) => boolean): number {
  let low = 0;
  let high = sizes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (passes(sizes[middle]!.size)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Large parts need a stock length each; what the middle ones leave beside them is all the small ones can use. */
function martelloTothL2(sizes: readonly SizeCount[], capacity: Nm, stretches: readonly Stretch[]): number {
  const counts = runningSums(sizes, () => 1);
  const lengths = runningSums(sizes, (size) => size);
  const half = leading(sizes, (size) => size * 2 > capacity);
  let bound = counts[half]!;
  for (const { alone, end } of stretches) {
    const overhang = lengths[end]! - lengths[alone]! - (counts[half]! - counts[alone]!) * capacity;
    bound = Math.max(bound, counts[half]! + ceilOf(Math.max(0, overhang), capacity));
  }
  return bound;
}

/** u(k) ∘ U(ε) over every ε, in units of 1 / (k·(k+1)). */
function steppedBound(sizes: readonly SizeCount[], capacity: Nm, k: number, stretches: readonly Stretch[]): number {
  const whole = k * (k + 1);
  const counts = runningSums(sizes, () => 1);
  const stepped = runningSums(sizes, (size) => {
    const scaled = (k + 1) * size;
    const steps = Math.floor(scaled / capacity);
    return scaled % capacity === 0 ? steps * k : steps * (k + 1);
  });
  let most = 0;
  for (const { alone, end } of stretches) {
    most = Math.max(most, counts[alone]! * whole + stepped[end]! - stepped[alone]!);
  }
  return ceilOf(most, whole);
}

/** φ(ε) over the ε that are sizes, in units of 1 / ⌊1/ε⌋. */
function complementBound(sizes: readonly SizeCount[], capacity: Nm): number {
  const counts = runningSums(sizes, () => 1);
  const half = leading(sizes, (size) => size * 2 > capacity);
  let bound = 0;
  for (const threshold of thresholds(sizes, capacity).slice(-PHI_THRESHOLDS)) {
    if (threshold === 0) continue;
    const perStock = Math.floor(capacity / threshold);
    const end = leading(sizes, (size) => size >= threshold);
    let sum = counts[end]! - counts[half]!;
    for (const { size, count } of sizes.slice(0, half)) sum += count * (perStock - Math.floor((capacity - size) / threshold));
    bound = Math.max(bound, ceilOf(sum, perStock));
  }
  return bound;
}
