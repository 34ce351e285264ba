import { cross, direction, leftNormal, subtract, type Vector } from '../../geometry/vector.js';
import type { Cut } from './extrusions.js';
import type { Vector3 } from './frames.js';
import { lengthOf, type WallLine } from './wall-line.js';

/** The top of a wall in elevation [nm]: station along its line, height above its foot, from one end to the other. */
export type TopLine = readonly { readonly s: number; readonly z: number }[];

export interface Gable {
  /** Height of the wall below the slope. */
  readonly height: number;
  /** Null for a level top. */
  readonly gable: { readonly rise: number; readonly peakAt: number } | null;
}

/** Heights within this agree, and what is drawn within it of a line lies on it [nm]. */
const ON_LINE = 100_000;
const LEVEL = 1e-6;

export const levelTop = (length: number, height: number): TopLine => [
  { s: 0, z: height },
  { s: length, z: height },
];

/**
 * The top that half-spaces leave of an upright body over its centre line, or in words why it is none that can be read: every plane
 * must lie above what it leaves and run square to the wall.
 */
export function cutTop(line: WallLine, bottom: number, height: number, cuts: readonly Cut[]): TopLine | string {
  const length = lengthOf(line);
  if (cuts.length === 0) return levelTop(length, height);
  if (line.arc) return 'a cut through a curved wall is not read';
  const along = direction(subtract(line.to, line.from));
  const planes: Plane[] = [];
  for (const { point, removes, bounds } of cuts) {
    if (Math.abs(removes.z) < LEVEL) return 'a cut that stands upright is not read';
    if (removes.z < 0) return 'a cut from below is not read';
    const across = leftNormal(along);
    if (Math.abs(removes.x * across.x + removes.y * across.y) > 1e-4) return 'a cut that slopes across the wall is not read';
    planes.push(planeOver(line, along, bottom, { point, removes, bounds }));
  }
  return lowest(length, height, planes);
}

/** A plane's height over the line, and the stretches of the line where it cuts. */
interface Plane {
  readonly at: (s: number) => number;
  readonly stops: readonly number[];
  readonly reaches: (s: number) => boolean;
}

function planeOver({ from }: WallLine, along: Vector, bottom: number, { point, removes, bounds }: Cut): Plane {
  const at = (s: number): number => {
    const [dx, dy] = [from.x + along.x * s - point.x, from.y + along.y * s - point.y];
    return point.z - (removes.x * dx + removes.y * dy) / removes.z - bottom;
  };
  if (!bounds) return { at, stops: [], reaches: () => true };
  const stops = bounds.flatMap((a, index) => crossing(from, along, a, bounds[(index + 1) % bounds.length]!));
  const sorted = [...stops].sort((a, b) => a - b);
  return { at, stops, reaches: (s) => sorted.filter((stop) => stop < s).length % 2 === 1 };
}

function crossing(from: Vector, along: Vector, a: Vector, b: Vector): readonly number[] {
  const [sideA, sideB] = [cross(along, subtract(a, from)), cross(along, subtract(b, from))];
  if (sideA > 0 === sideB > 0) return [];
  const share = sideA / (sideA - sideB);
  const [x, y] = [a.x + (b.x - a.x) * share - from.x, a.y + (b.y - a.y) * share - from.y];
  return [x * along.x + y * along.y];
}

function lowest(length: number, height: number, planes: readonly Plane[]): TopLine | string {
  const flat: Plane = { at: () => height, stops: [], reaches: () => true };
  const all = [flat, ...planes];
  const meets = all.flatMap((a, index) => all.slice(index + 1).flatMap((b) => meeting(a, b, length)));
  const stops = [...new Set([0, length, ...meets, ...planes.flatMap(({ stops: each }) => each)])]
    .filter((s) => s >= 0 && s <= length)
    .sort((a, b) => a - b);
  const top: { s: number; z: number }[] = [];
  for (const [index, s] of stops.slice(0, -1).entries()) {
    const next = stops[index + 1]!;
    if (next - s < 1) continue;
    const here = all.filter((plane) => plane.reaches((s + next) / 2));
    const over = here.reduce((low, plane) => (plane.at((s + next) / 2) < low.at((s + next) / 2) ? plane : low));
    const last = top.at(-1);
    if (last && Math.abs(last.z - over.at(s)) > ON_LINE) return 'a cut that steps is not read';
    if (!last) top.push({ s, z: over.at(s) });
    top.push({ s: next, z: over.at(next) });
  }
  return top.some(({ z }) => z <= 0) ? 'a cut down to its foot is not read' : top;
}

function meeting(a: Plane, b: Plane, length: number): readonly number[] {
  const [start, end] = [a.at(0) - b.at(0), a.at(length) - b.at(length)];
  return start > 0 === end > 0 || start === end ? [] : [(length * start) / (start - end)];
}

/** A wall drawn by its elevation: two upright ends on a level foot, and what runs between their tops. */
export function elevationTop(
  corners: readonly Vector3[],
  station: (corner: Vector3) => number,
): { top: TopLine; bottom: number; start: number; end: number } | null {
  const seen = corners.map((corner) => ({ s: station(corner), z: corner.z }));
  const bottom = Math.min(...seen.map(({ z }) => z));
  const [start, end] = [Math.min(...seen.map(({ s }) => s)), Math.max(...seen.map(({ s }) => s))];
  const foot = seen.filter(({ z }) => z - bottom <= ON_LINE);
  if (foot.length !== 2 || !foot.some(({ s }) => s - start <= ON_LINE) || !foot.some(({ s }) => end - s <= ON_LINE)) return null;
  const first = seen.findIndex(({ s, z }) => s - start <= ON_LINE && z - bottom <= ON_LINE);
  const round = seen.map((_, index) => seen[(first + index) % seen.length]!);
  const chain = (
    end - round[1]!.s <= ON_LINE && round[1]!.z - bottom <= ON_LINE ? [...round.slice(2)].reverse() : round.slice(1, -1)
  ).map(({ s, z }) => ({ s: s - start, z: z - bottom }));
  const [a, b] = [chain[0], chain.at(-1)];
  const level = chain.every(({ s }, index) => index === 0 || s > chain[index - 1]!.s);
  return a && b && level && a.s <= ON_LINE && end - start - b.s <= ON_LINE ? { top: chain, bottom, start, end } : null;
}

/** The same top over a line whose ends were moved outward: its first and last slopes go on. */
export function extendedTop(top: TopLine, atStart: number, atEnd: number): TopLine {
  if (top.length < 2) return top;
  const on = (from: TopLine[number], to: TopLine[number], s: number): number =>
    from.z + ((to.z - from.z) * (s - from.s)) / (to.s - from.s);
  const [a, b] = [top[0]!, top[1]!];
  const [y, z] = [top.at(-2)!, top.at(-1)!];
  const [start, end] = [-atStart, z.s + atEnd];
  const inner = top.slice(1, -1).filter(({ s }) => s > start && s < end);
  return [{ s: start, z: on(a, b, start) }, ...inner, { s: end, z: on(y, z, end) }].map((point) => ({
    s: point.s - start,
    z: point.z,
  }));
}

/** A level top, one slope or one peak between equal eaves; null for any other. */
export function gableOf(line: TopLine): Gable | null {
  const top = line.filter((point, index) => {
    const [before, after] = [line[index - 1], line[index + 1]];
    if (!before || !after) return true;
    return Math.abs(before.z + ((after.z - before.z) * (point.s - before.s)) / (after.s - before.s) - point.z) > ON_LINE;
  });
  const [a, b, c] = top;
  if (!a || !b || top.length > 3) return null;
  if (!c) {
    if (Math.abs(a.z - b.z) <= ON_LINE) return { height: a.z, gable: null };
    const [low, high] = a.z < b.z ? [a, b] : [b, a];
    return { height: low.z, gable: { rise: high.z - low.z, peakAt: high.s } };
  }
  if (Math.abs(a.z - c.z) > ON_LINE || b.z <= Math.max(a.z, c.z)) return null;
  const height = (a.z + c.z) / 2;
  return { height, gable: { rise: b.z - height, peakAt: b.s } };
}
