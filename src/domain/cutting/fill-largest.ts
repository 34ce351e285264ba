import type { Nm } from '../quantity/length.js';
import { firstFitDecreasing } from './first-fit-decreasing.js';
import type { Packing, Pattern, SizeCount } from './packing.js';

/** Most sums remembered for one stock length; a range with a cut module of an inch has fewer than its form has inches. */
const SUMS_PER_STOCK = 1_024;
/** Most steps of the whole packing, counted and not timed, so that the answer does not depend on the machine. */
const STEPS_PER_PACKING = 1_200_000;

/**
 * Largest first, the remainder filled as full as it goes: each stock length takes the largest part left and the subset of
 * the other parts that leaves the least waste. A filling is repeated while the parts for it last.
 *
 * The subset is found among the sums that can be reached, larger sizes first, at most `SUMS_PER_STOCK` of them. Past
 * `STEPS_PER_PACKING` the parts that are left are packed first-fit-decreasing.
 *
 * @param sizes    distinct sizes in descending order, none above the capacity [nm]
 * @param capacity room of one stock length                                    [nm]
 * @source after the minimum-bin-slack heuristic of Gupta & Ho 1999 with the largest part fixed (Fleszar & Hindi 2002); the
 *         bounded subset-sum recursion is Martello & Toth 1990, ch. 4; from memory
 */
export function fillLargest(sizes: readonly SizeCount[], capacity: Nm): Packing {
  const left = sizes.map(({ size, count }) => ({ size, count }));
  const patterns: Pattern[] = [];
  let steps = 0;
  for (let first = 0; first < left.length; ) {
    const largest = left[first]!;
    if (largest.count === 0) {
      first++;
      continue;
    }
    if (steps > STEPS_PER_PACKING) return [...patterns, ...firstFitDecreasing(left.slice(first), capacity)];
    largest.count--;
    const fill = fullestFill(left, first, capacity - largest.size);
    largest.count++;
    steps += fill.steps;
    patterns.push(take(left, [largest.size, ...fill.sizes]));
  }
  return patterns;
}

interface Demand {
  readonly size: Nm;
  count: number;
}

interface Reached {
  readonly sum: Nm;
  readonly size: Nm;
  readonly before: Reached | null;
}

/** The fullest subset of the parts from `first` on that fits the room, and what finding it cost. */
function fullestFill(left: readonly Demand[], first: number, room: Nm): { sizes: readonly Nm[]; steps: number } {
  const start: Reached = { sum: 0, size: 0, before: null };
  const reached: Reached[] = [start];
  const known = new Set<Nm>([0]);
  let best = start;
  let steps = 0;
  for (let index = first; index < left.length && best.sum < room && reached.length < SUMS_PER_STOCK; index++) {
    const { size, count } = left[index]!;
    steps++;
    if (size > room || count === 0) continue;
    for (let from = reached.length - 1; from >= 0; from--) {
      let state = reached[from]!;
      for (let taken = 0; taken < count && state.sum + size <= room; taken++) {
        steps++;
        state = { sum: state.sum + size, size, before: state };
        if (known.has(state.sum)) continue;
        known.add(state.sum);
        reached.push(state);
        if (state.sum > best.sum) best = state;
      }
    }
  }
  return { sizes: sizesOf(best), steps };
}

function sizesOf(reached: Reached): readonly Nm[] {
  const sizes: Nm[] = [];
  for (let state = reached; state.before; state = state.before) sizes.push(state.size);
  return sizes.reverse();
}

/** Takes a filling out of the demand as often as the demand allows. */
function take(left: readonly Demand[], sizes: readonly Nm[]): Pattern {
  const perStock = new Map<Nm, number>();
  for (const size of sizes) perStock.set(size, (perStock.get(size) ?? 0) + 1);
  const used = left.filter(({ size }) => perStock.has(size));
  const times = Math.min(...used.map(({ size, count }) => Math.floor(count / perStock.get(size)!)));
  for (const demand of used) demand.count -= times * perStock.get(demand.size)!;
  return { sizes, times };
}
