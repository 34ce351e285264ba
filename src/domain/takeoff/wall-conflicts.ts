import { finding, type Finding } from '../evidence/finding.js';
import { cross, subtract, turnDegrees } from '../geometry/vector.js';
import { forEachNearPair } from '../geometry/near-pairs.js';
import { MEETING_REACH, STRAIGHT_BELOW_DEG } from '../schedule/line-normalisation.js';
import { toMm } from '../quantity/length.js';
import { inFrameOf, type AxisWall } from './axes.js';
import { cutOutHalf } from './runs.js';
import type { StoreyPlan } from './storey-plan.js';

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

/** Walls that pass through each other (`walls-cross`) or lie in each other (`wall-overlap`). */
export function wallConflicts(plan: StoreyPlan): Finding[] {
  const found: Finding[] = [];
  const storey = plan.storey.id;
  forEachNearPair(
    plan.walls.map(({ from, to, thickness }) => ({ from, to, reach: thickness / 2 })),
    (first, second) => {
      const [a, b] = [plan.walls[first]!, plan.walls[second]!];
      const turn = Math.abs(turnDegrees(a.forward, b.forward));
      const walls = [a.wall.mark, b.wall.mark];
      if (Math.min(turn, 180 - turn) <= STRAIGHT_BELOW_DEG) {
        const shared = sharedLength(a, b);
        if (shared > MEETING_REACH) found.push(finding('wall-overlap', { storey, walls, numbers: { sharedMm: rounded(toMm(shared)), core: a.core.code } }));
        return;
      }
      const at = crossingStation(a, b);
      if (at === null) return;
      const own = a.reversed ? a.length - at : at;
      found.push(finding('walls-cross', { storey, walls, atMm: rounded(toMm(own)), numbers: { core: a.core.code, otherCore: b.core.code } }));
    },
  );
  return [...found, ...crossingTees(plan)];
}

/** Two branches opposite each other cut both panels of the through wall: a crossing, whoever drew it as two tees. */
function crossingTees(plan: StoreyPlan): Finding[] {
  return plan.tees.flatMap((tee, index) =>
    plan.tees.slice(index + 1).flatMap((other) => {
      if (other.through !== tee.through || other.side === tee.side || tee.crossing || other.crossing) return [];
      const apart = Math.abs(tee.station - other.station);
      if (apart >= cutOutHalf(tee, plan) + cutOutHalf(other, plan)) return [];
      const walls = [tee.through, tee.branch, other.branch].map((wall) => plan.walls[wall]!.wall.mark);
      return [finding('walls-cross', { storey: plan.storey.id, walls, atMm: rounded(toMm(tee.station)), numbers: { core: plan.walls[tee.through]!.core.code, otherCore: plan.walls[tee.branch]!.core.code } })];
    }),
  );
}

/** Six decimals of a millimetre: a whole nanometre. */
const rounded = (mm: number): number => Math.round(mm * 1e6) / 1e6;
