import type { Nm } from '../quantity/length.js';
import type { SizeCount } from './packing.js';

const PIVOT = 1e-9;

/**
 * The linear programme 'buy the fewest stock lengths that make the demand', held as a basis of patterns and its inverse
 * (revised simplex). It starts from one pattern a size, as many of that size as go into a stock length.
 *
 * @source Dantzig's simplex method in its revised form, from memory
 */
export class PatternBasis {
  private readonly patterns: (readonly number[])[];
  private readonly inverse: number[][];
  private readonly amounts: number[];

  constructor(sizes: readonly SizeCount[], capacity: Nm) {
    const most = sizes.map(({ size, count }) => Math.min(count, Math.floor(capacity / size)));
    this.patterns = most.map((count, row) => most.map((_, column) => (row === column ? count : 0)));
    this.inverse = most.map((count, row) => most.map((_, column) => (row === column ? 1 / count : 0)));
    this.amounts = sizes.map(({ count }, row) => count / most[row]!);
  }

  /** What one part of each size is worth in stock lengths: the dual values. */
  values(): readonly number[] {
    return this.inverse.map((_, column) => this.inverse.reduce((sum, row) => sum + row[column]!, 0));
  }

  /** Patterns with the fraction of a count the programme buys. */
  solution(): readonly { pattern: readonly number[]; amount: number }[] {
    return this.patterns.map((pattern, row) => ({ pattern, amount: this.amounts[row]! }));
  }

  /** Takes a pattern in for the one that runs out first; false where none does, which a bounded programme never shows. */
  enter(pattern: readonly number[]): boolean {
    const direction = this.inverse.map((row) => row.reduce((sum, entry, column) => sum + entry * pattern[column]!, 0));
    const leaving = this.runsOutFirst(direction);
    if (leaving < 0) return false;
    const pivot = direction[leaving]!;
    this.inverse[leaving] = this.inverse[leaving]!.map((entry) => entry / pivot);
    this.amounts[leaving]! /= pivot;
    direction.forEach((step, row) => {
      if (row === leaving || step === 0) return;
      this.inverse[row] = this.inverse[row]!.map((entry, column) => entry - step * this.inverse[leaving]![column]!);
      this.amounts[row] = Math.max(0, this.amounts[row]! - step * this.amounts[leaving]!);
    });
    this.patterns[leaving] = pattern;
    return true;
  }

  private runsOutFirst(direction: readonly number[]): number {
    let leaving = -1;
    let least = Infinity;
    direction.forEach((step, row) => {
      if (step > PIVOT && this.amounts[row]! / step < least) {
        least = this.amounts[row]! / step;
        leaving = row;
      }
    });
    return leaving;
  }
}
