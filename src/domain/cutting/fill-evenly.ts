import type { Nm } from '../quantity/length.js';
import type { Pattern, SizeCount } from './packing.js';

/** Fillings tried for a stock length. */
const TRIES = 80;
/** Waste of all stock lengths filled, as a part of one. */
const WASTE = 0.3;
/** So many parts are left for the search at the end, so that it can still choose. */
const PARTS_LEFT = 160;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

export interface EvenFilling {
  readonly packing: readonly Pattern[];
  /** Parts that were not laid, in descending order of size. */
  readonly rest: readonly SizeCount[];
}

/**
 * Stock lengths filled without waste from parts drawn evenly over all sizes, so that what is left stays as mixed as the whole.
 *
 * Parts are drawn in an order that spreads over the sizes (steps of the golden section) until one more can end the stock length, and
 * that is the largest that fits. A part round which no filling comes out is put aside; aside and the last parts are handed back.
 * Made for orders of very many different lengths, where good fillings abound and a programme would be too large.
 *
 * @param sizes distinct sizes in descending order, none above the capacity [nm]
 * @param bound a lower bound on the stock lengths: the waste allowed in one is a share of the whole
 * @source the project's own; no proof
 */
export function fillEvenly(sizes: readonly SizeCount[], capacity: Nm, bound: number): EvenFilling {
  const stack = new MixedParts(sizes);
  const aside = new Map<Nm, number>();
  const packing: Pattern[] = [];
  const allowed = (WASTE * capacity) / Math.max(1, bound);
  while (stack.count > PARTS_LEFT) {
    const first = stack.draw();
    stack.take(first);
    const filled = bestFilling(stack, first, capacity, allowed);
    if (filled === null) {
      aside.set(stack.size(first), (aside.get(stack.size(first)) ?? 0) + 1);
      continue;
    }
    for (const part of filled) stack.take(part);
    const laid = [first, ...filled].map((part) => stack.size(part)).sort((a, b) => b - a);
    packing.push({ sizes: laid, times: 1 });
  }
  const rest = new Map(aside);
  for (const { size, count } of stack.left()) rest.set(size, (rest.get(size) ?? 0) + count);
  return { packing, rest: [...rest].map(([size, count]) => ({ size, count })).sort((a, b) => b.size - a.size) };
}

/** Parts beside the first that leave no more than is allowed; null where no try found such. */
function bestFilling(stack: MixedParts, first: number, capacity: Nm, allowed: Nm): readonly number[] | null {
  let best: readonly number[] | null = null;
  let least = allowed;
  for (let tried = 0; tried < TRIES && least > allowed / 20; tried++) {
    let room = capacity - stack.size(first);
    const parts: number[] = [];
    while (room > stack.largest) {
      const part = stack.draw();
      if (!stack.has(part, parts)) break;
      parts.push(part);
      room -= stack.size(part);
    }
    const last = stack.largestWithin(room, parts);
    if (last >= 0) {
      parts.push(last);
      room -= stack.size(last);
    }
    if (room >= 0 && room < least) [least, best] = [room, parts];
  }
  return best;
}

/** The parts that are left, drawn in an order that spreads evenly over their sizes. */
class MixedParts {
  count: number;
  private readonly sizes: readonly Nm[];
  private readonly counts: number[];
  /** Sizes of which parts are left, one entry a part, ascending; some gone since it was made. */
  private parts: number[] = [];
  private at = 0;

  constructor(sizes: readonly SizeCount[]) {
    const ascending = [...sizes].reverse();
    this.sizes = ascending.map(({ size }) => size);
    this.counts = ascending.map(({ count }) => count);
    this.count = this.counts.reduce((sum, count) => sum + count, 0);
    this.gather();
  }

  size(part: number): Nm {
    return this.sizes[part]!;
  }

  get largest(): Nm {
    return this.sizes[this.parts.at(-1)!]!;
  }

  draw(): number {
    for (;;) {
      this.at = (this.at + GOLDEN) % 1;
      const part = this.parts[Math.floor(this.at * this.parts.length)]!;
      if (this.counts[part]! > 0) return part;
    }
  }

  take(part: number): void {
    this.counts[part]!--;
    this.count--;
    if (this.count * 2 < this.parts.length) this.gather();
  }

  /** Whether one more of a size is there beside those picked. */
  has(part: number, picked: readonly number[]): boolean {
    return picked.reduce((sum, each) => sum + (each === part ? 1 : 0), 0) < this.counts[part]!;
  }

  largestWithin(room: Nm, picked: readonly number[]): number {
    let low = 0;
    let high = this.sizes.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.sizes[middle]! <= room) low = middle + 1;
      else high = middle;
    }
    for (let part = low - 1; part >= 0; part--) if (this.has(part, picked)) return part;
    return -1;
  }

  left(): readonly SizeCount[] {
    return this.sizes.map((size, part) => ({ size, count: this.counts[part]! })).filter(({ count }) => count > 0);
  }

  private gather(): void {
    this.parts = this.counts.flatMap((count, part) => Array.from({ length: count }, () => part));
  }
}
