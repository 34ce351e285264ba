import type { Nm } from '../quantity/length.js';
import { PatternFinder } from './best-pattern.js';
import type { Budget } from './effort.js';
import type { SizeCount } from './packing.js';

const SCALE = 1_000_000_000;
const BRANCHES = 1_000_000;
/** Worth of a pattern below which, where the values are not quite best, no better one is looked for. */
const COARSE = SCALE / 50_000;
const STEPS_PER_BRANCH = 20;

/**
 * The programme's value rounded up where that can be shown; where its values are not quite best, the bound they give.
 *
 * With the sizes at any values, the demand's worth divided by the worth of the best pattern bounds the number of stock lengths. The values
 * are made whole numbers, and a bound of b is shown by the absence of a pattern worth as much as worth / (b − 1), in whole
 * numbers throughout: no rounding of the programme can lift the bound over the optimum.
 *
 * @param values of the programme; any will do, its own do best
 * @returns 0 where nothing could be shown
 * @valid   Σ count · 10^9 < 2^53
 * @source  Farley 1990, Oper. Res. 38, 922–923; from memory, checked against exhaustive search
 */
export function farleyBound(sizes: readonly SizeCount[], values: ArrayLike<number>, capacity: Nm, budget: Budget): number {
  const whole = sizes.map((_, index) => Math.max(0, Math.round(values[index]! * SCALE)));
  const worth = sizes.reduce((sum, { count }, index) => sum + count * whole[index]!, 0);
  if (!Number.isSafeInteger(worth) || worth === 0) return 0;
  const finder = new PatternFinder(sizes, capacity);
  const search = (above: number, gain: number) => {
    const found = finder.find(whole, { gain, branches: Math.min(BRANCHES, budget.steps / STEPS_PER_BRANCH), above });
    budget.spend(found.branches * STEPS_PER_BRANCH);
    return found;
  };
  const hoped = Math.ceil(worth / SCALE - 1e-6);
  if (hoped <= 1) return 1;
  // hoped − 1 stock lengths cannot do where each holds less than worth / (hoped − 1).
  const held = ceilOf(worth, hoped - 1) - 1;
  const better = search(held, 1);
  if (better.proven && better.value === 0) return hoped;
  // No pattern is worth as much as the best found and the gain that was thought too little to look for.
  const best = search(Math.max(SCALE, better.value), COARSE);
  return best.proven ? ceilOf(worth, Math.max(SCALE, better.value, best.value) + COARSE) : 0;
}

/** ⌈a / b⌉ of whole numbers, without a rounded quotient. */
const ceilOf = (a: number, b: number): number => (a - (a % b)) / b + (a % b > 0 ? 1 : 0);
