import { finding, type Finding } from '../evidence/finding.js';
import { cross, subtract, turnDegrees } from '../geometry/vector.js';
import { DisjointSets } from '../geometry/clusters.js';
import { forEachNearPair } from '../geometry/near-pairs.js';
import { stripsOverlap } from '../geometry/strips-overlap.js';
import { MEETING_REACH, STRAIGHT_BELOW_DEG } from '../schedule/line-normalisation.js';
import { toMm } from '../quantity/length.js';
import { inFrameOf, userStation, type AxisWall } from './axes.js';
import { curvedConflict } from './curved-conflicts.js';
import { reachOf } from './curved-tees.js';
import { cutOutHalf } from './runs.js';
import type { StoreyPlan } from './storey-plan.js';
import type { Tee } from './tees.js';

/** Station along `a` where the axis of `b` passes through it; null where it does not pass through both. */
function crossingStation(a: AxisWall, b: AxisWall): number | null {
  const sine = cross(a.forward, b.forward);
  const between = subtract(b.from, a.from);
  const along = cross(between, b.forward) / sine;
  const across = cross(between, a.forward) / sine;
  const inside = (at: number, wall: AxisWall, other: AxisWall): boolean =>
    at > other.thickness / 2 + MEETING_REACH && at < wall.length - other.thickness / 2 - MEETING_REACH;
  return inside(along, a, b) && inside(across, b, a) ? along : null;
}

/** Length along which two parallel walls lie in each other; 0 where they do not. */
function sharedLength(a: AxisWall, b: AxisWall): number {
  const first = inFrameOf(a, b.from);
  const second = inFrameOf(a, b.to);
  const apart = Math.min(Math.abs(first.across), Math.abs(second.across));
  if (apart >= (a.thickness + b.thickness) / 2 - MEETING_REACH) return 0;
  const low = Math.max(0, Math.min(first.along, second.along));
  const high = Math.min(a.length, Math.max(first.along, second.along));
  return Math.max(0, high - low);
}

/** Pairs of walls that may share ground: those whose lines meet, whatever marks part the lines. */
function acquainted(plan: StoreyPlan): (first: number, second: number) => boolean {
  const lines = new DisjointSets(plan.walls.length);
  for (const { kind, walls } of plan.junctions) if (kind === 'straight') lines.join(walls[0]!, walls[1]!);
  const meets = new Set<string>();
  const add = (a: number, b: number): void => {
    const [first, second] = [lines.find(a), lines.find(b)];
    meets.add(`${first}/${second}`).add(`${second}/${first}`);
  };
  for (const { walls } of plan.junctions) walls.forEach((wall, index) => walls.slice(index + 1).forEach((other) => add(wall, other)));
  for (const { through, branch } of plan.tees) add(through, branch);
  for (const [a, b] of meetingTees(plan)) add(a.branch, b.branch);
  return (first, second) => meets.has(`${lines.find(first)}/${lines.find(second)}`);
}

/** Walls that pass through each other (`walls-cross`) or stand in each other (`wall-overlap`). */
export function wallConflicts(plan: StoreyPlan): Finding[] {
  const found: Finding[] = [];
  const storey = plan.storey.id;
  const known = acquainted(plan);
  const bodies = plan.walls.map((wall) => ({ from: wall.from, to: wall.to, reach: reachOf(wall, wall.thickness / 2) }));
  forEachNearPair(bodies, (first, second) => {
    const [a, b] = [plan.walls[first]!, plan.walls[second]!];
    if (a.arc || b.arc) {
      found.push(...curvedConflict(a, b, known(first, second), storey));
      return;
    }
    const turn = Math.abs(turnDegrees(a.forward, b.forward));
    const walls = [a.wall.mark, b.wall.mark];
    if (Math.min(turn, 180 - turn) <= STRAIGHT_BELOW_DEG) {
      const shared = sharedLength(a, b);
      if (shared > MEETING_REACH) found.push(finding('wall-overlap', { storey, walls, numbers: { sharedMm: rounded(toMm(shared)), core: a.core.code } }));
      return;
    }
    const at = crossingStation(a, b);
    if (at !== null) {
      found.push(finding('walls-cross', { storey, walls, atMm: rounded(toMm(userStation(a, at))), numbers: { core: a.core.code, otherCore: b.core.code } }));
    } else if (!known(first, second) && a.length > 0 && b.length > 0 && stripsOverlap(bodies[first]!, bodies[second]!, MEETING_REACH)) {
      found.push(finding('wall-overlap', { storey, walls, numbers: { core: a.core.code } }));
    }
  });
  return [...found, ...crossingTees(plan)];
}

/** Pairs of tees on one wall whose cut-outs meet, from one side or from both. */
function meetingTees(plan: StoreyPlan): [Tee, Tee][] {
  const byWall = new Map<number, Tee[]>();
  for (const tee of plan.tees) byWall.set(tee.through, [...(byWall.get(tee.through) ?? []), tee]);
  return [...byWall.values()].flatMap((tees) =>
    tees.flatMap((tee, index) =>
      tees
        .slice(index + 1)
        .filter((other) => Math.abs(tee.station - other.station) < cutOutHalf(tee, plan) + cutOutHalf(other, plan))
        .map((other): [Tee, Tee] => [tee, other]),
    ),
  );
}

/** Two branches whose cut-outs meet: a crossing, whoever drew it as two tees. */
function crossingTees(plan: StoreyPlan): Finding[] {
  return meetingTees(plan).flatMap(([tee, other]) => {
    if (tee.crossing || other.crossing) return [];
    const walls = [tee.through, tee.branch, other.branch].map((wall) => plan.walls[wall]!.wall.mark);
    const through = plan.walls[tee.through]!;
    const numbers = { core: through.core.code, otherCore: plan.walls[tee.branch]!.core.code };
    return [finding('walls-cross', { storey: plan.storey.id, walls, atMm: rounded(toMm(userStation(through, tee.station))), numbers })];
  });
}

/** Six decimals of a millimetre: a whole nanometre. */
const rounded = (mm: number): number => Math.round(mm * 1e6) / 1e6;
