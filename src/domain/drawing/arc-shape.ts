import type { Vector } from '../geometry/vector.js';
import type { DrawingPoint } from './shapes.js';

/** An arc by its centre: angles from the x axis, sweep positive counter-clockwise [rad]. */
export interface CentredArc {
  readonly centre: Vector;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

const EIGHTH = Math.PI / 4;
const QUARTER = Math.PI / 2;

/** The arc between two points with a bulge of tan(sweep / 4), other than 0. */
export function arcOf(from: DrawingPoint, to: DrawingPoint, bulge: number): CentredArc {
  const chord = { x: to.x - from.x, y: to.y - from.y };
  // from the middle of the chord to the centre: c/2 · (1 − b²) / 2b, to the left of the chord where the arc turns left by less than a half
  const off = (1 - bulge * bulge) / (4 * bulge);
  const centre = { x: (from.x + to.x) / 2 - chord.y * off, y: (from.y + to.y) / 2 + chord.x * off };
  const radius = (Math.hypot(chord.x, chord.y) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return { centre, radius, start: Math.atan2(from.y - centre.y, from.x - centre.x), sweep: 4 * Math.atan(bulge) };
}

/** The arc as cubic curves of an eighth of a turn at most: two handles and the end of each (off by less than 5e-6 of the radius). */
export function arcCurves(from: DrawingPoint, to: DrawingPoint, bulge: number): (readonly [Vector, Vector, Vector])[] {
  const { centre, radius, start, sweep } = arcOf(from, to, bulge);
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / EIGHTH));
  const step = sweep / count;
  const reach = (4 / 3) * Math.tan(step / 4);
  const on = (angle: number, along: number): Vector => ({
    x: centre.x + radius * (Math.cos(angle) - along * Math.sin(angle)),
    y: centre.y + radius * (Math.sin(angle) + along * Math.cos(angle)),
  });
  return Array.from({ length: count }, (_, i) => {
    const [a, b] = [start + i * step, start + (i + 1) * step];
    return [on(a, reach), on(b, -reach), i + 1 === count ? to : on(b, 0)] as const;
  });
}

/** Its two ends and where it reaches farthest to the left, the right, up and down. */
export function arcExtremes(from: DrawingPoint, to: DrawingPoint, bulge: number): Vector[] {
  const { centre, radius, start, sweep } = arcOf(from, to, bulge);
  const [low, high] = [Math.min(start, start + sweep), Math.max(start, start + sweep)];
  const found: Vector[] = [from, to];
  for (let quarter = Math.ceil(low / QUARTER); quarter * QUARTER < high; quarter += 1)
    found.push({ x: centre.x + radius * Math.cos(quarter * QUARTER), y: centre.y + radius * Math.sin(quarter * QUARTER) });
  return found;
}
