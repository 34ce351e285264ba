import type { ScheduleDocument } from '../support/schedule-document.js';
import type { Figures } from './heron-figures.js';
import { readInches } from './read-dimension.js';

export type Point = readonly [number, number];
export type End = 'from' | 'to';

/** A wall of one storey, all lengths in inches; `from` → `to` as turned round, so that outside is on the right. */
export interface SlowWall {
  readonly mark: string;
  readonly storey: string;
  readonly row: number;
  readonly coreCode: string;
  readonly core: number;
  readonly thickness: number;
  /** From the dimension line to the axis, to the left. */
  readonly offset: number;
  readonly height: number;
  readonly base: number;
  readonly from: Point;
  readonly to: Point;
  readonly openings: readonly SlowOpening[];
}

export interface SlowOpening {
  readonly at: number;
  readonly sill: number;
  readonly width: number;
  readonly height: number;
  readonly lining: 'buck' | 'end-closure';
}

export interface WallEnd {
  readonly wall: string;
  readonly end: End;
}

export type SlowJoint =
  | { readonly kind: 'free' }
  | { readonly kind: 'straight' | 'corner'; readonly other: WallEnd; readonly turn: number }
  | { readonly kind: 'tee'; readonly through: readonly string[] };

export interface SlowLines {
  readonly walls: readonly SlowWall[];
  readonly jointOf: ReadonlyMap<string, SlowJoint>;
}

/** Ends closer than 1 mm meet. */
const MEET = 1 / 25.4;
export const keyOf = ({ wall, end }: WallEnd): string => `${wall}/${end}`;
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
export const length = ([x, y]: Point): number => Math.hypot(x, y);
export const unit = (wall: Pick<SlowWall, 'from' | 'to'>): Point => {
  const along = minus(wall.to, wall.from);
  return [along[0] / length(along), along[1] / length(along)];
};
export const cross = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
export const other = (end: End): End => (end === 'from' ? 'to' : 'from');

/** The walls of a document, turned round where the building would be on their right, and how their ends meet. decisions.md 1, 2, 8. */
export function slowLines(document: ScheduleDocument, figures: Figures): SlowLines {
  const placed = placeDeclared(document);
  const raw = document.walls.map((row, index): SlowWall => {
    const core = figures.coreWidth[row.core]!;
    const thickness = core + 2 * figures.panel;
    const to = row.dimensionsTo ?? document.dimensionsTo;
    const storey = document.storeys.find(({ id }) => id === row.storey)!;
    return {
      mark: row.mark, storey: row.storey, row: index, coreCode: row.core, core, thickness,
      offset: { 'foam-face': thickness / 2, 'concrete-face': core / 2, axis: 0 }[to],
      height: readInches(row.height ?? storey.height, document.units),
      base: readInches(row.base ?? 0, document.units),
      ...placed.get(row.mark)!,
      openings: document.openings.filter(({ wall }) => wall === row.mark).map((opening) => slowOpening(document, opening, figures)),
    };
  });
  const links = linksOf(raw);
  const turned = turnRound(raw, links);
  return { walls: turned.walls, jointOf: jointsOf(turned.walls, turned.links) };
}

function slowOpening(document: ScheduleDocument, row: ScheduleDocument['openings'][number], figures: Figures): SlowOpening {
  const read = (value: number | string): number => readInches(value, document.units);
  const buck = row.measured === 'rough' ? figures.buck : 0;
  const below = read(row.sill) === 0 ? 0 : buck;
  return {
    at: read(row.at) - buck, sill: read(row.sill) - below, width: read(row.width) + 2 * buck,
    height: read(row.height) + buck + below, lining: row.lining ?? 'buck',
  };
}

/** Walls without coordinates walk on from the wall they name, at the turn they name. */
export function placeDeclared(document: ScheduleDocument): Map<string, { from: Point; to: Point }> {
  const placed = new Map<string, { from: Point; to: Point }>();
  const read = (value: number | string): number => readInches(value, document.units);
  for (const row of document.walls) {
    if (row.from && row.to) {
      placed.set(row.mark, { from: [read(row.from[0]), read(row.from[1])], to: [read(row.to[0]), read(row.to[1])] });
      continue;
    }
    const before = row.start?.joint === 'corner' ? row.start : null;
    const line = before ? placed.get(before.with.wall) : undefined;
    const heading = line ? Math.atan2(...(minus(line.to, line.from).toReversed() as [number, number])) + (before!.turn * Math.PI) / 180 : 0;
    const from: Point = line ? line.to : [0, 0];
    const run = read(row.length!);
    placed.set(row.mark, { from, to: [from[0] + run * Math.cos(heading), from[1] + run * Math.sin(heading)] });
  }
  return placed;
}

type Links = ReadonlyMap<string, WallEnd>;

/** Which two ends are one line walked on: the two at a point, or the straightest two of three. */
function linksOf(walls: readonly SlowWall[]): Links {
  const ends = walls.flatMap((wall) => (['from', 'to'] as const).map((end) => ({ wall, end })));
  const links = new Map<string, WallEnd>();
  const join = (a: (typeof ends)[number], b: (typeof ends)[number]): void => {
    links.set(keyOf({ wall: a.wall.mark, end: a.end }), { wall: b.wall.mark, end: b.end });
    links.set(keyOf({ wall: b.wall.mark, end: b.end }), { wall: a.wall.mark, end: a.end });
  };
  for (const one of ends) {
    const here = ends.filter(({ wall, end }) => wall.storey === one.wall.storey && length(minus(wall[end], one.wall[one.end])) < MEET);
    if (here.length === 2) join(here[0]!, here[1]!);
    if (here.length === 3) {
      const pairs = [[0, 1], [0, 2], [1, 2]].map(([a, b]) => ({ a: here[a!]!, b: here[b!]!, bend: bendOf(here[a!]!, here[b!]!) }));
      const straightest = pairs.sort((a, b) => a.bend - b.bend)[0]!;
      if (straightest.bend <= 1) join(straightest.a, straightest.b);
    }
  }
  return links;
}

/** How far two ends at one point are from straight on [deg]. */
function bendOf(a: { wall: SlowWall; end: End }, b: { wall: SlowWall; end: End }): number {
  const out = ({ wall, end }: { wall: SlowWall; end: End }): Point => (end === 'from' ? unit(wall) : minus([0, 0], unit(wall)));
  return 180 - (Math.acos(Math.max(-1, Math.min(1, dot(out(a), out(b))))) * 180) / Math.PI;
}

/** Walks every loop and chain from its first row, turning walls round that run against it, and loops drawn the other way. */
function turnRound(walls: readonly SlowWall[], links: Links): { walls: readonly SlowWall[]; links: Links } {
  const byMark = new Map(walls.map((wall) => [wall.mark, wall]));
  const flipped = new Set<string>();
  const seen = new Set<string>();
  const loops: { storey: string; path: { mark: string; flip: boolean }[]; corners: Point[] }[] = [];
  for (const wall of walls) {
    if (seen.has(wall.mark)) continue;
    const path = [{ mark: wall.mark, flip: false }];
    seen.add(wall.mark);
    let closed = false;
    for (const forward of [true, false]) {
      let here = { wall: wall.mark, end: (forward ? 'to' : 'from') as End };
      for (let next = links.get(keyOf(here)); next && !closed; next = links.get(keyOf(here))) {
        if (next.wall === wall.mark) closed = true;
        if (seen.has(next.wall)) break;
        seen.add(next.wall);
        const step = { mark: next.wall, flip: next.end !== (forward ? 'from' : 'to') };
        if (forward) path.push(step);
        else path.unshift(step);
        here = { wall: next.wall, end: other(next.end) };
      }
    }
    for (const { mark, flip } of path) if (flip) flipped.add(mark);
    const corners = path.map(({ mark, flip }) => byMark.get(mark)![flip ? 'to' : 'from']);
    if (closed) loops.push({ storey: wall.storey, path, corners });
  }
  for (const loop of loops) {
    const around = loops.filter(({ storey, corners }) => storey === loop.storey && corners !== loop.corners && isInside(loop.corners[0]!, corners));
    const leftward = areaOf(loop.corners) > 0;
    if (leftward === (around.length % 2 === 0)) continue;
    for (const { mark } of loop.path) {
      if (flipped.has(mark)) flipped.delete(mark);
      else flipped.add(mark);
    }
  }
  const turn = ({ wall, end }: WallEnd): WallEnd => ({ wall, end: flipped.has(wall) ? other(end) : end });
  return {
    walls: walls.map((wall) => (flipped.has(wall.mark) ? turnWall(wall) : wall)),
    links: new Map([...links].map(([key, to]) => {
      const [wall, end] = [key.slice(0, key.lastIndexOf('/')), key.slice(key.lastIndexOf('/') + 1) as End];
      return [keyOf(turn({ wall, end })), turn(to)];
    })),
  };
}

function turnWall(wall: SlowWall): SlowWall {
  const run = length(minus(wall.to, wall.from));
  const openings = wall.openings.map((opening) => ({ ...opening, at: run - opening.at - opening.width }));
  return { ...wall, from: wall.to, to: wall.from, openings };
}

function areaOf(corners: readonly Point[]): number {
  return corners.reduce((sum, corner, index) => sum + cross(corner, corners[(index + 1) % corners.length]!), 0) / 2;
}

function isInside([x, y]: Point, corners: readonly Point[]): boolean {
  let inside = false;
  corners.forEach(([x1, y1], index) => {
    const [x2, y2] = corners[(index + 1) % corners.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((x2 - x1) * (y - y1)) / (y2 - y1)) inside = !inside;
  });
  return inside;
}

function jointsOf(walls: readonly SlowWall[], links: Links): Map<string, SlowJoint> {
  const byMark = new Map(walls.map((wall) => [wall.mark, wall]));
  const joints = new Map<string, SlowJoint>();
  for (const wall of walls) {
    for (const end of ['from', 'to'] as const) {
      const key = keyOf({ wall: wall.mark, end });
      const link = links.get(key);
      if (link) {
        const next = byMark.get(link.wall)!;
        const [before, after] = end === 'to' ? [unit(wall), unit(next)] : [unit(next), unit(wall)];
        const turn = (Math.atan2(cross(before, after), dot(before, after)) * 180) / Math.PI;
        joints.set(key, { kind: Math.abs(turn) < 1 ? 'straight' : 'corner', other: link, turn });
        continue;
      }
      const through = walls.filter((each) => each.storey === wall.storey && each.mark !== wall.mark && stands(wall[end], each));
      joints.set(key, through.length > 0 ? { kind: 'tee', through: through.map(({ mark }) => mark) } : { kind: 'free' });
    }
  }
  return joints;
}

/** A point in the footprint of a wall's forms, or within 1 mm of it. */
function stands(point: Point, wall: SlowWall): boolean {
  const along = unit(wall);
  const from = minus(point, wall.from);
  const across = cross(along, from) - wall.offset;
  const station = dot(along, from);
  return Math.abs(across) <= wall.thickness / 2 + MEET && station >= -MEET && station <= length(minus(wall.to, wall.from)) + MEET;
}
