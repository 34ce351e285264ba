import type { Nm } from '../quantity/length.js';
import type { SizeCount } from './packing.js';

export interface BestPattern {
  /** How many of each size, in the order given; all 0 where nothing is worth more than was asked. */
  readonly counts: readonly number[];
  readonly value: number;
  /** False where the branches ran out: the pattern fits, but a better one may exist. */
  readonly proven: boolean;
  readonly branches: number;
}

export interface PatternSearch {
  /** Least improvement worth a branch: an answer is proven to within it. */
  readonly gain: number;
  /** Most branches looked at, counted and not timed, so that the answer does not depend on the machine. */
  readonly branches: number;
  /** Only patterns worth more than this are looked for; 0 where it is left out. */
  readonly above?: number;
  /** Branches without a better pattern after which the best so far will do. */
  readonly patience?: number;
}

/**
 * The filling of one stock length of greatest value: a bounded knapsack by depth-first branch and bound, sizes in falling
 * value per length, the rest valued at the best rate left.
 *
 * @param sizes    sizes and how many of each may be taken [nm]
 * @param values   worth of one part of each size; those worth nothing are left out
 * @param capacity room of one stock length [nm]
 * @source Martello & Toth 1990, Knapsack Problems, ch. 2 and 3; from memory, checked against exhaustive search
 */
export const bestPattern = (sizes: readonly SizeCount[], values: ArrayLike<number>, capacity: Nm, search: PatternSearch): BestPattern =>
  new PatternFinder(sizes, capacity).find(values, search);

/** `bestPattern` for the same sizes again and again: the order of one search is the start of the next. */
export class PatternFinder {
  private readonly order: Int32Array;
  private readonly rates: Float64Array;
  private readonly size: Float64Array;
  private readonly worth: Float64Array;
  private readonly most: Float64Array;
  /** Least size from a place on. */
  private readonly least: Float64Array;
  /** Worth per length by place. */
  private readonly rate: Float64Array;
  private readonly taken: Int32Array;

  constructor(
    private readonly sizes: readonly SizeCount[],
    private readonly capacity: Nm,
  ) {
    const length = sizes.length;
    this.order = new Int32Array(length);
    for (let index = 0; index < length; index++) this.order[index] = index;
    this.rates = new Float64Array(length);
    this.size = new Float64Array(length);
    this.worth = new Float64Array(length);
    this.most = new Float64Array(length);
    this.least = new Float64Array(length);
    this.rate = new Float64Array(length);
    this.taken = new Int32Array(length + 1);
  }

  find(values: ArrayLike<number>, search: PatternSearch): BestPattern {
    const length = this.arrange(values);
    const { size, worth, most, least, rate, taken } = this;
    let best = search.above ?? 0;
    let found: Int32Array | null = null;
    let branches = 0;
    let end = search.branches;
    let depth = 0;
    let room = this.capacity;
    let value = 0;
    for (;;) {
      while (depth < length && room >= least[depth]! && value + room * rate[depth]! >= best + search.gain) {
        const wide = size[depth]!;
        if (room < wide) {
          taken[depth++] = 0;
          continue;
        }
        const fit = Math.min(most[depth]!, Math.floor(room / wide));
        taken[depth] = fit;
        room -= fit * wide;
        value += fit * worth[depth]!;
        depth++;
      }
      branches++;
      if (value > best) {
        best = value;
        found = taken.slice(0, depth);
        if (search.patience !== undefined) end = Math.min(search.branches, branches + search.patience);
      }
      if (branches > end) break;
      do depth--;
      while (depth >= 0 && taken[depth] === 0);
      if (depth < 0) break;
      taken[depth]!--;
      room += size[depth]!;
      value -= worth[depth]!;
      depth++;
    }
    const counts: number[] = [];
    for (let index = 0; index < this.sizes.length; index++) counts.push(0);
    found?.forEach((count, place) => (counts[this.order[place]!] = count));
    return { counts, value: found ? best : 0, proven: branches <= end, branches };
  }

  /** Sizes worth something in falling rate, by insertion from the last order; returns how many there are. */
  private arrange(values: ArrayLike<number>): number {
    const { sizes, order, rates, capacity } = this;
    for (let index = 0; index < sizes.length; index++) {
      const { size, count } = sizes[index]!;
      rates[index] = values[index]! > 0 && count > 0 && size <= capacity ? values[index]! / size : 0;
    }
    for (let place = 1; place < order.length; place++) {
      const index = order[place]!;
      const rate = rates[index]!;
      let at = place - 1;
      for (; at >= 0 && rates[order[at]!]! < rate; at--) order[at + 1] = order[at]!;
      order[at + 1] = index;
    }
    let length = order.length;
    while (length > 0 && rates[order[length - 1]!] === 0) length--;
    for (let place = length - 1; place >= 0; place--) {
      const index = order[place]!;
      const { size, count } = sizes[index]!;
      this.size[place] = size;
      this.worth[place] = values[index]!;
      this.most[place] = count;
      this.rate[place] = rates[index]!;
      this.least[place] = place === length - 1 ? size : Math.min(size, this.least[place + 1]!);
    }
    return length;
  }
}
