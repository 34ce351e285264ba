import { describe, expect, it } from '@jest/globals';
import { takeOff, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { canonicalSchedule } from '../../support/canonical-schedule.js';
import { CHANGES } from '../../support/plan-changes.js';
import { randomPlan } from '../../support/plans.js';
import { seededRandom } from '../../support/seeded-random.js';
import { heron } from '../../support/small-schedules.js';

const range = heron();
const PLANS_PER_CHANGE = 12;

/** What is counted, both hands of a unit together. */
function counts({ units, bondBreaks }: Takeoff): Record<string, number> {
  const sums: Record<string, number> = { 'bond breaks': bondBreaks.length };
  for (const { kind, core, pieces, bought, spare, lowerBound } of units) {
    for (const [what, number] of Object.entries({ pieces, bought, spare, lowerBound })) {
      const key = `${kind} ${core} ${what}`;
      sums[key] = (sums[key] ?? 0) + number;
    }
  }
  return sums;
}

const volume = ({ concrete }: Takeoff): number => Number(concrete.reduce((sum, storey) => sum + storey.nm3, 0n));
const orders = ({ concrete }: Takeoff): readonly number[] => concrete.map(({ orderYd3 }) => orderYd3);

describe.each(Object.entries(CHANGES))('a plan after: %s', (name, change) => {
  it(`counts, buys and pours the same, on ${PLANS_PER_CHANGE} random plans`, () => {
    const first = Object.keys(CHANGES).indexOf(name) * PLANS_PER_CHANGE + 2_001;
    for (let seed = first; seed < first + PLANS_PER_CHANGE; seed++) {
      const plan = randomPlan(seed, { tight: seed % 3 === 0 });
      const before = takeOff(canonicalSchedule(plan.document), range);
      const after = takeOff(canonicalSchedule(change(plan, seededRandom(seed))), range);
      const plot = `${plan.kind} ${seed}`;
      expect({ plot, ...counts(after) }).toEqual({ plot, ...counts(before) });
      expect({ plot, orders: orders(after) }).toEqual({ plot, orders: orders(before) });
      expect(Math.abs(volume(after) / volume(before) - 1)).toBeLessThanOrEqual(1e-9);
    }
  });
});
