import { nearestMeeting, type Track } from '../geometry/tracks.js';
import { add, cross, direction, dot, leftNormal, scale, subtract, turnDegrees, type Vector } from '../geometry/vector.js';
import type { Core, FormRange } from '../range/range.js';
import { meantLength, type Nm } from '../quantity/length.js';
import type { EndName, NormalPlan, WallEnd } from '../schedule/line-normalisation.js';
import type { Wall } from '../schedule/schedule.js';
import { arcBetween, arcDirection, arcDrawnEnd, arcHeading, axisArcOf, inArcFrame, type AxisArc } from './arc-axis.js';
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
  /** Direction of the walk; of a radius wall that where it enters. */
  readonly forward: Vector;
  /** The curve of a radius wall; stations then run along it. */
  readonly arc: AxisArc | null;
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
  if (wall.arc) return { ...wall, back, ...arcBetween(wall.arc, exact, back) };
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
    const offset = offsets.get(index) ?? dimensionOffset(wall, core, thickness);
    const arc = axisArcOf(wall, reversed, offset);
    return {
      index,
      wall,
      core,
      thickness,
      reversed,
      forward: arc ? arcHeading(arc, 'start') : reversed ? scale(drawnForward, -1) : drawnForward,
      arc,
      offset,
      drawn: arc ? wall.length : meantLength(wall.length),
    };
  });
  const backs = bare.map(() => ({ start: 0, end: 0 }));
  for (const { pair } of plan.nodes) {
    if (!pair || pair.straight) continue;
    const [arriving, leaving] = inWalkingOrder(plan, pair.a, pair.b);
    const [first, second] = [bare[arriving.wall]!, bare[leaving.wall]!];
    const turn = turnDegrees(headingAt(first, 'end'), headingAt(second, 'start'));
    if (Math.abs(turn) > FOLDED_DEG) continue;
    if (first.arc || second.arc) {
      const node = curvedNode(withBacks(first, { start: 0, end: 0 }), withBacks(second, { start: 0, end: 0 }));
      if (node) {
        backs[arriving.wall]!.end = node.arrivingBack;
        backs[leaving.wall]!.start = node.leavingBack;
      }
      continue;
    }
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

/** Direction of the walk at an end of a wall as drawn. */
export const headingAt = ({ arc, forward }: Pick<AxisWall, 'arc' | 'forward'>, end: EndName): Vector => (arc ? arcHeading(arc, end) : forward);

/** Direction of the walk at a station. */
export const directionAt = ({ arc, forward }: AxisWall, along: number): Vector => (arc ? arcDirection(arc, along) : forward);

/** Where the drawn end of a wall lies, shifted to its axis. */
export function axisEnd(wall: AxisWall, end: EndName): Vector {
  if (wall.arc) return arcDrawnEnd(wall.arc, end);
  const drawn = (end === 'start') === wall.reversed ? wall.wall.to : wall.wall.from;
  return add(drawn, scale(leftNormal(wall.forward), wall.offset));
}

/** The line or circle that runs `across` to the left of a wall's axis. */
export function trackOf(wall: AxisWall, across: number): Track {
  if (wall.arc) return { kind: 'circle', centre: wall.arc.centre, radius: Math.max(0, wall.arc.radius - wall.arc.turn * across) };
  return { kind: 'line', through: add(wall.from, scale(leftNormal(wall.forward), across)), along: wall.forward };
}

/** Where the axes of two walls meet at a corner of a curve, as what each loses of its drawn length; null where they do not meet. */
function curvedNode(arriving: AxisWall, leaving: AxisWall): { arrivingBack: number; leavingBack: number } | null {
  const node = nearestMeeting(trackOf(arriving, 0), trackOf(leaving, 0), axisEnd(arriving, 'end'));
  if (!node) return null;
  const full = arriving.arc ? arriving.arc.radius * arriving.arc.sweep : arriving.drawn;
  return { arrivingBack: full - inFrameOf(arriving, node).along, leavingBack: inFrameOf(leaving, node).along };
}

/** A point in a wall's own frame: along its axis from its walking start, and across it, positive to the left. */
export function inFrameOf(wall: AxisWall, point: Vector): { along: number; across: number } {
  if (wall.arc) return inArcFrame(wall.arc, point);
  const relative = subtract(point, wall.from);
  return { along: dot(relative, wall.forward), across: cross(wall.forward, relative) };
}
