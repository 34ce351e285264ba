import type { Nm } from '../quantity/length.js';
import { PatternFinder } from './best-pattern.js';
import type { Budget } from './effort.js';
import type { SizeCount } from './packing.js';
import { columnOf, type PatternMaster } from './pattern-master.js';
import { SteadyValues } from './steady-values.js';

/** Branches of the knapsack for one pattern: few at first, more where few find nothing. */
const BRANCHES = [3_000, 300_000];
/** Branches without a better pattern after which the best so far enters. */
const PATIENCE = 1_000;
/** A pattern enters when it is worth this much more than the stock length it costs. */
const WORTH = 1e-7;
const STEPS_PER_BRANCH = 20;

/**
 * Enters patterns into the programme until none is worth more than the stock length it costs, or so little more that the programme's
 * value rounded up is a bound already, or the budget is spent.
 *
 * @param sizes  rows of the programme; a size of which none is left takes no part
 * @param enough the programme need not go below this many stock lengths
 * @source Gilmore & Gomory 1961, Oper. Res. 9, 849–859; from memory, checked against exhaustive search
 */
export function generateColumns(master: PatternMaster, sizes: readonly SizeCount[], capacity: Nm, budget: Budget, enough = 0): void {
  const finder = new PatternFinder(sizes, capacity);
  const steady = new SteadyValues(sizes);
  let deep = 0;
  for (let done = master.work; !budget.spent && master.bought > enough + WORTH; done = master.work) {
    if (!master.enterSurplus()) {
      const above = 1 + slack(master.bought);
      const limits = { gain: WORTH, branches: BRANCHES[deep]!, patience: PATIENCE, above: steady.pull > 0 ? 1 : above };
      const found = finder.find(steady.between(master.values), limits);
      budget.spend((found.branches + sizes.length) * STEPS_PER_BRANCH);
      const column = columnOf(found.counts);
      const served = found.value > 0 && master.worth(column) > above && master.enter(column);
      if (steady.pull > 0) steady.met(found.value, served);
      else if (served) steady.restart();
      else if (found.value > 0 || found.proven || ++deep === BRANCHES.length) return;
    }
    budget.spend(master.work - done);
  }
}

/** How much more than its cost a pattern may be worth while the programme's value rounded up is still a bound. */
function slack(bought: number): number {
  const below = Math.ceil(bought - 1e-6) - 1;
  return below <= 0 ? WORTH : Math.max(WORTH, 0.9 * (bought / below - 1));
}
