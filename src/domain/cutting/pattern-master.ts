import type { Nm } from '../quantity/length.js';
import type { SizeCount } from './packing.js';

/** Smallest entry divided by. */
const PIVOT = 1e-7;
/** Entries of the inverse that are what is left of a difference. */
const TRACE = 1e-13;
/** What is left of sums of doubles. */
const NOTHING = 1e-9;
/** Pivots after which the amounts are worked out afresh. */
const PIVOTS_PER_REFRESH = 100;

/** A cutting pattern by the rows of the demand it serves. */
export interface Column {
  readonly rows: readonly number[];
  readonly counts: readonly number[];
}

export function columnOf(counts: readonly number[]): Column {
  const rows: number[] = [];
  counts.forEach((count, row) => count > 0 && rows.push(row));
  return { rows, counts: rows.map((row) => counts[row]!) };
}

export interface Bought {
  readonly column: Column;
  readonly amount: number;
}

/**
 * The linear programme 'buy the fewest stock lengths that make at least the demand', held as a basis of patterns and its inverse
 * (revised simplex). It starts from one pattern a size, as many of that size as go into a stock length. Every pattern that was
 * ever entered is kept, so that the demand can be lowered and the programme put right by dual steps.
 *
 * @source Dantzig's simplex method in its revised form and Lemke's dual form, from memory
 */
export class PatternMaster {
  /** What one part of each size is worth in stock lengths: the dual values. */
  readonly values: Float64Array;
  /** Steps done so far. */
  work = 0;
  private readonly size: number;
  private readonly pool: Column[] = [];
  /** Number of the pattern in the pool, or −1 − row for what is made beyond that row's demand. */
  private readonly basis: Int32Array;
  private readonly inverse: Float64Array;
  private readonly amounts: Float64Array;
  private readonly filled: Int32Array;
  private demand: Float64Array;
  private pivots = 0;

  constructor(sizes: readonly SizeCount[], capacity: Nm) {
    const size = (this.size = sizes.length);
    this.demand = Float64Array.from(sizes, ({ count }) => count);
    this.basis = new Int32Array(size);
    this.filled = new Int32Array(size);
    this.inverse = new Float64Array(size * size);
    this.amounts = new Float64Array(size);
    this.values = new Float64Array(size);
    sizes.forEach((each, row) => {
      const most = Math.min(each.count, Math.floor(capacity / each.size));
      this.basis[row] = this.pool.push({ rows: [row], counts: [most] }) - 1;
      this.inverse[row * size + row] = 1 / most;
      this.amounts[row] = each.count / most;
      this.values[row] = 1 / most;
    });
  }

  /** Stock lengths the programme buys. */
  get bought(): number {
    let sum = 0;
    for (let row = 0; row < this.size; row++) if (this.basis[row]! >= 0) sum += this.amounts[row]!;
    return sum;
  }

  /** Patterns with the fraction of a count the programme buys; none of which it buys nothing. */
  solution(): readonly Bought[] {
    const bought: Bought[] = [];
    for (let row = 0; row < this.size; row++) {
      if (this.basis[row]! >= 0 && this.amounts[row]! > NOTHING) bought.push({ column: this.pool[this.basis[row]!]!, amount: this.amounts[row]! });
    }
    return bought;
  }

  worth({ rows, counts }: Column): number {
    let worth = 0;
    for (let place = 0; place < rows.length; place++) worth += this.values[rows[place]!]! * counts[place]!;
    return worth;
  }

  /** Takes a pattern in for the one that runs out first; false where it is worth no more than it costs. */
  enter(column: Column): boolean {
    const cost = 1 - this.worth(column);
    if (cost > -NOTHING) return false;
    const direction = this.directionOf(column, 1);
    const leaving = this.runsOutFirst(direction);
    if (leaving < 0) return false;
    this.pivot(leaving, direction, this.pool.push(column) - 1, cost);
    return true;
  }

  /** Makes more than was asked of a size whose value fell below nothing; false where there is none. */
  enterSurplus(): boolean {
    let least = -NOTHING;
    let row = -1;
    for (let each = 0; each < this.size; each++) {
      if (this.values[each]! < least) [least, row] = [this.values[each]!, each];
    }
    if (row < 0) return false;
    const direction = this.directionOf({ rows: [row], counts: [1] }, -1);
    const leaving = this.runsOutFirst(direction);
    if (leaving < 0) return false;
    this.pivot(leaving, direction, -1 - row, least);
    return true;
  }

  /**
   * Lowers the demand and puts the programme right with the patterns it knows.
   *
   * @param steps most dual steps taken
   * @returns steps taken, or −1 where they ran out
   */
  lower(demand: ArrayLike<number>, steps: number): number {
    this.demand = Float64Array.from(demand);
    this.refresh();
    for (let step = 0; step < steps; step++) {
      let leaving = -1;
      let least = -1e-7;
      for (let row = 0; row < this.size; row++) if (this.amounts[row]! < least) [least, leaving] = [this.amounts[row]!, row];
      if (leaving < 0) return step;
      if (!this.dualStep(leaving)) return -1;
    }
    return -1;
  }

  private dualStep(leaving: number): boolean {
    const start = leaving * this.size;
    let entering: number | null = null;
    let least = Infinity;
    let enteringCost = 0;
    const consider = (name: number, cost: number, along: number): void => {
      if (along > -PIVOT) return;
      const ratio = Math.max(0, cost) / -along;
      if (ratio < least) [least, entering, enteringCost] = [ratio, name, cost];
    };
    for (let row = 0; row < this.size; row++) consider(-1 - row, this.values[row]!, -this.inverse[start + row]!);
    for (let name = 0; name < this.pool.length; name++) {
      const column = this.pool[name]!;
      let along = 0;
      for (let place = 0; place < column.rows.length; place++) along += this.inverse[start + column.rows[place]!]! * column.counts[place]!;
      if (along < -PIVOT) consider(name, 1 - this.worth(column), along);
    }
    this.work += 12 * this.pool.length;
    if (entering === null) return false;
    const name: number = entering;
    const direction = name >= 0 ? this.directionOf(this.pool[name]!, 1) : this.directionOf({ rows: [-1 - name], counts: [1] }, -1);
    this.pivot(leaving, direction, name, enteringCost);
    return true;
  }

  private directionOf({ rows, counts }: Column, sign: 1 | -1): Float64Array {
    const direction = new Float64Array(this.size);
    for (let row = 0; row < this.size; row++) {
      let sum = 0;
      for (let place = 0; place < rows.length; place++) sum += this.inverse[row * this.size + rows[place]!]! * counts[place]!;
      direction[row] = sign * sum;
    }
    return direction;
  }

  private runsOutFirst(direction: Float64Array): number {
    let leaving = -1;
    let least = Infinity;
    for (let row = 0; row < this.size; row++) {
      if (direction[row]! <= PIVOT) continue;
      const ratio = this.amounts[row]! / direction[row]!;
      if (ratio < least - 1e-12 || (ratio < least + 1e-12 && leaving >= 0 && direction[row]! > direction[leaving]!)) {
        least = Math.min(ratio, least);
        leaving = row;
      }
    }
    return leaving;
  }

  private pivot(leaving: number, direction: Float64Array, name: number, cost: number): void {
    const { size, inverse, amounts, values } = this;
    const start = leaving * size;
    const pivot = direction[leaving]!;
    const { filled } = this;
    let width = 0;
    for (let column = 0; column < size; column++) {
      const entry = inverse[start + column]!;
      if (entry === 0) continue;
      const scaled = entry / pivot;
      inverse[start + column] = scaled > -TRACE && scaled < TRACE ? 0 : scaled;
      if (inverse[start + column] !== 0) filled[width++] = column;
    }
    const amount = (amounts[leaving]! /= pivot);
    for (let row = 0; row < size; row++) {
      const step = direction[row]!;
      if (row === leaving || (step < TRACE && step > -TRACE)) continue;
      const at = row * size;
      for (let place = 0; place < width; place++) {
        const column = filled[place]!;
        inverse[at + column]! -= step * inverse[start + column]!;
      }
      this.work += width;
      amounts[row]! -= step * amount;
    }
    this.work += 10 * size;
    for (let place = 0; place < width; place++) values[filled[place]!]! += cost * inverse[start + filled[place]!]!;
    this.basis[leaving] = name;
    if (++this.pivots % PIVOTS_PER_REFRESH === 0) this.refresh();
  }

  /** Amounts and values from the inverse, without what a hundred steps have added up. */
  private refresh(): void {
    const { size, inverse, demand, values } = this;
    values.fill(0);
    this.work += 2 * size * size;
    for (let row = 0; row < size; row++) {
      let amount = 0;
      const priced = this.basis[row]! >= 0;
      for (let column = 0; column < size; column++) {
        const entry = inverse[row * size + column]!;
        amount += entry * demand[column]!;
        if (priced) values[column]! += entry;
      }
      this.amounts[row] = amount;
    }
  }
}
