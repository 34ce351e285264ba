import { add, cross, direction, dot, leftNormal, scale, subtract, type Vector } from '../../geometry/vector.js';
import { meantLength, type Nm } from '../../quantity/length.js';
import { roomUnderSlope, type Slope } from '../gables.js';
import { cornersOf, readBody, representation } from './extrusions.js';
import type { Frame } from './frames.js';
import type { ModelUnits } from './model-units.js';
import type { Entity } from './step-model.js';
import { Unread } from './unread.js';
import type { WallLine } from './wall-line.js';

/** A hole in the concrete: along the line from its `from`, up from the wall's foot. */
export interface Hole {
  readonly at: Nm;
  readonly sill: Nm;
  readonly width: Nm;
  readonly height: Nm;
  /** The body of the opening reaches out of the wall: only what lies inside is a hole. */
  readonly cut: boolean;
}

export interface VoidedWall {
  readonly line: WallLine;
  readonly length: Nm;
  readonly bottom: number;
  readonly height: Nm;
  readonly gable: Slope | null;
  readonly coreWidth: Nm;
}

type Span = readonly [number, number];

/** What is drawn within this of a corner of the hole is that corner [nm]. */
const AT_CORNER = 1_000_000;

/** The rectangular hole that the one straight extrusion of an opening makes through the core, whichever way it is extruded. */
export function readHole(opening: Entity, placement: Frame, wall: VoidedWall, units: ModelUnits): Hole {
  const shape = representation(opening, 'Body');
  if (!shape) throw new Unread('it has no body');
  const { extrusion, cuts } = readBody(shape, placement, units);
  if (cuts.length > 0) throw new Unread('its body is cut, which is not read');
  const corners = cornersOf(extrusion);
  const { origin, along, station } = straightAt(wall.line, middleOf(corners));
  const seen = corners.map(({ x, y, z }) => {
    const offset = subtract({ x, y }, origin);
    return { s: dot(offset, along), t: dot(offset, leftNormal(along)), z };
  });
  const [s, t, z] = [
    spanOf(seen.map((corner) => corner.s)),
    spanOf(seen.map((corner) => corner.t)),
    spanOf(seen.map((corner) => corner.z)),
  ];
  if (!seen.every((corner) => atEnd(corner.s, s) && atEnd(corner.t, t) && atEnd(corner.z, z)))
    throw new Unread('it is no upright rectangle square to its wall');
  const half = wall.coreWidth / 2 - AT_CORNER;
  if (t[0] > -half || t[1] < half) throw new Unread('it does not go through the core');
  return insideWall(wall, [station(s[0]), station(s[1])], [z[0] - wall.bottom, z[1] - wall.bottom]);
}

const spanOf = (values: readonly number[]): Span => [Math.min(...values), Math.max(...values)];
const atEnd = (value: number, [low, high]: Span): boolean => value - low <= AT_CORNER || high - value <= AT_CORNER;

function middleOf(corners: readonly Vector[]): Vector {
  const sum = corners.reduce<Vector>((total, corner) => add(total, corner), { x: 0, y: 0 });
  return scale({ x: sum.x, y: sum.y }, 1 / corners.length);
}

/**
 * The straight line along which an opening is seen: the wall's own, or the tangent of its arc at the middle of the opening. A station
 * of that line is laid square to itself onto the arc.
 */
function straightAt(
  { from, to, arc }: WallLine,
  middle: Vector,
): { origin: Vector; along: Vector; station: (s: number) => number } {
  if (!arc) return { origin: from, along: direction(subtract(to, from)), station: (s) => s };
  const [start, out] = [subtract(from, arc.centre), direction(subtract(middle, arc.centre))];
  const side = Math.sign(arc.sweep);
  const at = arc.radius * Math.atan2(cross(start, out) * side, dot(start, out));
  return {
    origin: add(arc.centre, scale(out, arc.radius)),
    along: scale(leftNormal(out), side),
    station: (s) => at + arc.radius * Math.asin(Math.max(-1, Math.min(1, s / arc.radius))),
  };
}

function insideWall(wall: VoidedWall, along: Span, up: Span): Hole {
  const start = Math.max(along[0], 0);
  const end = Math.min(along[1], wall.length);
  const sill = Math.max(up[0], 0);
  if (end - start <= AT_CORNER) throw new Unread('it does not meet its wall');
  const at = meantLength(start);
  const width = Math.min(meantLength(end - start), wall.length - at);
  const top = wall.height + (wall.gable ? roomUnderSlope(wall.gable, at, at + width, wall.length) : 0);
  const head = Math.min(up[1], top);
  if (head - sill <= AT_CORNER) throw new Unread('it does not meet its wall');
  if (wall.gable && up[1] - top > AT_CORNER) throw new Unread('it reaches through the slope of its gable');
  const out = Math.max(start - along[0], along[1] - end, sill - up[0], up[1] - head);
  const foot = meantLength(sill);
  return {
    at,
    sill: foot,
    width,
    height: Math.min(meantLength(head - sill), top - foot),
    cut: out > AT_CORNER,
  };
}
