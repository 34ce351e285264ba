import type { Wall } from '../../src/domain/schedule/schedule.js';
import { cross, dot, length, minus, type Point } from './slow-lines.js';

/** Length in inches, as a schedule's nanometres. */
export const inchesOf = (nm: number): number => nm / 25_400_000;

/** The dimension line of a wall as drawn: straight, or the minor arc of a circle walked left (1) or right (−1) about its centre. */
export type Curve =
  | { readonly kind: 'line'; readonly from: Point; readonly along: Point; readonly length: number }
  | { readonly kind: 'arc'; readonly centre: Point; readonly radius: number; readonly startAngle: number; readonly spin: 1 | -1; readonly length: number };

/** A point beside the dimension line: `station` along it from its own start, `aside` to the left as drawn. */
export function beside(curve: Curve, station: number, aside: number): Point {
  if (curve.kind === 'line') {
    const [x, y] = curve.along;
    return [curve.from[0] + x * station - y * aside, curve.from[1] + y * station + x * aside];
  }
  const angle = curve.startAngle + (curve.spin * station) / curve.radius;
  const radius = curve.radius - curve.spin * aside;
  return [curve.centre[0] + radius * Math.cos(angle), curve.centre[1] + radius * Math.sin(angle)];
}

/** Direction of drawing at a station. */
export function heading(curve: Curve, station: number): Point {
  if (curve.kind === 'line') return curve.along;
  const angle = curve.startAngle + (curve.spin * station) / curve.radius;
  return [-curve.spin * Math.sin(angle), curve.spin * Math.cos(angle)];
}

/** Foot of a point on the dimension line: station from its start, and distance to the left as drawn. */
export function footOf(curve: Curve, point: Point): { station: number; aside: number } {
  if (curve.kind === 'line') {
    const from = minus(point, curve.from);
    return { station: dot(curve.along, from), aside: cross(curve.along, from) };
  }
  const [x, y] = minus(point, curve.centre);
  const middle = curve.startAngle + (curve.spin * curve.length) / 2 / curve.radius;
  const turned = Math.atan2(y, x) - middle;
  const fromMiddle = curve.spin * (turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI)));
  return { station: curve.length / 2 + fromMiddle * curve.radius, aside: curve.spin * (curve.radius - Math.hypot(x, y)) };
}

export const endStation = (curve: Curve, end: 'from' | 'to'): number => (end === 'from' ? 0 : curve.length);

/** The dimension line of a schedule's wall. */
export function curveOf(wall: Wall): Curve {
  const [from, to] = [wall.from, wall.to].map(({ x, y }): Point => [inchesOf(x), inchesOf(y)]) as [Point, Point];
  const chord = minus(to, from);
  const run = length(chord);
  const along: Point = [chord[0] / run, chord[1] / run];
  if (!wall.arc) return { kind: 'line', from, along, length: run };
  const radius = inchesOf(wall.arc.radius);
  const spin = wall.arc.turns === 'left' ? 1 : -1;
  const rise = spin * Math.sqrt(Math.max(0, radius ** 2 - (run / 2) ** 2));
  const centre: Point = [(from[0] + to[0]) / 2 - along[1] * rise, (from[1] + to[1]) / 2 + along[0] * rise];
  const sweep = 2 * Math.asin(Math.min(1, run / 2 / radius));
  return { kind: 'arc', centre, radius, startAngle: Math.atan2(from[1] - centre[1], from[0] - centre[0]), spin, length: sweep * radius };
}
