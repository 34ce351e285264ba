import { describe, expect, it } from '@jest/globals';
import { takeOff, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { differences } from '../../oracles/differences.js';
import { brokenLaws } from '../../oracles/laid-laws.js';
import { slowTakeoff } from '../../oracles/slow-takeoff.js';
import { canonicalSchedule } from '../../support/canonical-schedule.js';
import { PLAN_KINDS, randomPlan, type Plan } from '../../support/plans.js';
import { heron } from '../../support/small-schedules.js';

const range = heron();
const PLANS = 200;
const TIGHT_PLANS = 60;
const GROUP = 20;

const nameOf = ({ kind, seed, document }: Plan): string => `${kind} ${seed}, ${document.units}, to ${document.dimensionsTo}`;
const groups = (count: number, first: number): readonly [from: number, to: number][] =>
  Array.from({ length: Math.ceil(count / GROUP) }, (_, index) => [first + index * GROUP, first + Math.min(count, (index + 1) * GROUP) - 1]);

/** Everything wrong with the plans of some seeds, each with the plan it was found in. */
function faults(from: number, to: number, tight: boolean, look: (plan: Plan, takeoff: Takeoff) => readonly string[]): string[] {
  const found: string[] = [];
  for (let seed = from; seed <= to; seed++) {
    const plan = randomPlan(seed, { tight });
    found.push(...look(plan, takeOff(canonicalSchedule(plan.document), range)).map((fault) => `${nameOf(plan)}: ${fault}`));
  }
  return found;
}

describe(`${PLANS} random plans`, () => {
  const overBound = new Map<number, number>();

  it.each(groups(PLANS, 1))('seeds %i to %i: as the slow take-off, every law kept, no question, bought <= bound + 2', (from, to) => {
    expect(faults(from, to, false, (plan, takeoff) => {
      for (const unit of takeoff.units) overBound.set(unit.bought - unit.lowerBound, (overBound.get(unit.bought - unit.lowerBound) ?? 0) + 1);
      return [
        ...differences(takeoff, slowTakeoff(plan.document)),
        ...brokenLaws(takeoff, range),
        ...takeoff.findings.filter(({ severity }) => severity !== 'note').map(({ code, wall }) => `${code} on ${wall}`),
        ...takeoff.units.filter(({ bought, lowerBound }) => bought > lowerBound + 2).map(({ sku, bought, lowerBound }) => `${sku}: ${bought} bought, bound ${lowerBound}`),
      ];
    })).toEqual([]);
  });

  it('meet every kind of plan, and the bound itself at least nine times in ten', () => {
    const kinds = new Set(Array.from({ length: PLANS }, (_, index) => randomPlan(index + 1).kind));
    expect([...kinds].sort()).toEqual([...PLAN_KINDS].sort());
    const counts = [...overBound.values()].reduce((sum, count) => sum + count, 0);
    expect(overBound.get(0) ?? 0).toBeGreaterThanOrEqual(0.9 * counts);
  });
});

describe(`${TIGHT_PLANS} random plans with openings anywhere`, () => {
  it.each(groups(TIGHT_PLANS, 1_001))('seeds %i to %i: every law kept, bought <= bound + 2', (from, to) => {
    expect(faults(from, to, true, (_, takeoff) => [
      ...brokenLaws(takeoff, range),
      ...takeoff.units.filter(({ bought, lowerBound }) => bought > lowerBound + 2).map(({ sku, bought, lowerBound }) => `${sku}: ${bought} bought, bound ${lowerBound}`),
    ])).toEqual([]);
  });
});
