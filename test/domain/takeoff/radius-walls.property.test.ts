import { describe, expect, it } from '@jest/globals';
import { measure } from '../../../src/domain/pipeline.js';
import { takeOff, type LaidStorey, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { brokenLaws } from '../../oracles/laid-laws.js';
import { curveDifferences, slowCurves, type SlowCurves } from '../../oracles/slow-curves.js';
import { CURVED_CHANGES } from '../../support/curved-changes.js';
import { CURVED_KINDS } from '../../support/curved-kinds.js';
import { curvedCanonical, curvedPlan, type CurvedPlan } from '../../support/curved-plans.js';
import { seededRandom } from '../../support/seeded-random.js';
import { heron } from '../../support/small-schedules.js';

const range = heron();
const GROUP = 20;
const groups = (count: number, first: number): readonly [from: number, to: number][] =>
  Array.from({ length: count / GROUP }, (_, index) => [first + index * GROUP, first + (index + 1) * GROUP - 1]);
const nameOf = ({ kind, seed, document }: CurvedPlan): string => `${kind} ${seed}, ${document.units}, to ${document.dimensionsTo}`;

/** Questions of the kinds of plans that must ask one; every curve that is laid is told, and nothing else is asked. */
const ASKED: Readonly<Record<string, readonly string[]>> = {
  bowed: ['turn-not-made'], arcTee: ['tee-skewed'], betweenTees: ['tee-skewed'],
};
/** Each curve is told once: laid in chords, or too tight for any. */
const toldOf = ({ chords }: SlowCurves): string[] => [...chords].map(([mark, { chord }]) => `${chord > 0 ? 'radius-wall' : 'radius-tight'} on ${mark}`).sort();
function askedFaults({ findings }: Takeoff, { kind }: CurvedPlan, slow: SlowCurves): string[] {
  const questions = findings.filter(({ code, severity }) => severity !== 'note' && !(ASKED[kind] ?? []).includes(code)).map(({ code, wall }) => `${code} on ${wall}`).sort();
  return questions.join() === toldOf(slow).join() ? [] : [`asks ${questions.join(', ')}; curves ${toldOf(slow).join(', ')}`];
}

/** Where a curve runs on, both walls reach the one point, in every course that both have, and no run there has a seam. */
function gaps({ walls, junctions }: LaidStorey): string[] {
  return junctions.filter(({ kind }) => kind === 'straight').flatMap(({ id, walls: marks }) => {
    const members = marks.map((mark) => walls.find((wall) => wall.mark === mark)!);
    if (!members.some(({ arc }) => arc)) return [];
    // Two walls that close a ring meet at both their ends: each end is told by its junction.
    const atStart = ({ startJunction }: { startJunction: string }): boolean => startJunction === id;
    const [a, b] = members.map((wall) => (atStart(wall) ? wall.axisFrom : wall.axisTo)) as [{ x: number; y: number }, { x: number; y: number }];
    const apart = Math.hypot(a.x - b.x, a.y - b.y);
    const both = Math.min(...members.map(({ courses }) => courses.length));
    const short = members.flatMap((wall) => wall.courses.filter(({ n }) => n <= both).filter(({ from, to }) => (atStart(wall) ? from !== 0 : to !== wall.length)).map(({ n }) => `${wall.mark}/${n} stops short of ${id}`));
    const seams = members.flatMap((wall) => wall.courses.filter(({ headJoints }) => headJoints.some(({ kind }) => kind.startsWith('seam'))).map(({ n }) => `${wall.mark}/${n} has a seam`));
    return [...(apart > 10 ? [`${id}: ${marks.join(' and ')} stand ${apart} nm apart`] : []), ...short, ...seams];
  });
}

function faults(from: number, to: number, tight: boolean, look: (plan: CurvedPlan, schedule: ReturnType<typeof curvedCanonical>) => readonly string[]): string[] {
  const found: string[] = [];
  for (let seed = from; seed <= to; seed += 1) {
    const plan = curvedPlan(seed, { tight });
    found.push(...look(plan, curvedCanonical(plan.document)).map((fault) => `${nameOf(plan)}: ${fault}`));
  }
  return found;
}

const overBound = ({ units }: Takeoff): string[] => units.filter(({ bought, lowerBound }) => bought > lowerBound + 2).map(({ sku, bought, lowerBound }) => `${sku}: ${bought} bought, bound ${lowerBound}`);

describe('random plans with curves', () => {
  it.each(groups(60, 1))('seeds %i to %i: as the slow count, every law kept, no question, no gap', (from, to) => {
    expect(faults(from, to, false, (plan, schedule) => {
      const [takeoff, slow] = [takeOff(schedule, range), slowCurves(plan, schedule)];
      return [
        ...curveDifferences(takeoff, slow),
        ...brokenLaws(takeoff, range),
        ...askedFaults(takeoff, plan, slow),
        ...overBound(takeoff),
        ...takeoff.laid.storeys.flatMap(gaps),
      ];
    })).toEqual([]);
  });

  it.each(groups(20, 2_001))('seeds %i to %i with openings anywhere: every law kept, rules and checks run and give finite materials', (from, to) => {
    expect(faults(from, to, true, (_, schedule) => {
      const { takeoff, materials } = measure(schedule, range);
      return [
        ...brokenLaws(takeoff, range),
        ...overBound(takeoff),
        ...materials.filter(({ quantity }) => !Number.isFinite(quantity) || quantity < 0).map(({ sku, quantity }) => `${sku}: ${quantity}`),
      ];
    })).toEqual([]);
  });
});

/** What is counted, both hands of a unit together. */
function counts({ units, bondBreaks, findings }: Takeoff): Record<string, number> {
  const sums: Record<string, number> = { 'bond breaks': bondBreaks.length, questions: findings.filter(({ severity }) => severity !== 'note').length };
  for (const { kind, core, pieces, bought, spare, lowerBound } of units) {
    for (const [what, number] of Object.entries({ pieces, bought, spare, lowerBound })) {
      sums[`${kind} ${core} ${what}`] = (sums[`${kind} ${core} ${what}`] ?? 0) + number;
    }
  }
  return sums;
}
const volume = ({ concrete }: Takeoff): number => Number(concrete.reduce((sum, { nm3 }) => sum + nm3, 0n));

describe.each(Object.entries(CURVED_CHANGES))('a plan with curves after: %s', (name, change) => {
  it('counts, asks, buys and pours the same, on every kind', () => {
    const kinds = Object.keys(CURVED_KINDS);
    const first = 3_000 + Object.keys(CURVED_CHANGES).indexOf(name) * kinds.length;
    for (let seed = first; seed < first + kinds.length; seed += 1) {
      const plan = curvedPlan(seed, { tight: seed % 3 === 0 });
      const [before, after] = [plan.document, change(plan, seededRandom(seed))].map((document) => takeOff(curvedCanonical(document), range)) as [Takeoff, Takeoff];
      const plot = `${plan.kind} ${seed}`;
      expect({ plot, ...counts(after) }).toEqual({ plot, ...counts(before) });
      expect(Math.abs(volume(after) / volume(before) - 1)).toBeLessThanOrEqual(1e-9);
    }
  });
});
