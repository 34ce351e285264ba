/**
 * How hard to look. The domain has no clock: work is counted in steps, so the same order with the same effort gives the same plan; a
 * caller with a deadline passes `outOfTime` as well, and then the plan is as good as the time allowed.
 */
export interface Effort {
  /** Steps of search after the constructive plans, one to five nanoseconds each; 0 for the constructive plans alone. */
  readonly steps: number;
  /** Asked between steps: true ends the search with the best plan so far. */
  readonly outOfTime?: () => boolean;
}

/** Ten thousand parts of two hundred lengths within half a second. */
export const USUAL_EFFORT: Effort = { steps: 150_000_000 };

/** What is left of an effort. */
export class Budget {
  private left: number;

  constructor(
    private readonly effort: Effort,
    private readonly whole: Budget | null = null,
  ) {
    this.left = effort.steps;
  }

  spend(steps: number): void {
    this.left -= steps;
    this.whole?.spend(steps);
  }

  get steps(): number {
    return Math.max(0, this.left);
  }

  get spent(): boolean {
    return this.left <= 0 || this.effort.outOfTime?.() === true;
  }

  /** A part of what is left; what it spends is spent of the whole. */
  share(part: number): Budget {
    return new Budget({ ...this.effort, steps: this.steps * part }, this);
  }
}
