import type { Vector } from './vector.js';

/** Signed area, positive for counter-clockwise order [unit²]. Coordinates are taken relative to the first point to keep digits. */
export function signedArea(points: readonly Vector[]): number {
  const origin = points[0];
  if (!origin) return 0;
  let twice = 0;
  for (let index = 0; index < points.length; index += 1) {
    const a = points[index]!;
    const b = points[(index + 1) % points.length]!;
    twice += (a.x - origin.x) * (b.y - origin.y) - (b.x - origin.x) * (a.y - origin.y);
  }
  return twice / 2;
}

/** Even-odd rule; points exactly on an edge may fall on either side. */
export function containsPoint(polygon: readonly Vector[], point: Vector): boolean {
  let inside = false;
  for (let index = 0, previous = polygon.length - 1; index < polygon.length; previous = index, index += 1) {
    const a = polygon[index]!;
    const b = polygon[previous]!;
    const crosses = a.y > point.y !== b.y > point.y;
    if (crosses && point.x < ((b.x - a.x) * (point.y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}
