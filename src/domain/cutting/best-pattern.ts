import type { Nm } from '../quantity/length.js';
import type { SizeCount } from './packing.js';

export interface BestPattern {
  /** How many of each size, in the order given. */
  readonly counts: readonly number[];
  readonly value: number;
  /** False where the branches ran out: the pattern fits, but a better one may exist. */
  readonly proven: boolean;
  readonly branches: number;
}

/**
 * The filling of one stock length of greatest value: a bounded knapsack by depth-first branch and bound, sizes in falling
 * value per length, the rest valued at the best rate left.
 *
 * @param sizes    sizes and how many of each may be taken [nm]
 * @param values   worth of one part of each size; those worth nothing are left out
 * @param capacity room of one stock length [nm]
 * @param limits   `gain`: least improvement worth a branch, an answer is proven to within it; `branches`: most of them looked
 *                 at, counted and not timed, so that the answer does not depend on the machine
 * @source Martello & Toth 1990, Knapsack Problems, ch. 2 and 3; from memory, checked against exhaustive search
 */
export function bestPattern(
  sizes: readonly SizeCount[], values: readonly number[], capacity: Nm, limits: { readonly gain: number; readonly branches: number },
): BestPattern {
  const order = sizes.map((_, index) => index).filter((index) => values[index]! > 0);
  order.sort((a, b) => values[b]! / sizes[b]!.size - values[a]! / sizes[a]!.size || a - b);
  const taken: number[] = sizes.map(() => 0);
  let best: { counts: number[]; value: number } = { counts: [...taken], value: 0 };
  let branches = 0;

  const branch = (depth: number, room: Nm, value: number): void => {
    if (value > best.value) best = { counts: [...taken], value };
    const index = order[depth];
    if (index === undefined || ++branches > limits.branches) return;
    const { size, count } = sizes[index]!;
    const worth = values[index]!;
    if (value + (room * worth) / size < best.value + limits.gain) return;
    for (let take = Math.min(count, Math.floor(room / size)); take >= 0; take--) {
      taken[index] = take;
      branch(depth + 1, room - take * size, value + take * worth);
    }
    taken[index] = 0;
  };
  branch(0, capacity, 0);
  return { ...best, proven: branches <= limits.branches, branches };
}
