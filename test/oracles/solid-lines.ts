import type { Opening, Schedule, Wall } from '../../src/domain/schedule/schedule.js';
import { HERON } from './heron-figures.js';
import { cross, dot, length, minus, type Point } from './slow-lines.js';
import { beside, curveOf, endStation, footOf, heading, inchesOf, type Curve } from './solid-curves.js';
import { slowStacks } from './slow-stack.js';

export interface SolidEnd {
  readonly mark: string;
  readonly end: 'from' | 'to';
}

/** decisions.md 1, 4, 8, 10. `square` is straight on, also from a straight run into an arc. */
export type SolidJoint =
  | { readonly kind: 'free' }
  | { readonly kind: 'square' | 'corner'; readonly other: SolidEnd }
  | { readonly kind: 'tee'; readonly through: string };

/** A stretch of height with one core; `offset` leads from the dimension line to the axis, to the left as the building is walked. */
export interface SolidLevel {
  readonly bottom: number;
  readonly top: number;
  readonly core: number;
  readonly offset: number;
}

export interface SolidWall {
  readonly mark: string;
  readonly storey: string;
  readonly curve: Curve;
  readonly from: Point;
  readonly to: Point;
  /** 1 where the wall is drawn as the building is walked, −1 against it. */
  readonly walk: 1 | -1;
  readonly base: number;
  readonly top: number;
  readonly levels: readonly SolidLevel[];
  readonly openings: readonly Opening[];
  readonly joints: Readonly<Record<'from' | 'to', SolidJoint>>;
}

/** Ends closer than 1 mm meet. */
const MEET = 1 / 25.4;
/** Degrees under which a line goes straight on. */
const STRAIGHT = 1;
const ENDS = ['from', 'to'] as const;

interface Drawn {
  readonly wall: Wall;
  readonly curve: Curve;
  readonly points: Readonly<Record<'from' | 'to', Point>>;
}

type Links = ReadonlyMap<string, SolidEnd>;
const keyOf = ({ mark, end }: SolidEnd): string => `${mark} ${end}`;
const otherEnd = (end: 'from' | 'to'): 'from' | 'to' => (end === 'from' ? 'to' : 'from');

/** Where a wall leads on leaving one of its ends, away from the end. */
const outOf = (drawn: Drawn, end: 'from' | 'to'): Point => {
  const way = heading(drawn.curve, endStation(drawn.curve, end));
  return end === 'from' ? way : [-way[0], -way[1]];
};

/** Degrees by which a line bends that comes along one wall and leaves along another. */
const bend = (a: Point, b: Point): number => 180 - (Math.acos(Math.max(-1, Math.min(1, dot(a, b)))) * 180) / Math.PI;

/** decisions.md 8: two ends at a point are one line; of three the straightest pair, where it is straight. */
function linksOf(drawn: readonly Drawn[]): Links {
  const links = new Map<string, SolidEnd>();
  const ends = drawn.flatMap((each) => ENDS.map((end) => ({ each, end, at: each.points[end], storey: each.wall.storey })));
  for (const one of ends) {
    const here = ends.filter(({ at, storey }) => storey === one.storey && length(minus(at, one.at)) < MEET);
    const pairs = here.flatMap((a, index) => here.slice(index + 1).map((b) => ({ a, b, bend: bend(outOf(a.each, a.end), outOf(b.each, b.end)) })));
    const best = pairs.sort((a, b) => a.bend - b.bend)[0];
    if (!best || (here.length > 2 && best.bend > STRAIGHT)) continue;
    const [a, b] = [best.a, best.b].map(({ each, end }): SolidEnd => ({ mark: each.wall.mark, end })) as [SolidEnd, SolidEnd];
    links.set(keyOf(a), b);
    links.set(keyOf(b), a);
  }
  return links;
}

/** decisions.md 2: 1 for walls drawn as they are walked. Loops keep the building on the left, chains follow their first row. */
function walksOf(drawn: readonly Drawn[], links: Links): Map<string, 1 | -1> {
  const byMark = new Map(drawn.map((each) => [each.wall.mark, each]));
  const walks = new Map<string, 1 | -1>();
  const loops: { marks: string[]; outline: Point[]; storey: string }[] = [];
  for (const first of drawn) {
    if (walks.has(first.wall.mark)) continue;
    walks.set(first.wall.mark, 1);
    const marks = [first.wall.mark];
    let closed = false;
    for (const way of [1, -1] as const) {
      let leaving: SolidEnd = { mark: first.wall.mark, end: way === 1 ? 'to' : 'from' };
      for (let next = links.get(keyOf(leaving)); next && !closed; next = links.get(keyOf(leaving))) {
        if (next.mark === first.wall.mark) closed = true;
        else {
          walks.set(next.mark, (next.end === 'from') === (way === 1) ? 1 : -1);
          if (way === 1) marks.push(next.mark);
          leaving = { mark: next.mark, end: otherEnd(next.end) };
        }
      }
    }
    if (closed) loops.push({ marks, outline: outlineOf(marks.map((mark) => byMark.get(mark)!), walks), storey: first.wall.storey });
  }
  for (const loop of loops) {
    const around = loops.filter((each) => each !== loop && each.storey === loop.storey && encloses(each.outline, loop.outline[0]!)).length;
    if (signedArea(loop.outline) > 0 === (around % 2 === 0)) continue;
    for (const mark of loop.marks) walks.set(mark, walks.get(mark) === 1 ? -1 : 1);
  }
  return walks;
}

/** Corners of a loop as walked, arcs with their middle as well. */
function outlineOf(loop: readonly Drawn[], walks: ReadonlyMap<string, 1 | -1>): Point[] {
  return loop.flatMap(({ wall, curve, points }) => {
    const start = walks.get(wall.mark) === 1 ? points.from : points.to;
    return curve.kind === 'line' ? [start] : [start, beside(curve, curve.length / 2, 0)];
  });
}

export const signedArea = (outline: readonly Point[]): number =>
  outline.reduce((sum, point, index) => sum + cross(point, outline[(index + 1) % outline.length]!), 0) / 2;

function encloses(outline: readonly Point[], [x, y]: Point): boolean {
  return outline.reduce((inside, [x1, y1], index) => {
    const [x2, y2] = outline[(index + 1) % outline.length]!;
    return y1 > y !== y2 > y && x < x1 + ((x2 - x1) * (y - y1)) / (y2 - y1) ? !inside : inside;
  }, false);
}

/** decisions.md 24: what stays in line is a foam face, or the axis. */
function levelsOf(wall: Wall, schedule: Schedule, top: number): SolidLevel[] {
  const width = (code: string): number => HERON.coreWidth[code]!;
  const base = inchesOf(wall.base);
  const core = width(wall.core);
  let level = { bottom: base, core, offset: { 'foam-face': core / 2 + HERON.panel, 'concrete-face': core / 2, axis: 0 }[wall.dimensionsTo] };
  const levels: SolidLevel[] = [];
  const changes = schedule.features.flatMap((each) => (each.kind === 'core-change' && each.wall === wall.mark ? [each] : [])).sort((a, b) => a.at - b.at);
  for (const change of changes) {
    const next = base + inchesOf(change.at);
    levels.push({ ...level, top: next });
    const shrinks = (width(change.core) - level.core) / 2;
    level = { bottom: next, core: width(change.core), offset: level.offset + { outside: shrinks, inside: -shrinks, centre: 0 }[change.flush] };
  }
  return [...levels, { ...level, top }];
}

function jointOf(wall: SolidWall, end: 'from' | 'to', walls: readonly SolidWall[], links: Links): SolidJoint {
  const other = links.get(keyOf({ mark: wall.mark, end }));
  if (other) {
    const next = walls.find(({ mark }) => mark === other.mark)!;
    const ways = [[wall, end], [next, other.end]] as const;
    const [a, b] = ways.map(([each, at]) => {
      const way = heading(each.curve, endStation(each.curve, at));
      return at === 'from' ? way : ([-way[0], -way[1]] as const);
    }) as [Point, Point];
    return { kind: bend(a, b) < STRAIGHT ? 'square' : 'corner', other };
  }
  const through = walls.find((each) => each.storey === wall.storey && each.mark !== wall.mark && standsIn(wall[end], each));
  return through ? { kind: 'tee', through: through.mark } : { kind: 'free' };
}

/** A point within the footprint of a wall's forms, or 1 mm beside it. */
function standsIn(point: Point, wall: SolidWall): boolean {
  const { station, aside } = footOf(wall.curve, point);
  const { offset, core } = wall.levels[0]!;
  return Math.abs(aside * wall.walk - offset) <= core / 2 + HERON.panel + MEET && station >= -MEET && station <= wall.curve.length + MEET;
}

/** Every wall of a schedule as drawn, with its levels, its stack's top and how its ends meet [in]. */
export function solidWalls(schedule: Schedule): SolidWall[] {
  const drawn = schedule.walls.map((wall): Drawn => {
    const curve = curveOf(wall);
    return { wall, curve, points: { from: beside(curve, 0, 0), to: beside(curve, curve.length, 0) } };
  });
  const links = linksOf(drawn);
  const walks = walksOf(drawn, links);
  const free = { from: { kind: 'free' }, to: { kind: 'free' } } as const;
  const walls = drawn.map(({ wall, curve, points }): SolidWall => {
    const stack = slowStacks(inchesOf(wall.height), HERON)[0];
    if (!stack) throw new Error(`no stack for ${wall.mark}`);
    const top = inchesOf(wall.base) + stack.height;
    const openings = schedule.openings.filter((opening) => opening.wall === wall.mark);
    const base = inchesOf(wall.base);
    return {
      mark: wall.mark, storey: wall.storey, curve, ...points, walk: walks.get(wall.mark)!, base, top,
      levels: levelsOf(wall, schedule, top), openings, joints: free,
    };
  });
  return walls.map((wall) => ({ ...wall, joints: { from: jointOf(wall, 'from', walls, links), to: jointOf(wall, 'to', walls, links) } }));
}
