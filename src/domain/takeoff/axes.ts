import { add, cross, direction, dot, leftNormal, scale, subtract, turnDegrees, type Vector } from '../geometry/vector.js';
import type { Core, FormRange } from '../range/range.js';
import { meantLength, type Nm } from '../quantity/length.js';
import type { EndName, NormalPlan, WallEnd } from '../schedule/line-normalisation.js';
import type { Wall } from '../schedule/schedule.js';
import { nodeSetBack } from './corners.js';

/** Beyond this a turn folds back on itself and its node has no place [deg]. */
export const FOLDED_DEG = 175;

/** A wall in walking direction, brought to the axis of its core. `start` and `end` are the walk's from here on. */
export interface AxisWall {
  readonly index: number;
  readonly wall: Wall;
  readonly core: Core;
  /** Over both foam faces. */
  readonly thickness: Nm;
  readonly reversed: boolean;
  readonly forward: Vector;
  /** The dimension line lies this far to the right of the axis. */
  readonly offset: number;
  /** Length on the dimension line. */
  readonly drawn: Nm;
  /** What the axis loses of the drawn length at each end; negative where it gains. */
  readonly back: Readonly<Record<EndName, Nm>>;
  /** Node to node along the axis; not positive where a wall is shorter than its corners. */
  readonly length: Nm;
  readonly from: Vector;
  readonly to: Vector;
}

export const walkEnd = (reversed: boolean, end: EndName): EndName => (reversed ? (end === 'start' ? 'end' : 'start') : end);

/** How far the dimension line lies to the right of the axis of the core. */
export function dimensionOffset(wall: Wall, core: Core, thickness: Nm): number {
  if (wall.dimensionsTo === 'axis') return 0;
  return (wall.dimensionsTo === 'foam-face' ? thickness : core.width) / 2;
}

/** The wall on its axis with given set-backs of its nodes. */
export function withBacks(wall: Omit<AxisWall, 'back' | 'length' | 'from' | 'to'>, exact: Record<EndName, number>): AxisWall {
  const drawnStart = wall.reversed ? wall.wall.to : wall.wall.from;
  const origin = add(drawnStart, scale(leftNormal(wall.forward), wall.offset));
  const back = { start: Math.round(exact.start), end: Math.round(exact.end) };
  return {
    ...wall,
    back,
    length: wall.drawn - back.start - back.end,
    from: add(origin, scale(wall.forward, exact.start)),
    to: add(origin, scale(wall.forward, wall.drawn - exact.end)),
  };
}

/**
 * Brings every wall to its axis: the dimension line lies on the right, and at each corner the node stands where the two axes meet.
 *
 * Axis length = L − Σ (T/2)·tan(turn/2) over both ends, signed, where the dimensions are to the foam face.
 *
 * @param offsets of walls that stand on another core than at their foot, where they are other than the wall's own
 * @source statement of the project's decision 1
 */
export function layAxes(plan: NormalPlan, range: FormRange, offsets: ReadonlyMap<number, number> = new Map()): AxisWall[] {
  const bare = plan.walls.map((wall, index) => {
    const core = range.cores.get(wall.core);
    if (!core) throw new RangeError(`wall ${wall.mark}: the range has no core ${wall.core}`);
    const thickness = core.width + 2 * range.panel;
    const reversed = plan.reversed[index]!;
    const drawnForward = direction(subtract(wall.to, wall.from));
    return {
      index,
      wall,
      core,
      thickness,
      reversed,
      forward: reversed ? scale(drawnForward, -1) : drawnForward,
      offset: offsets.get(index) ?? dimensionOffset(wall, core, thickness),
      drawn: meantLength(wall.length),
    };
  });
  const backs = bare.map(() => ({ start: 0, end: 0 }));
  for (const { pair } of plan.nodes) {
    if (!pair || pair.straight) continue;
    const [arriving, leaving] = inWalkingOrder(plan, pair.a, pair.b);
    const [first, second] = [bare[arriving.wall]!, bare[leaving.wall]!];
    const turn = turnDegrees(first.forward, second.forward);
    if (Math.abs(turn) > FOLDED_DEG) continue;
    backs[arriving.wall]!.end = nodeSetBack(first.offset, second.offset, turn);
    backs[leaving.wall]!.start = nodeSetBack(second.offset, first.offset, turn);
  }
  return bare.map((wall, index) => withBacks(wall, backs[index]!));
}

/** The end that the walk arrives by, then the end it leaves by. */
export function inWalkingOrder(plan: NormalPlan, a: WallEnd, b: WallEnd): [WallEnd, WallEnd] {
  return walkEnd(plan.reversed[a.wall]!, a.end) === 'end' ? [a, b] : [b, a];
}

/** A station along a wall in walking direction as the user counts it, from the wall's own `from`; and back. */
export const userStation = (wall: AxisWall, at: Nm): Nm => (wall.reversed ? wall.length - at : at);

/** A point in a wall's own frame: along its axis from its walking start, and across it, positive to the left. */
export function inFrameOf(wall: AxisWall, point: Vector): { along: number; across: number } {
  const relative = subtract(point, wall.from);
  return { along: dot(relative, wall.forward), across: cross(wall.forward, relative) };
}
