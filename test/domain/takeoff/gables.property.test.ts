import { describe, expect, it } from '@jest/globals';
import { measure } from '../../../src/domain/pipeline.js';
import type { Schedule } from '../../../src/domain/schedule/schedule.js';
import { inches } from '../../../src/domain/quantity/length.js';
import { brokenLaws } from '../../oracles/laid-laws.js';
import { canonicalSchedule } from '../../support/canonical-schedule.js';
import { randomPlan } from '../../support/plans.js';
import { seededRandom } from '../../support/seeded-random.js';
import { heron } from '../../support/small-schedules.js';

const range = heron();
const PLANS = 60;
const place = { sheet: null, row: null, pointer: '' };

/** A random plan with slopes over some of its walls: peaks anywhere, at an end too, rises of a foot to ten. */
function gabledPlan(seed: number): Schedule {
  const schedule = canonicalSchedule(randomPlan(seed).document);
  const random = seededRandom(seed + 77);
  const walls = schedule.walls.filter(() => random.chance(0.5));
  const features = walls.map((wall) => ({
    kind: 'gable' as const, wall: wall.mark, rise: inches(random.whole(12, 120)),
    peakAt: random.pick([0, 0.25, 0.5, 0.7, 1].map((share) => Math.round(wall.length * share))), place,
  }));
  return { ...schedule, features };
}

describe(`${PLANS} random plans with gables`, () => {
  it.each(Array.from({ length: PLANS / 20 }, (_, group) => group))('group %i: every law kept, bought within a tenth and two of the bound by area, rules and checks run', (group) => {
    const faults = Array.from({ length: 20 }, (_, index) => 1 + group * 20 + index).flatMap((seed) => {
      const { takeoff } = measure(gabledPlan(seed), range);
      return [
        ...brokenLaws(takeoff, range),
        ...takeoff.units.filter(({ bought, lowerBound }) => bought > Math.ceil(lowerBound * 1.1) + 2).map(({ sku, bought, lowerBound }) => `${sku}: ${bought} bought, bound ${lowerBound}`),
      ].map((fault) => `seed ${seed}: ${fault}`);
    });
    expect(faults).toEqual([]);
  });
});
