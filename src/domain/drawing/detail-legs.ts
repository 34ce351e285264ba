import type { Nm } from '../quantity/length.js';
import type { FormRange, Hand } from '../range/range.js';
import { UNSETTLED_SKU } from '../takeoff/index.js';
import type { Junction, LaidCourse, LaidStorey, LaidWall, Piece } from '../takeoff/index.js';

/** One wall's leg of a corner unit. */
export interface Leg {
  readonly name: 'long leg' | 'short leg';
  readonly hand: Hand | null;
  readonly sku: string;
  /** From the node along the axis. */
  readonly onAxis: Nm;
  /** On the convex face, as the range lists it. */
  readonly onFace: Nm;
}

/** How the junction is made in some of its courses. */
export interface DetailView {
  readonly courses: readonly number[];
  /** By wall mark; empty where no corner unit stands. */
  readonly legs: ReadonlyMap<string, Leg>;
  /** What runs to the mitre where no corner unit stands though the corner has one. */
  readonly mitred: 'ledge' | 'taper' | null;
}

/** The different ways in which the junction is made, each with its courses, in the order of its first course. */
export function detailViews(junction: Junction, storey: LaidStorey, range: FormRange): DetailView[] {
  const walls = storey.walls.filter((wall) => junction.walls.includes(wall.mark));
  const views = new Map<string, { courses: number[]; legs: Map<string, Leg>; mitred: DetailView['mitred'] }>();
  for (const course of junction.courses) {
    const legs = new Map(walls.flatMap((wall) => legOf(wall, course, junction, walls[0], range)));
    const mitred = legs.size > 0 || junction.unit === null ? null : mitredIn(walls, course, walls[0], junction);
    const key = [...legs].map(([mark, leg]) => `${mark} ${leg.name} ${leg.sku}`).join() + (mitred ?? '');
    const view = views.get(key) ?? { courses: [], legs, mitred };
    view.courses.push(course);
    views.set(key, view);
  }
  return views.size === 0 ? [{ courses: [], legs: new Map(), mitred: null }] : [...views.values()];
}

/** Courses are numbered in the junction's first wall; in another wall the course at the same height is meant. */
function legOf(
  wall: LaidWall,
  course: number,
  junction: Junction,
  first: LaidWall | undefined,
  range: FormRange,
): [string, Leg][] {
  const pieces = courseAt(wall, course, first)?.pieces ?? [];
  const piece = pieces.find((candidate) => candidate.junction === junction.id && candidate.sku !== UNSETTLED_SKU);
  return piece === undefined ? [] : [[wall.mark, legFrom(piece, wall, junction, range)]];
}

/** The course of a wall at the height of a numbered one of the junction's first wall. */
export function courseAt(wall: LaidWall, course: number, first: LaidWall | undefined): LaidCourse | undefined {
  const level = (first?.base ?? 0) + (first?.courses.find(({ n }) => n === course)?.bottom ?? 0);
  return wall.courses.find(({ bottom }) => wall.base + bottom === level);
}

/** A ledge on either wall has both mitred; tapers are mitred where both walls have them. */
function mitredIn(
  walls: readonly LaidWall[],
  course: number,
  first: LaidWall | undefined,
  junction: Junction,
): DetailView['mitred'] {
  const ends = walls.flatMap((wall) => {
    const forms = courseAt(wall, course, first)?.pieces.filter(({ inside }) => !inside) ?? [];
    return [(wall.endJunction === junction.id ? forms.at(-1) : forms[0])?.kind];
  });
  if (ends.includes('ledge')) return 'ledge';
  return ends.includes('taper-top') ? 'taper' : null;
}

function legFrom(piece: Piece, wall: LaidWall, junction: Junction, range: FormRange): Leg {
  const name = piece.why === 'leg-long' ? 'long leg' : 'short leg';
  const onAxis = piece.to - piece.from;
  const unit = range.corners.find(
    ({ kind, minTurn, maxTurn }) => kind === piece.kind && inSpan(Math.abs(junction.turn), minTurn, maxTurn, range),
  );
  const listed = unit?.legs.get(wall.core.code);
  const measured = Math.round(onAxis + (wall.thickness / 2) * Math.tan((Math.abs(junction.turn) * Math.PI) / 360));
  return {
    name,
    hand: piece.hand,
    sku: piece.sku,
    onAxis,
    onFace: listed === undefined ? measured : name === 'long leg' ? listed.long : listed.short,
  };
}

const inSpan = (turn: number, from: number, to: number, range: FormRange): boolean =>
  turn >= from - range.parameters.turnToleranceDeg && turn <= to + range.parameters.turnToleranceDeg;
