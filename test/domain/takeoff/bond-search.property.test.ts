import { describe, expect, it } from '@jest/globals';
import { takeOff, type LaidCourse, type LaidStorey, type LaidWall } from '../../../src/domain/takeoff/index.js';
import { fewestBreaks, pairsCloser, type SlowCourse } from '../../oracles/slow-bond.js';
import { canonicalSchedule } from '../../support/canonical-schedule.js';
import { randomPlan } from '../../support/plans.js';
import { heron } from '../../support/small-schedules.js';

const range = heron();

interface Seen {
  readonly course: SlowCourse;
  /** Joints of the forms as laid, those at legs left out. */
  readonly joints: readonly number[];
}

/** A course as the oracle wants it; null where it is more than one stretch, has a seam or an end cut on the skew. */
function seen({ pieces, headJoints, voids, n }: LaidCourse, { mark }: LaidWall, { junctions }: LaidStorey): Seen | null {
  const tiled = pieces.filter(({ inside }) => !inside);
  const forms = tiled.filter(({ kind }) => kind === 'straight');
  const plain = voids.length === 0 && headJoints.every(({ kind }) => kind === 'leg' || kind === 'module') && forms.every(({ from, to, pieceLength }) => to - from === pieceLength);
  if (!plain) return null;
  const [from, to] = [forms[0]?.from ?? 0, forms.at(-1)?.to ?? 0];
  const legs = headJoints.filter(({ kind }) => kind === 'leg').map(({ at }) => at);
  const stretch = { from, to, overLeft: 0, overRight: 0, fixedLeft: legs.includes(from), fixedRight: legs.includes(to) };
  const forbidden = junctions
    .filter(({ tee, courses }) => tee?.through === mark && courses.includes(n))
    .map(({ tee }) => ({ from: tee!.cutFrom - range.webSpacing, to: tee!.cutTo + range.webSpacing }));
  return {
    course: { stretches: forms.length > 0 ? [stretch] : [], fixedJoints: legs, forbidden },
    joints: headJoints.filter(({ kind }) => kind === 'module').map(({ at }) => at),
  };
}

/** Joints near a tee and pairs closer than the stagger, of which a choice moves one at least. */
function broken(courses: readonly Seen[]): readonly [number, number] {
  let [inCutOuts, breaks] = [0, 0];
  courses.forEach(({ course, joints }, index) => {
    inCutOuts += joints.reduce((sum, at) => sum + course.forbidden.filter(({ from, to }) => at > from && at < to).length, 0);
    const below = courses[index - 1];
    if (!below) return;
    breaks += pairsCloser(joints, [...below.joints, ...below.course.fixedJoints], range.minStagger) + pairsCloser(course.fixedJoints, below.joints, range.minStagger);
  });
  return [inCutOuts, breaks];
}

interface Looked {
  readonly faults: string[];
  walls: number;
  withBreaks: number;
}

/** Walls that are a line of their own, each against the oracle. */
function look(seed: number, kind: string | undefined, into: Looked): void {
  const plan = randomPlan(seed, kind ? { kind, openings: false } : { openings: false });
  for (const storey of takeOff(canonicalSchedule(plan.document), range).laid.storeys) {
    const shared = new Set(storey.junctions.filter(({ kind: at, walls }) => at === 'straight' || (at === 'tee' && walls.length === 3)).flatMap(({ walls }) => walls));
    for (const wall of storey.walls.filter(({ mark }) => !shared.has(mark))) {
      const courses = wall.courses.map((course) => seen(course, wall, storey));
      if (!courses.every((course) => course !== null)) continue;
      const [found, fewest] = [broken(courses), fewestBreaks(courses.map(({ course }) => course), range)];
      into.walls += 1;
      if (found[0] + found[1] > 0) into.withBreaks += 1;
      if (found.join() !== fewest.join()) into.faults.push(`${plan.kind} ${seed} ${wall.mark}: ${found.join()} in cut-outs and breaks, where ${fewest.join()} would do`);
    }
  }
}

function lookedAt(first: number, last: number, kind?: string): Looked {
  const into: Looked = { faults: [], walls: 0, withBreaks: 0 };
  for (let seed = first; seed <= last; seed++) look(seed, kind, into);
  return into;
}

describe('where each course is one stretch of forms', () => {
  it.each([[7_001, 7_020], [7_021, 7_040]])('no layout breaks fewer bonds, plans %i to %i', (first, last) => {
    const { faults, walls } = lookedAt(first, last);
    expect(faults).toEqual([]);
    expect(walls).toBeGreaterThan(40);
  });

  it('nor on 30 plans with partitions, whose tees leave some walls no whole bond', () => {
    const { faults, withBreaks } = lookedAt(5_001, 5_030, 'partitions');
    expect(faults).toEqual([]);
    expect(withBreaks).toBeGreaterThan(3);
  });
});
