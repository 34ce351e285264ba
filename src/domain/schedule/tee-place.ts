import type { Nm } from '../quantity/length.js';
import type { End } from './join-walls.js';
import { direction, endPoint, fromEnd, fromStart, moved, type Point, type Position } from './plan-position.js';
import type { DeclaredJoint } from './schedule.js';
import type { WallBody } from './wall-bodies.js';

export type TeeJoint = Extract<DeclaredJoint, { joint: 'tee' }>;

/** A wall as it stands: its dimension line, its body, and whether it is walked against its from→to (decision 2). */
export interface StandingWall {
  readonly position: Position;
  readonly body: WallBody;
  readonly reversed: boolean;
}

/** Axis of the core from the dimension line, positive to the left of from→to. */
const axisAcross = ({ body, reversed }: Pick<StandingWall, 'body' | 'reversed'>): number => (reversed ? -body.offset : body.offset);

/**
 * The position of a branch that stands square on the side of a through wall.
 *
 * The axis of the branch meets the through wall's near foam face, the one on the `side` of its from→to, at the station `at` of its
 * dimension line; the branch's length runs from there to its other end. Where the dimension line of the branch lies off its axis its
 * drawn end lies off that point along the face.
 *
 * @param reversed whether the branch is walked against its own from→to
 */
export function branchPosition(
  through: StandingWall,
  { at, side }: TeeJoint,
  branch: { readonly end: End; readonly length: Nm; readonly body: WallBody; readonly reversed: boolean },
): Position {
  const toSide = side === 'left' ? 1 : -1;
  const left = through.position.heading + 90;
  const station = moved(through.position.from, through.position.heading, at);
  const onFace = moved(station, left, axisAcross(through) + (toSide * through.body.thickness) / 2);
  const away = through.position.heading + 90 * toSide;
  const heading = branch.end === 'start' ? away : away + 180;
  const drawn = moved(onFace, heading + 90, -axisAcross(branch));
  return branch.end === 'start' ? fromStart(drawn, heading, branch.length) : fromEnd(drawn, heading, branch.length);
}

/** How an end of a wall meets another wall, seen along the through wall's from→to. */
export interface TeeFound {
  /** Where the centre line of the branch crosses the through wall's dimension line, from its `from` [nm]. */
  readonly station: number;
  readonly side: 'left' | 'right';
  /** The branch's axis end to the near foam face, square to it: positive short of it, negative inside the wall [nm]. */
  readonly gap: number;
}

/**
 * Measures a tee that stands; null where the branch runs along the through wall (within 1°).
 *
 * @param inward heading from the branch's end into the branch [deg]
 */
export function measuredTee(through: StandingWall, branch: StandingWall, end: End, inward: number): TeeFound | null {
  const [f, into] = [direction(through.position.heading), direction(inward)];
  const leans = cross(f, into);
  if (Math.abs(leans) <= Math.sin(Math.PI / 180)) return null;
  const heading = end === 'start' ? inward : inward + 180;
  const tip = moved(endPoint(branch.position, end), heading + 90, axisAcross(branch));
  const from = through.position.from;
  const relative = { x: tip.x - from.x, y: tip.y - from.y };
  const across = cross(f, relative);
  const side = leans > 0 ? 'left' : 'right';
  const beyondAxis = (across - axisAcross(through)) * (side === 'left' ? 1 : -1);
  return {
    station: dot(f, relative) - (across * dot(f, into)) / leans,
    side,
    gap: beyondAxis - through.body.thickness / 2,
  };
}

const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
/** Positive where b lies to the left of a. */
const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
