import type { SizeCount } from './packing.js';

/** How far the values looked at are drawn to the best known ones. */
const PULL = 0.5;
/** Patterns in a row that may not serve before the programme's own values are looked at. */
const MISSES = 3;

/**
 * Values between the programme's own and those that gave the best bound so far: the programme's swing from step to step, and
 * patterns found half way serve longer.
 *
 * @source Wentges 1997, Int. Trans. Oper. Res. 4, 151–162; from memory
 */
export class SteadyValues {
  /** 0 where the programme's own values are asked for. */
  pull = PULL;
  private readonly best: Float64Array;
  private readonly mixed: Float64Array;
  private bound = -1;
  private misses = 0;

  constructor(private readonly sizes: readonly SizeCount[]) {
    this.best = new Float64Array(sizes.length);
    this.mixed = new Float64Array(sizes.length);
  }

  between(values: Float64Array): Float64Array {
    if (this.bound < 0) this.best.set(values);
    for (let row = 0; row < values.length; row++) this.mixed[row] = this.pull * this.best[row]! + (1 - this.pull) * values[row]!;
    return this.mixed;
  }

  /**
   * What came of the values half way; where no pattern served, the next is looked for nearer to the programme's values.
   *
   * @param value  of the best pattern at these values
   * @param served whether it entered the programme
   */
  met(value: number, served: boolean): void {
    let worth = 0;
    for (let row = 0; row < this.sizes.length; row++) worth += this.sizes[row]!.count * this.mixed[row]!;
    const bound = worth / Math.max(1, value);
    if (bound > this.bound) {
      this.bound = bound;
      this.best.set(this.mixed);
    }
    if (served) this.restart();
    else this.pull = ++this.misses < MISSES ? this.pull / 2 : 0;
  }

  restart(): void {
    this.pull = PULL;
    this.misses = 0;
  }
}
