import type { DrawingPoint, HatchPattern, HatchShape } from './shapes.js';

export interface HatchStroke {
  readonly from: DrawingPoint;
  readonly to: DrawingPoint;
}

/** Directions of a pattern's strokes in degrees. */
const DIRECTIONS: Record<HatchPattern, readonly number[]> = {
  rising: [45],
  falling: [135],
  crossed: [45, 135],
  level: [0],
  broken: [0],
  upright: [90],
  dotted: [45],
};
/** Of a square of the grid, in strokes that are not drawn through. */
const PARTS: Partial<Record<HatchPattern, number>> = { dotted: 0.12, broken: 0.55 };
const PI = Math.PI;

/**
 * Strokes of a hatch clipped to its boundary by the even-odd rule, so that every writer draws the same picture.
 *
 * Strokes lie on one grid through the drawing's origin: neighbouring hatches of one pattern run through.
 *
 * @returns strokes in drawing coordinates [nm]
 */
export function hatchStrokes(hatch: HatchShape): HatchStroke[] {
  const strokes = DIRECTIONS[hatch.pattern].flatMap((degrees) => strokesAlong(hatch, (degrees * PI) / 180));
  const part = PARTS[hatch.pattern];
  return part === undefined ? strokes : strokes.flatMap((stroke) => dots(stroke, hatch.spacing, part));
}

function strokesAlong(hatch: HatchShape, angle: number): HatchStroke[] {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const turned = hatch.boundary.map((ring) =>
    ring.map((point) => ({ u: point.x * cos + point.y * sin, v: point.y * cos - point.x * sin })),
  );
  const heights = turned.flat().map((point) => point.v);
  const strokes: HatchStroke[] = [];
  const last = Math.max(...heights);
  for (let row = Math.floor(Math.min(...heights) / hatch.spacing); row * hatch.spacing < last; row += 1) {
    const v = (row + 0.5) * hatch.spacing;
    const crossings = turned.flatMap((ring) => ringCrossings(ring, v)).sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const [start, end] = [crossings[i] as number, crossings[i + 1] as number];
      strokes.push({ from: turnBack(start, v, cos, sin), to: turnBack(end, v, cos, sin) });
    }
  }
  return strokes;
}

function ringCrossings(ring: readonly { u: number; v: number }[], v: number): number[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length] as { u: number; v: number };
    return a.v <= v === b.v <= v ? [] : [a.u + ((v - a.v) / (b.v - a.v)) * (b.u - a.u)];
  });
}

const turnBack = (u: number, v: number, cos: number, sin: number): DrawingPoint => ({
  x: Math.round(u * cos - v * sin),
  y: Math.round(u * sin + v * cos),
});

/** Short strokes on a square grid: a stroke of `part` × spacing at every whole spacing along the line. */
function dots(stroke: HatchStroke, spacing: number, part: number): HatchStroke[] {
  const length = Math.hypot(stroke.to.x - stroke.from.x, stroke.to.y - stroke.from.y);
  if (length === 0) return [];
  const along = { x: (stroke.to.x - stroke.from.x) / length, y: (stroke.to.y - stroke.from.y) / length };
  const start = stroke.from.x * along.x + stroke.from.y * along.y;
  const found: HatchStroke[] = [];
  for (let place = Math.ceil(start / spacing) * spacing; place + part * spacing <= start + length; place += spacing) {
    found.push({
      from: offset(stroke.from, along, place - start),
      to: offset(stroke.from, along, place - start + part * spacing),
    });
  }
  return found;
}

const offset = (point: DrawingPoint, along: { x: number; y: number }, distance: number): DrawingPoint => ({
  x: Math.round(point.x + along.x * distance),
  y: Math.round(point.y + along.y * distance),
});
