import { describe, expect, it } from '@jest/globals';
import { measure } from '../../../src/domain/pipeline.js';
import { toMm } from '../../../src/domain/quantity/length.js';
import { takeOff, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { brokenLaws } from '../../oracles/laid-laws.js';
import { unitDifferences } from '../../oracles/slow-units.js';
import { changed, featuredPlan, featuredSchedule } from '../../support/featured-plans.js';
import { CHANGES } from '../../support/plan-changes.js';
import { seededRandom } from '../../support/seeded-random.js';
import { featured, ledge } from '../../support/features.js';
import { heron } from '../../support/small-schedules.js';

const range = heron();
const PLANS = 60;
const GROUP = 20;

/** Forms beside a ledge, a taper or a mitre that are shorter than a piece should be, and that nothing tells. */
function untold({ laid, findings }: Takeoff): string[] {
  const told = new Set(findings.filter(({ code }) => code === 'piece-short').map(({ storey, course, numbers }) => `${storey}/${course}/${numbers.lengthMm}`));
  return laid.storeys.flatMap(({ id, walls }) =>
    walls.flatMap((wall) =>
      wall.courses
        .filter(({ n }) => wall.taper?.course === n || wall.ledges.some(({ course }) => course === n))
        .flatMap(({ n, pieces }) =>
          pieces
            .filter(({ inside, kind, pieceLength }) => !inside && !kind.startsWith('corner') && pieceLength < range.minPiece)
            .filter(({ pieceLength }) => !told.has(`${id}/${n}/${toMm(pieceLength)}`))
            .map(({ id: piece, pieceLength }) => `${piece} of ${toMm(pieceLength)} mm is not told`),
        ),
    ),
  );
}

describe(`${PLANS} random plans with ledges and taper tops`, () => {
  let [ledges, tapers] = [0, 0];

  it.each(Array.from({ length: PLANS / GROUP }, (_, group) => group))('group %i: as the slow count, every law kept, short pieces told, bought <= bound + 2, rules and checks run', (group) => {
    const faults = Array.from({ length: GROUP }, (_, index) => 1 + group * GROUP + index).flatMap((seed) => {
      const featured = featuredPlan(seed);
      const { takeoff } = measure(featuredSchedule(featured), range);
      const walls = takeoff.laid.storeys.flatMap((storey) => storey.walls);
      ledges += walls.reduce((sum, wall) => sum + wall.ledges.length, 0);
      tapers += walls.filter(({ taper }) => taper !== null).length;
      return [
        ...unitDifferences(featured, takeoff),
        ...brokenLaws(takeoff, range),
        ...untold(takeoff),
        ...takeoff.units.filter(({ bought, lowerBound }) => bought > lowerBound + 2).map(({ sku, bought, lowerBound }) => `${sku}: ${bought} bought, bound ${lowerBound}`),
      ].map((fault) => `${featured.plan.kind} ${seed}: ${fault}`);
    });
    expect(faults).toEqual([]);
  });

  it('lay at least 75 ledges and 25 tapers', () => {
    expect({ ledges: Math.min(ledges, 75), tapers: Math.min(tapers, 25) }).toEqual({ ledges: 75, tapers: 25 });
  });
});

const counts = ({ units, bondBreaks, findings }: Takeoff): unknown => {
  const sums: Record<string, number> = { breaks: bondBreaks.length, questions: findings.filter(({ severity }) => severity !== 'note').length };
  for (const { kind, core, bought, pieces } of units) {
    sums[`${kind} ${core} pieces`] = (sums[`${kind} ${core} pieces`] ?? 0) + pieces;
    sums[`${kind} ${core} bought`] = (sums[`${kind} ${core} bought`] ?? 0) + bought;
  }
  return sums;
};
const volume = ({ concrete }: Takeoff): number => Number(concrete.reduce((sum, { nm3 }) => sum + nm3, 0n));

describe.each(['rotate', 'mirror', 'reverse', 'reorder'])('a plan with ledges and tapers after: %s', (name) => {
  it('counts, buys and pours the same, on 5 random plans', () => {
    for (let seed = 301, seen = 0; seen < 5; seed += 1) {
      const featured = featuredPlan(seed);
      // A chain that is open has its outside by the way it is walked: drawn the other way it has another.
      if (name === 'reverse' && featured.plan.document.dimensionsTo === 'axis') continue;
      seen += 1;
      const document = CHANGES[name]!(featured.plan, seededRandom(seed));
      const turned = changed(featured, document, (after, before) => name === 'mirror' || (name === 'reverse' && after.from!.join() !== before.from!.join()));
      const [before, after] = [featured, turned].map((each) => takeOff(featuredSchedule(each), range)) as [Takeoff, Takeoff];
      const plot = `${featured.plan.kind} ${seed}`;
      expect({ plot, counts: counts(after) }).toEqual({ plot, counts: counts(before) });
      expect(Math.abs(volume(after) / volume(before) - 1)).toBeLessThanOrEqual(1e-9);
    }
  });
});

it('the rule for short pieces straps a ledge form too short to have a web', () => {
  const schedule = featured([{ mark: 'A', from: [0, 0], to: [240, 0] }], [ledge('A', 48, 99, 102)]);
  const { materials } = measure(schedule, range);
  const strapped = materials.flatMap(({ because }) => because).filter(({ rule, course }) => rule === 'short-piece' && course === 3);
  expect(strapped.length).toBeGreaterThanOrEqual(1);
});
