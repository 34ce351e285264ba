import { add, cross, direction, dot, leftNormal, scale, subtract } from '../geometry/vector.js';
import type { Vector } from '../geometry/vector.js';
import type { LaidWall } from '../takeoff/laid.js';

/** The line of a wall in plan, straight or an arc: points, directions and stations of its axis and of lines beside it. */
export type WallLine = Pick<LaidWall, 'axisFrom' | 'axisTo' | 'arc'>;

const turnOf = ({ arc }: WallLine): 1 | -1 => (arc?.turns === 'right' ? -1 : 1);

/** Unit vector from→to along the axis at a station [nm]. */
export function directionAt(wall: WallLine, station: number): Vector {
  if (wall.arc === null) return direction(subtract(wall.axisTo, wall.axisFrom));
  return scale(leftNormal(radialAt(wall, station)), turnOf(wall));
}

/** Unit vector into a wall from its start or its end. */
export const intoEnd = (wall: WallLine & Pick<LaidWall, 'length'>, end: 'start' | 'end'): Vector =>
  end === 'start' ? directionAt(wall, 0) : scale(directionAt(wall, wall.length), -1);

/** A point of the plan: station along the axis, distance to its left [nm]. */
export function pointAt(wall: WallLine, station: number, left: number): Vector {
  if (wall.arc === null) {
    const along = directionAt(wall, 0);
    return add(add(wall.axisFrom, scale(along, station)), scale(leftNormal(along), left));
  }
  return add(wall.arc.centre, scale(radialAt(wall, station), wall.arc.axisRadius - turnOf(wall) * left));
}

function radialAt(wall: WallLine, station: number): Vector {
  const { centre, axisRadius } = wall.arc as NonNullable<LaidWall['arc']>;
  const angle = angleOf(subtract(wall.axisFrom, centre)) + (turnOf(wall) * station) / axisRadius;
  return { x: Math.cos(angle), y: Math.sin(angle) };
}

const angleOf = ({ x, y }: Vector): number => Math.atan2(y, x);

/** Station of the point of the axis nearest to a point [nm]. */
export function stationAt(wall: WallLine, point: Vector): number {
  if (wall.arc === null) return dot(subtract(point, wall.axisFrom), directionAt(wall, 0));
  const { centre, axisRadius } = wall.arc;
  const turned = turnOf(wall) * (angleOf(subtract(point, centre)) - angleOf(subtract(wall.axisFrom, centre)));
  // arcs sweep half a turn at most: a little before the start is behind, not nearly a whole turn ahead
  const quarter = Math.PI / 2;
  return (((((turned + quarter) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)) - quarter) * axisRadius;
}

/** Bulge of the stretch between two stations: the tangent of a quarter of its sweep, positive counter-clockwise, 0 where straight. */
export const bulgeOf = (wall: WallLine, from: number, to: number): number =>
  wall.arc === null ? 0 : Math.tan((turnOf(wall) * (to - from)) / wall.arc.axisRadius / 4);

const PARALLEL = 1e-6;

type Curve = { readonly point: Vector; readonly along: Vector } | { readonly centre: Vector; readonly radius: number };

const curveOf = (wall: WallLine, left: number): Curve =>
  wall.arc === null
    ? { point: pointAt(wall, 0, left), along: directionAt(wall, 0) }
    : { centre: wall.arc.centre, radius: wall.arc.axisRadius - turnOf(wall) * left };

/** Where a line beside one wall meets a line beside another, the nearest to a point; null where they do not meet. */
export function meetingOf(wall: WallLine, left: number, other: WallLine, otherLeft: number, near: Vector): Vector | null {
  const [a, b] = [curveOf(wall, left), curveOf(other, otherLeft)];
  const found = 'centre' in a ? ('centre' in b ? circles(a, b) : lineWithCircle(b, a)) : 'centre' in b ? lineWithCircle(a, b) : lines(a, b);
  const byDistance = [...found].sort((p, q) => far(p, near) - far(q, near));
  return byDistance[0] ?? null;
}

const far = (a: Vector, b: Vector): number => Math.hypot(a.x - b.x, a.y - b.y);

function lines(a: { point: Vector; along: Vector }, b: { point: Vector; along: Vector }): Vector[] {
  const sine = cross(a.along, b.along);
  return Math.abs(sine) < PARALLEL ? [] : [add(a.point, scale(a.along, cross(subtract(b.point, a.point), b.along) / sine))];
}

function lineWithCircle(line: { point: Vector; along: Vector }, { centre, radius }: { centre: Vector; radius: number }): Vector[] {
  const foot = add(line.point, scale(line.along, dot(subtract(centre, line.point), line.along)));
  const rest = radius ** 2 - far(foot, centre) ** 2;
  if (rest < 0) return [];
  return [Math.sqrt(rest), -Math.sqrt(rest)].map((run) => add(foot, scale(line.along, run)));
}

function circles(a: { centre: Vector; radius: number }, b: { centre: Vector; radius: number }): Vector[] {
  const apart = far(a.centre, b.centre);
  if (apart === 0) return [];
  const along = (apart ** 2 + a.radius ** 2 - b.radius ** 2) / (2 * apart);
  const rest = a.radius ** 2 - along ** 2;
  if (rest < 0) return [];
  const unit = scale(subtract(b.centre, a.centre), 1 / apart);
  const foot = add(a.centre, scale(unit, along));
  return [Math.sqrt(rest), -Math.sqrt(rest)].map((run) => add(foot, scale(leftNormal(unit), run)));
}
