import { HERON } from './heron-figures.js';
import { cross, dot, length, minus, type Point } from './slow-lines.js';
import { beside, endStation, footOf, type Curve } from './solid-curves.js';
import type { SolidLevel, SolidWall } from './solid-lines.js';

/** Chords to the whole circle at least. */
export const FACETS = 2_600;
const EPSILON = 1e-7;

/** A surface along the wall within its core, parallel to its faces: where its concrete begins and ends, as stations of the dimension line. */
export interface Plane {
  readonly from: number;
  readonly to: number;
  /** Length along it for a unit of the dimension line. */
  readonly scale: number;
}

/** The core between two heights, in plan [in]. */
export interface Slab {
  readonly bottom: number;
  readonly top: number;
  readonly core: number;
  readonly outline: readonly Point[];
  /** The surface at a place across the core, from its right face as walked, −1, to its left one, 1. */
  readonly planeAt: (side: number) => Plane;
}

export const levelAt = (wall: SolidWall, z: number): SolidLevel | undefined => wall.levels.find(({ bottom, top }) => z > bottom && z < top);

/** A wall's footprints from the bottom up, one for each stretch of height in which it stays as it is. */
export function slabsOf(wall: SolidWall, walls: readonly SolidWall[]): Slab[] {
  const here = walls.filter(({ storey }) => storey === wall.storey);
  const heights = [...new Set(here.flatMap((each) => each.levels.flatMap(({ bottom, top }) => [bottom, top])))]
    .filter((z) => z >= wall.base - EPSILON && z <= wall.top + EPSILON)
    .sort((a, b) => a - b)
    .filter((z, index, all) => index === 0 || z - all[index - 1]! > EPSILON);
  const slabs: Slab[] = [];
  heights.slice(1).forEach((top, index) => {
    const bottom = heights[index]!;
    const slab = { bottom, top, ...footprintAt(wall, here, (bottom + top) / 2) };
    const below = slabs.at(-1);
    if (below && below.core === slab.core && same(below.outline, slab.outline)) slabs[slabs.length - 1] = { ...below, top };
    else slabs.push(slab);
  });
  return slabs;
}

const same = (a: readonly Point[], b: readonly Point[]): boolean => a.length === b.length && a.every((point, index) => length(minus(point, b[index]!)) < EPSILON);

interface Face {
  readonly curve: Curve;
  /** To the left of the dimension line as drawn. */
  readonly aside: number;
}

/** The line or circle at a distance to the left of the dimension line as walked. */
const faceOf = (wall: SolidWall, level: SolidLevel, side: number, panel = 0): Face => ({ curve: wall.curve, aside: wall.walk * (level.offset + side * (level.core / 2 + panel)) });

function footprintAt(wall: SolidWall, walls: readonly SolidWall[], z: number): Omit<Slab, 'bottom' | 'top'> {
  const level = levelAt(wall, z)!;
  const cut = (side: number): [number, number] => [cutAt(wall, 'from', side, walls, z), cutAt(wall, 'to', side, walls, z)];
  const [right, left] = [-1, 1].map((side) => trace(faceOf(wall, level, side), ...cut(side)));
  const planeAt = (side: number): Plane => {
    const [from, to] = cut(side);
    return { from, to, scale: scaleOf(faceOf(wall, level, side)) };
  };
  return { core: level.core, outline: [...right!, ...left!.toReversed()], planeAt };
}

/** Length beside the dimension line for a unit of it. */
const scaleOf = ({ curve, aside }: Face): number => (curve.kind === 'line' ? 1 : (curve.radius - curve.spin * aside) / curve.radius);

/**
 * Where a surface ends, as a station of the dimension line: of the core at `side` −1 to 1, or of the foam at −1 or 1 with the
 * panel's thickness.
 */
export const footprintEnd = (wall: SolidWall, end: 'from' | 'to', side: number, walls: readonly SolidWall[], z: number, panel: number): number =>
  cutAt(wall, end, side, walls.filter(({ storey }) => storey === wall.storey), z, panel);

/** Points of a face between two stations of the dimension line: of a circle so that the sector under them has the circle's own area. */
function trace({ curve, aside }: Face, from: number, to: number): Point[] {
  if (curve.kind === 'line') return [beside(curve, from, aside), beside(curve, to, aside)];
  const sweep = (to - from) / curve.radius;
  const parts = Math.max(3, Math.ceil((Math.abs(sweep) / (2 * Math.PI)) * FACETS));
  // Ends stand on the circle; points between them stand out by k: (n − 2) k² + 2 k = n δ / sin δ, δ the angle of a part.
  const each = Math.abs(sweep) / parts;
  const outward = (-1 + Math.sqrt(1 + ((parts - 2) * parts * each) / Math.sin(each))) / (parts - 2);
  const radius = curve.radius - curve.spin * aside;
  return Array.from({ length: parts + 1 }, (_, index) => {
    const moved = index === 0 || index === parts ? 0 : curve.spin * radius * (1 - outward);
    return beside(curve, from + ((to - from) * index) / parts, aside + moved);
  });
}

/** Where a face ends, as the station of the dimension line beside it. */
function cutAt(wall: SolidWall, end: 'from' | 'to', side: number, walls: readonly SolidWall[], z: number, panel = 0): number {
  const level = levelAt(wall, z)!;
  const joint = wall.joints[end];
  const station = endStation(wall.curve, end);
  const inward = end === 'from' ? 1 : -1;
  const other = joint.kind === 'free' ? undefined : walls.find(({ mark }) => mark === (joint.kind === 'tee' ? joint.through : joint.other.mark));
  const otherLevel = other && levelAt(other, z);
  // A free end loses the closure's thickness, measured on the axis (decisions.md 10).
  if (!other || !otherLevel) return station + (inward * HERON.closure) / scaleOf(faceOf(wall, level, 0));
  if (joint.kind === 'square') return station;
  if (joint.kind === 'tee') return stationAt(wall, end, faceOf(wall, level, side, panel), nearFace(wall, other, otherLevel, panel));
  // A corner's joint runs straight from the meeting of the outer core faces to that of the inner ones (decisions.md 4).
  const [a, b] = [-1, 1].map((face) => nearest(wall[end], crossings(faceOf(wall, level, face, panel), faceOf(other, otherLevel, face, panel)))) as [Point, Point];
  if (Math.abs(side) === 1) return footOf(wall.curve, side < 0 ? a : b).station;
  const joining = minus(b, a);
  const along: Point = [joining[0] / length(joining), joining[1] / length(joining)];
  return stationAt(wall, end, faceOf(wall, level, side), { curve: { kind: 'line', from: a, along, length: length(joining) }, aside: 0 });
}

const nearest = (place: Point, points: readonly Point[]): Point => {
  const best = [...points].sort((a, b) => length(minus(a, place)) - length(minus(b, place)))[0];
  if (!best) throw new Error('faces do not meet');
  return best;
};

/** Where a face meets another nearest to an end of its wall. */
const stationAt = (wall: SolidWall, end: 'from' | 'to', mine: Face, theirs: Face): number =>
  footOf(wall.curve, nearest(wall[end], crossings(mine, theirs))).station;

/** The through wall's core face on the side from which the branch comes (decisions.md 9). */
function nearFace(branch: SolidWall, through: SolidWall, level: SolidLevel, panel: number): Face {
  const far = beside(branch.curve, branch.curve.length / 2, 0);
  const axis = faceOf(through, level, 0);
  const side = footOf(through.curve, far).aside > axis.aside ? 1 : -1;
  return { curve: through.curve, aside: axis.aside + side * (level.core / 2 + panel) };
}

/** Where two lines or circles meet. */
function crossings(a: Face, b: Face): Point[] {
  if (a.curve.kind === 'line' && b.curve.kind === 'line') {
    const [p, q] = [beside(a.curve, 0, a.aside), beside(b.curve, 0, b.aside)];
    const [u, v] = [a.curve.along, b.curve.along];
    const by = cross(minus(q, p), v) / cross(u, v);
    return [[p[0] + u[0] * by, p[1] + u[1] * by]];
  }
  if (a.curve.kind === 'line') return crossings(b, a);
  if (a.curve.kind !== 'arc') return [];
  const radius = a.curve.radius - a.curve.spin * a.aside;
  if (b.curve.kind === 'line') {
    const from = minus(beside(b.curve, 0, b.aside), a.curve.centre);
    const middle = -dot(from, b.curve.along);
    const half = Math.sqrt(radius ** 2 - cross(b.curve.along, from) ** 2);
    const line = b.curve;
    return Number.isNaN(half) ? [] : [middle - half, middle + half].map((station) => beside(line, station, b.aside));
  }
  const other = b.curve.radius - b.curve.spin * b.aside;
  const between = minus(b.curve.centre, a.curve.centre);
  const apart = length(between);
  const along = (apart ** 2 + radius ** 2 - other ** 2) / (2 * apart);
  const half = Math.sqrt(radius ** 2 - along ** 2);
  const [x, y] = [between[0] / apart, between[1] / apart];
  const { centre } = a.curve;
  return Number.isNaN(half) ? [] : [half, -half].map((by): Point => [centre[0] + x * along - y * by, centre[1] + y * along + x * by]);
}
