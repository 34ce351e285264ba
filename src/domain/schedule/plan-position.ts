import type { Nm } from '../quantity/length.js';
import type { End } from './join-walls.js';
import type { WallDraft } from './wall-draft.js';

export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Ends {
  readonly from: Point;
  readonly to: Point;
}
/** Where the dimension line of a wall lies in the plan [nm]. */
export interface Position extends Ends {
  /** Direction from→to [deg], 0 along x, counter-clockwise. */
  readonly heading: number;
}
/** Positions by the walls' marks. */
export type Positions = ReadonlyMap<string, Position>;

/** A turn or heading declared against the one that is drawn [deg]. */
export const TURN_AGREES = 0.5;

export const endPoint = (ends: Ends, end: End): Point => (end === 'start' ? ends.from : ends.to);
export const otherEnd = (end: End): End => (end === 'start' ? 'end' : 'start');
export const headingOf = (from: Point, to: Point): number => (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
export const drawnPosition = (ends: Ends): Position => ({ ...ends, heading: headingOf(ends.from, ends.to) });

/** A point moved by a distance along a heading [nm, deg]; exact along the axes. */
export function moved(point: Point, heading: number, by: number): Point {
  const { x, y } = direction(heading);
  return { x: point.x + x * by, y: point.y + y * by };
}

export const fromStart = (from: Point, heading: number, length: Nm): Position => ({
  from,
  to: moved(from, heading, length),
  heading: normal(heading),
});
export const fromEnd = (to: Point, heading: number, length: Nm): Position => ({
  from: moved(to, heading, -length),
  to,
  heading: normal(heading),
});

/** The position of a wall joined by its `partnerEnd` to an `end` of a placed one; the turn is walked in the placed wall's direction. */
export function beside(position: Position, end: End, turn: number, partnerEnd: End, length: Nm): Position {
  const corner = endPoint(position, end);
  const leaving = end === 'end' ? position.heading + turn : position.heading + 180 - turn;
  return partnerEnd === 'start' ? fromStart(corner, leaving, length) : fromEnd(corner, leaving + 180, length);
}

/** Turn at an end of a wall, walked in that wall's own direction [deg]. */
export function drawnTurn(wall: Ends, end: End, partner: Ends, partnerEnd: End): number {
  const own = headingOf(wall.from, wall.to);
  const other = headingOf(partner.from, partner.to) + (end === partnerEnd ? 180 : 0);
  return normal(end === 'end' ? other - own : own - other);
}

/** Heading from an end into its wall: along the wall, or along the tangent of an arc [deg]. */
export function inwardHeading({ arc }: Pick<WallDraft, 'arc'>, position: Position, end: End): number {
  const along = end === 'start' ? position.heading : position.heading + 180;
  if (!arc) return normal(along);
  const chord = Math.hypot(position.to.x - position.from.x, position.to.y - position.from.y);
  const half = (Math.asin(Math.min(1, chord / (2 * arc.radius))) * 180) / Math.PI;
  const bulgesRight = (arc.turns === 'left') === (end === 'start');
  return normal(along + (bulgesRight ? -half : half));
}

/** Cosine and sine, exact along the axes. */
export function direction(heading: number): Point {
  const quarter = normal(heading);
  if (quarter === 0) return { x: 1, y: 0 };
  if (quarter === 90) return { x: 0, y: 1 };
  if (quarter === 180) return { x: -1, y: 0 };
  if (quarter === -90) return { x: 0, y: -1 };
  return { x: Math.cos((quarter * Math.PI) / 180), y: Math.sin((quarter * Math.PI) / 180) };
}

/** An angle brought into (-180, 180]. */
export function normal(degrees: number): number {
  const turned = ((degrees % 360) + 360) % 360;
  return turned > 180 ? turned - 360 : turned;
}
