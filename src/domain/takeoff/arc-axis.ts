import { add, distance, subtract, type Vector } from '../geometry/vector.js';
import { arcLineOf } from '../schedule/arc-line.js';
import type { Nm } from '../quantity/length.js';
import type { Wall } from '../schedule/schedule.js';

/** The axis of a radius wall, walked: an arc concentric with its dimension line. */
export interface AxisArc {
  readonly centre: Vector;
  /** Of the axis; not positive where the wall is thicker than its curve is wide [nm]. */
  readonly radius: number;
  /** Of the dimension line. */
  readonly drawnRadius: Nm;
  /** 1 where the walk turns left, −1 where it turns right. */
  readonly turn: 1 | -1;
  /** Central angle as drawn [rad]. */
  readonly sweep: number;
  /** Bearing, seen from the centre, of the end where the walk enters as drawn, and of the node there [rad]. */
  readonly drawnFrom: number;
  readonly nodeFrom: number;
}

/**
 * Brings an arc to the axis. The dimension line lies `offset` to the right of the walk: outside the axis where it turns left,
 * inside it where it turns right.
 *
 * @equation Ra = R − offset turning left, R + offset turning right
 * @returns the axis, null for a straight wall
 * @source statement of the project's decision 21 (geometry)
 */
export function axisArcOf(wall: Wall, reversed: boolean, offset: number): AxisArc | null {
  const line = arcLineOf(wall);
  if (!line) return null;
  const turn = reversed ? (-line.turn as 1 | -1) : line.turn;
  const enters = subtract(reversed ? wall.to : wall.from, line.centre);
  const drawnFrom = Math.atan2(enters.y, enters.x);
  // A length written beside the ends is the one that counts; it differs from theirs by less than 1 mm.
  const sweep = Math.abs(wall.length - line.radius * line.sweep) <= 1 ? line.sweep : wall.length / line.radius;
  return { centre: line.centre, radius: line.radius - turn * offset, drawnRadius: line.radius, turn, sweep, drawnFrom, nodeFrom: drawnFrom };
}

const bearingPoint = ({ centre, radius }: AxisArc, bearing: number): Vector =>
  add(centre, { x: radius * Math.cos(bearing), y: radius * Math.sin(bearing) });

/** The axis between its nodes: what it loses at each end is measured along it. */
export function arcBetween(arc: AxisArc, exact: { readonly start: number; readonly end: number }, back: { readonly start: Nm; readonly end: Nm }): { arc: AxisArc; length: Nm; from: Vector; to: Vector } {
  const bearing = (along: number): number => arc.drawnFrom + (arc.turn * along) / arc.radius;
  const nodeFrom = bearing(exact.start);
  return {
    arc: { ...arc, nodeFrom },
    length: Math.round(arc.radius * arc.sweep) - back.start - back.end,
    from: bearingPoint(arc, nodeFrom),
    to: bearingPoint(arc, bearing(arc.radius * arc.sweep - exact.end)),
  };
}

/** Direction of the walk at a bearing. */
const tangentAt = ({ turn }: AxisArc, bearing: number): Vector => ({ x: -turn * Math.sin(bearing), y: turn * Math.cos(bearing) });

/** Direction of the walk at an end as drawn. */
export const arcHeading = (arc: AxisArc, end: 'start' | 'end'): Vector =>
  tangentAt(arc, end === 'start' ? arc.drawnFrom : arc.drawnFrom + arc.turn * arc.sweep);

/** Direction of the walk at a station from the node. */
export const arcDirection = (arc: AxisArc, along: number): Vector => tangentAt(arc, arc.nodeFrom + (arc.turn * along) / arc.radius);

/** The end of the axis as drawn. */
export const arcDrawnEnd = (arc: AxisArc, end: 'start' | 'end'): Vector =>
  bearingPoint(arc, end === 'start' ? arc.drawnFrom : arc.drawnFrom + arc.turn * arc.sweep);

/** A point at a station from the node, `across` to the left of the axis. */
export function arcPoint(arc: AxisArc, along: number, across: number): Vector {
  const bearing = arc.nodeFrom + (arc.turn * along) / arc.radius;
  return bearingPoint({ ...arc, radius: arc.radius - arc.turn * across }, bearing);
}

/** A point in the arc's own frame: along the axis from its node, and across it, positive to the left. */
export function inArcFrame(arc: AxisArc, point: Vector): { along: number; across: number } {
  const relative = subtract(point, arc.centre);
  const middle = arc.drawnFrom + (arc.turn * arc.sweep) / 2;
  const past = Math.atan2(relative.y, relative.x) - middle;
  const fromMiddle = Math.atan2(Math.sin(past), Math.cos(past));
  const along = arc.turn * (middle + fromMiddle - arc.nodeFrom) * arc.radius;
  return { along, across: arc.turn * (arc.radius - distance(point, arc.centre)) };
}

/** A place on the dimension line nearer to its end than this is that end: lengths of arcs are rounded. */
const END_REACH: Nm = 1_000;

/** Length on the dimension line as a length along the axis. */
export function alongAxis({ radius, drawnRadius, sweep }: AxisArc, drawn: Nm): number {
  if (Math.abs(drawn) <= END_REACH) return 0;
  return Math.abs(drawnRadius * sweep - drawn) <= END_REACH ? radius * sweep : (drawn * radius) / drawnRadius;
}

/** The facets of the axis between its nodes: none stands off the arc by more than `reach`. */
export function facetsOf(arc: AxisArc, length: Nm, reach: Nm): Vector[] {
  const step = 2 * Math.acos(1 - Math.min(1, reach / arc.radius)) * arc.radius;
  const count = Math.max(1, Math.ceil(length / step));
  return Array.from({ length: count + 1 }, (_, index) => arcPoint(arc, (length * index) / count, 0));
}

/** How far the arc between two of its points stands off the straight line between them. */
export const sagitta = (arc: AxisArc, length: Nm): number => arc.radius * (1 - Math.cos(Math.min(Math.PI, length / arc.radius / 2)));
