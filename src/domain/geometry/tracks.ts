import { add, cross, distance, dot, leftNormal, scale, subtract, type Vector } from './vector.js';

/** A line or circle that goes on for ever; `along` is a unit vector. */
export type Track =
  | { readonly kind: 'line'; readonly through: Vector; readonly along: Vector }
  | { readonly kind: 'circle'; readonly centre: Vector; readonly radius: number };

/** Where two tracks meet: none, one or two points; tracks that touch without crossing may give none. */
export function meetings(a: Track, b: Track): Vector[] {
  if (a.kind === 'line') return b.kind === 'line' ? ofLines(a, b) : ofLineAndCircle(a, b);
  return b.kind === 'line' ? ofLineAndCircle(b, a) : ofCircles(a, b);
}

/** The meeting point nearest to `near`, null where the tracks do not meet. */
export function nearestMeeting(a: Track, b: Track, near: Vector): Vector | null {
  const points = meetings(a, b);
  return points.reduce<Vector | null>((best, point) => (best === null || distance(point, near) < distance(best, near) ? point : best), null);
}

type Line = Extract<Track, { kind: 'line' }>;
type Circle = Extract<Track, { kind: 'circle' }>;

function ofLines(a: Line, b: Line): Vector[] {
  const sine = cross(a.along, b.along);
  if (sine === 0) return [];
  return [add(a.through, scale(a.along, cross(subtract(b.through, a.through), b.along) / sine))];
}

function ofLineAndCircle(line: Line, circle: Circle): Vector[] {
  const relative = subtract(line.through, circle.centre);
  const side = leftNormal(line.along);
  const apart = dot(relative, side);
  const square = circle.radius ** 2 - apart ** 2;
  if (!(square >= 0)) return [];
  const foot = add(circle.centre, scale(side, apart));
  return [-1, 1].map((way) => add(foot, scale(line.along, way * Math.sqrt(square))));
}

function ofCircles(a: Circle, b: Circle): Vector[] {
  const between = distance(a.centre, b.centre);
  if (between === 0) return [];
  const along = scale(subtract(b.centre, a.centre), 1 / between);
  const reach = (between ** 2 + a.radius ** 2 - b.radius ** 2) / (2 * between);
  const square = a.radius ** 2 - reach ** 2;
  if (!(square >= 0)) return [];
  const foot = add(a.centre, scale(along, reach));
  return [-1, 1].map((way) => add(foot, scale(leftNormal(along), way * Math.sqrt(square))));
}

/** Signed angle from p to q seen from a centre, −π < angle ≤ π, positive counter-clockwise [rad]. */
export function angleBetween(centre: Vector, p: Vector, q: Vector): number {
  const [a, b] = [subtract(p, centre), subtract(q, centre)];
  return Math.atan2(cross(a, b), dot(a, b));
}

/** One side of a closed figure: from a point to the next one, straight or by the shorter way along a circle. */
export interface Side {
  readonly from: Vector;
  readonly on: Track | null;
}

/**
 * Signed area of a figure of straight and circular sides, positive counter-clockwise [unit²].
 *
 * @equation A = ½ Σ (p − o) × (q − o) + ½ Σ r²·(φ − sin φ), φ the signed angle of a circular side
 * @source geometry: Green's theorem
 */
export function areaWithin(sides: readonly Side[]): number {
  const origin = sides[0]!.from;
  return sides.reduce((sum, { from, on }, index) => {
    const to = sides[(index + 1) % sides.length]!.from;
    const angle = on?.kind === 'circle' ? angleBetween(on.centre, from, to) : 0;
    const bulge = on?.kind === 'circle' ? on.radius ** 2 * (angle - Math.sin(angle)) : 0;
    return sum + (cross(subtract(from, origin), subtract(to, origin)) + bulge) / 2;
  }, 0);
}
