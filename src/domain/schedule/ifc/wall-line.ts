import { add, cross, direction, distance, dot, leftNormal, scale, subtract, type Vector } from '../../geometry/vector.js';
import type { Arc, Segment } from './curves.js';
import { Unread } from './unread.js';

/** The centre line of a wall in plan [nm]; an arc turns by `sweep` [rad], positive to the left. */
export interface WallLine {
  readonly from: Vector;
  readonly to: Vector;
  readonly arc: { readonly centre: Vector; readonly radius: number; readonly sweep: number } | null;
}

export interface OutlinedWall {
  readonly line: WallLine;
  readonly thickness: number;
  /** Its ends are cut askew: the line ends at the middle of each. */
  readonly skew: boolean;
}

/** What is drawn within this of a line lies on it [nm]. */
const ON_LINE = 100_000;
const MEETS = 1_000_000;
/** Sine of the angle below which an edge follows a direction. */
const PARALLEL = 1e-4;

export const lineOf = (from: Vector, to: Vector): WallLine => ({ from, to, arc: null });

/** Length of the line [nm]. */
export const lengthOf = ({ from, to, arc }: WallLine): number => (arc ? arc.radius * Math.abs(arc.sweep) : distance(from, to));

/** The centre line and thickness of an outline in plan: two long faces, straight or concentric arcs, and two ends. */
export function outlinedWall(outline: readonly Segment[], ahead: Vector, axis: WallLine | null): OutlinedWall {
  return outline.some(({ kind }) => kind === 'arc') ? ringWall(outline, ahead, axis) : straightWall(outline, ahead, axis);
}

function straightWall(outline: readonly Segment[], ahead: Vector, axis: WallLine | null): OutlinedWall {
  const corners = turningPoints(outline.map(({ from }) => from));
  const along = directionOf(corners, axis && !axis.arc ? direction(subtract(axis.to, axis.from)) : ahead);
  const origin = corners[0]!;
  const left = leftNormal(along);
  const seen = corners.map((corner) => ({ s: dot(subtract(corner, origin), along), t: dot(subtract(corner, origin), left) }));
  const [low, high] = [Math.min(...seen.map(({ t }) => t)), Math.max(...seen.map(({ t }) => t))];
  const at = (s: number): Vector => add(origin, add(scale(along, s), scale(left, (low + high) / 2)));
  const [right, far] = [low, high].map((face) => seen.filter(({ t }) => Math.abs(t - face) <= ON_LINE).map(({ s }) => s));
  if (corners.length === 4 && right?.length === 2 && far?.length === 2) {
    const starts = [Math.min(...right), Math.min(...far)] as const;
    const ends = [Math.max(...right), Math.max(...far)] as const;
    const skew = Math.abs(starts[0] - starts[1]) > MEETS || Math.abs(ends[0] - ends[1]) > MEETS;
    return { line: lineOf(at((starts[0] + starts[1]) / 2), at((ends[0] + ends[1]) / 2)), thickness: high - low, skew };
  }
  if (!axis || axis.arc || (right?.length ?? 0) < 2 || (far?.length ?? 0) < 2)
    throw new Unread(`its outline has ${corners.length} corners: a straight wall of one thickness has four`);
  const station = (point: Vector): number => dot(subtract(point, origin), along);
  return { line: lineOf(at(station(axis.from)), at(station(axis.to))), thickness: high - low, skew: true };
}

/** Corners at which the outline turns; points on a straight face are left out. */
function turningPoints(points: readonly Vector[]): readonly Vector[] {
  const apart = points.filter((point, index) => distance(point, points[(index + 1) % points.length]!) > ON_LINE / 10);
  const turning = apart.filter((point, index) => {
    const [before, after] = [apart[(index + apart.length - 1) % apart.length]!, apart[(index + 1) % apart.length]!];
    const chord = subtract(after, before);
    return Math.abs(cross(chord, subtract(point, before))) > (ON_LINE / 10) * Math.hypot(chord.x, chord.y);
  });
  if (turning.length < 3) throw new Unread('its outline has no area');
  return turning;
}

/** The wished direction where an edge follows it; else that of the longest edge, the wished way round. */
function directionOf(corners: readonly Vector[], ahead: Vector): Vector {
  const edges = corners.map((from, index) => subtract(corners[(index + 1) % corners.length]!, from));
  const follows = edges.find((edge) => Math.abs(cross(direction(edge), ahead)) < PARALLEL);
  const edge =
    follows ?? edges.reduce((longest, each) => (Math.hypot(each.x, each.y) > Math.hypot(longest.x, longest.y) ? each : longest));
  return scale(direction(edge), dot(edge, ahead) < 0 ? -1 : 1);
}

function ringWall(outline: readonly Segment[], ahead: Vector, axis: WallLine | null): OutlinedWall {
  const arcs = mergedArcs(outline.filter((segment): segment is Arc => segment.kind === 'arc'));
  const straight = outline.filter(({ kind, from, to }) => kind === 'line' && distance(from, to) > ON_LINE / 10);
  const [a, b] = arcs;
  if (arcs.length !== 2 || straight.length !== 2 || !a || !b) throw new Unread('its outline has arcs and is no part of a ring');
  const [outer, inner] = a.radius > b.radius ? [a, b] : [b, a];
  const thickness = outer.radius - inner.radius;
  const radius = (outer.radius + inner.radius) / 2;
  if (
    distance(a.centre, b.centre) > ON_LINE ||
    Math.abs(Math.abs(a.sweep) - Math.abs(b.sweep)) * radius > MEETS ||
    thickness <= ON_LINE
  )
    throw new Unread('its faces are arcs of two circles that do not belong together');
  const end = (point: Vector): Vector => add(outer.centre, scale(direction(subtract(point, outer.centre)), radius));
  const drawn: WallLine = { from: end(outer.from), to: end(outer.to), arc: { centre: outer.centre, radius, sweep: outer.sweep } };
  const against = axis
    ? distance(axis.from, drawn.from) > distance(axis.from, drawn.to)
    : dot(subtract(drawn.to, drawn.from), ahead) < 0;
  return { line: against ? turned(drawn) : drawn, thickness, skew: false };
}

const turned = ({ from, to, arc }: WallLine): WallLine => ({ from: to, to: from, arc: arc && { ...arc, sweep: -arc.sweep } });

/** Arcs that follow each other on one circle are one arc. */
function mergedArcs(arcs: readonly Arc[]): readonly Arc[] {
  const merged: Arc[] = [];
  const follows = (a: Arc, b: Arc): boolean =>
    distance(a.centre, b.centre) <= ON_LINE &&
    Math.abs(a.radius - b.radius) <= ON_LINE &&
    Math.sign(a.sweep) === Math.sign(b.sweep) &&
    distance(a.to, b.from) <= ON_LINE;
  for (const arc of arcs) {
    const last = merged.at(-1);
    if (last && follows(last, arc)) merged[merged.length - 1] = { ...last, to: arc.to, sweep: last.sweep + arc.sweep };
    else merged.push(arc);
  }
  const [first, last] = [merged[0], merged.at(-1)];
  if (!first || !last || first === last || !follows(last, first)) return merged;
  return [{ ...last, to: first.to, sweep: last.sweep + first.sweep }, ...merged.slice(1, -1)];
}

/** The line of an axis curve: one straight line or one arc. */
export function axisLine(pieces: readonly Segment[]): WallLine {
  const arcs = mergedArcs(pieces.filter((piece): piece is Arc => piece.kind === 'arc'));
  const [first, last, arc] = [pieces[0], pieces.at(-1), arcs[0]];
  if (!first || !last) throw new Unread('its axis has no line');
  if (arc && arcs.length === 1 && pieces.every(({ kind }) => kind === 'arc'))
    return { from: arc.from, to: arc.to, arc: { centre: arc.centre, radius: arc.radius, sweep: arc.sweep } };
  const along = subtract(last.to, first.from);
  const bent = pieces.some(({ to }) => Math.abs(cross(along, subtract(to, first.from))) > ON_LINE * Math.hypot(along.x, along.y));
  if (arc || bent) throw new Unread('its axis is neither one straight line nor one arc');
  return lineOf(first.from, last.to);
}

/** The line moved to its left [nm]. */
export function movedLeft(line: WallLine, by: number): WallLine {
  if (by === 0) return line;
  const { from, to, arc } = line;
  if (!arc) {
    const aside = scale(leftNormal(direction(subtract(to, from))), by);
    return lineOf(add(from, aside), add(to, aside));
  }
  const radius = arc.radius - Math.sign(arc.sweep) * by;
  if (radius <= 0) throw new Unread('its core lies beyond the middle of its arc');
  const moved = (point: Vector): Vector => add(arc.centre, scale(subtract(point, arc.centre), radius / arc.radius));
  return { from: moved(from), to: moved(to), arc: { ...arc, radius } };
}
