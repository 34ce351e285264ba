import { forEachNearPair } from '../../geometry/near-pairs.js';
import { cross, direction, distance, dot, scale, subtract, add, type Vector } from '../../geometry/vector.js';
import { lengthOf, lineOf, type WallLine } from './wall-line.js';

export type LineEnd = 'start' | 'end';

/** A wall's line as it is drawn, and how thick the wall is drawn [nm]. */
export interface DrawnLine {
  readonly line: WallLine;
  readonly thickness: number;
  /** Thickness of the forms it will be built of. */
  readonly formed: number;
}

/** Ends that a model declares to meet at a corner, or one that meets another wall along its path (`bEnd` null). */
export interface DeclaredMeeting {
  readonly a: number;
  readonly aEnd: LineEnd;
  readonly b: number;
  readonly bEnd: LineEnd | null;
}

export interface MovedEnd {
  readonly wall: number;
  readonly end: LineEnd;
  /** Outward; negative where the line was shortened [nm]. */
  readonly by: number;
  readonly to: number;
}

export interface SnappedLines {
  readonly lines: readonly WallLine[];
  readonly moved: readonly MovedEnd[];
}

interface Target {
  readonly wall: number;
  readonly end: LineEnd;
  readonly point: Vector;
  readonly to: number;
}

/** Ends closer than this meet as they are [nm]. */
const MEETS = 1_000_000;
/** Sine below which two lines run alike and do not cross. */
const ALIKE = 0.02;
const ENDS = ['start', 'end'] as const;

/**
 * Walls of one storey with their ends where their neighbours' lines are.
 *
 * In a model walls overlap or butt at corners. Two ends become one corner at the crossing of their lines, where the model declares
 * it or both lie no farther from it than a face of the other wall (its half thickness on the square) and 1 mm. An end that stops at
 * another wall's path stays as drawn where it lies inside the forms of that wall; otherwise it goes on to its line.
 */
export function snapEnds(walls: readonly DrawnLine[], declared: readonly DeclaredMeeting[]): SnappedLines {
  const targets = new Map<string, Target>();
  const put = (target: Target): void => {
    const key = `${target.wall}/${target.end}`;
    if (!targets.has(key)) targets.set(key, target);
  };
  const corner = (a: number, aEnd: LineEnd, b: number, bEnd: LineEnd, isDeclared: boolean): void => {
    const point = cornerOf(walls, a, aEnd, b, bEnd, isDeclared);
    if (!point) return;
    put({ wall: a, end: aEnd, point, to: b });
    put({ wall: b, end: bEnd, point, to: a });
  };
  for (const { a, aEnd, b, bEnd } of declared) if (bEnd !== null) corner(a, aEnd, b, bEnd, true);
  const onPath = new Set(declared.filter(({ bEnd }) => bEnd === null).map(({ a, aEnd, b }) => `${a}/${aEnd}/${b}`));
  forEachPair(walls, (a, b) => {
    for (const aEnd of ENDS)
      for (const bEnd of ENDS)
        if (!onPath.has(`${a}/${aEnd}/${b}`) && !onPath.has(`${b}/${bEnd}/${a}`)) corner(a, aEnd, b, bEnd, false);
  });
  forEachPair(walls, (a, b) => {
    for (const [branch, through] of [
      [a, b],
      [b, a],
    ] as const)
      for (const end of ENDS) {
        const point = targets.has(`${branch}/${end}`) ? null : teeOf(walls, branch, end, through);
        if (point) put({ wall: branch, end, point, to: through });
      }
  });
  return moveEnds(walls, targets);
}

/** Pairs whose boxes, widened by their thickness, overlap, in the order of the walls. */
function forEachPair(walls: readonly DrawnLine[], visit: (a: number, b: number) => void): void {
  const strips = walls.map(({ line: { from, to, arc }, thickness, formed }) => ({ from, to, reach: 2 * Math.max(thickness, formed) + (arc ? arc.radius : 0) }));
  const pairs: [number, number][] = [];
  forEachNearPair(strips, (first, second) => pairs.push([first, second]));
  pairs.sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  for (const [a, b] of pairs) visit(a, b);
}

const endOf = ({ from, to }: WallLine, end: LineEnd): Vector => (end === 'start' ? from : to);

/** Direction of a line at one of its ends, out of the wall. */
function outward(line: WallLine, end: LineEnd): Vector {
  const sign = end === 'start' ? -1 : 1;
  if (!line.arc) return scale(direction(subtract(line.to, line.from)), sign);
  const out = direction(subtract(endOf(line, end), line.arc.centre));
  return scale({ x: -out.y, y: out.x }, Math.sign(line.arc.sweep) * sign);
}

function cornerOf(
  walls: readonly DrawnLine[],
  a: number,
  aEnd: LineEnd,
  b: number,
  bEnd: LineEnd,
  declared: boolean,
): Vector | null {
  const [first, second] = [walls[a]!, walls[b]!];
  const [p, q] = [endOf(first.line, aEnd), endOf(second.line, bEnd)];
  const [u, v] = [outward(first.line, aEnd), outward(second.line, bEnd)];
  const sine = Math.abs(cross(u, v));
  if (sine < ALIKE)
    return declared && inLine(p, q, u) && distance(p, q) <= first.thickness + second.thickness ? midway(p, q) : null;
  const point = crossing(first.line, p, u, second.line, q, v);
  if (!point) return null;
  const limit = (own: DrawnLine, other: DrawnLine): number => reach(own, other, sine, dot(u, v)) * (declared ? 2 : 1);
  return distance(point, p) <= limit(first, second) && distance(point, q) <= limit(second, first) ? point : null;
}

/** How far an end cut square may lie from the crossing of the lines and still lie on a face of the other wall [nm]. */
const reach = (own: DrawnLine, other: DrawnLine, sine: number, cosine: number): number =>
  other.thickness / 2 / sine + (own.thickness / 2) * (Math.abs(cosine) / sine) + MEETS;

const inLine = (p: Vector, q: Vector, along: Vector): boolean => Math.abs(cross(along, subtract(q, p))) <= MEETS;
const midway = (p: Vector, q: Vector): Vector => scale(add(p, q), 0.5);

/** Where two lines cross near two of their ends; an arc meets a straight line where its circle does. */
function crossing(a: WallLine, p: Vector, u: Vector, b: WallLine, q: Vector, v: Vector): Vector | null {
  if (a.arc && b.arc) return distance(p, q) <= MEETS ? midway(p, q) : null;
  if (a.arc) return onCircle(a.arc, q, v, p);
  if (b.arc) return onCircle(b.arc, p, u, q);
  const along = cross(subtract(q, p), v) / cross(u, v);
  return add(p, scale(u, along));
}

function onCircle(
  { centre, radius }: { centre: Vector; radius: number },
  point: Vector,
  along: Vector,
  near: Vector,
): Vector | null {
  const offset = subtract(point, centre);
  const middle = -dot(offset, along);
  const half = radius * radius - cross(along, offset) ** 2;
  if (half < 0) return null;
  const found = [middle - Math.sqrt(half), middle + Math.sqrt(half)].map((s) => add(point, scale(along, s)));
  return found.reduce((best, each) => (distance(each, near) < distance(best, near) ? each : best));
}

/** Where an end that stops at the side of a straight through wall, outside its forms, meets that wall's line. */
function teeOf(walls: readonly DrawnLine[], branch: number, end: LineEnd, through: number): Vector | null {
  const [own, other] = [walls[branch]!, walls[through]!];
  if (own.line.arc || other.line.arc) return null;
  const [p, u] = [endOf(own.line, end), outward(own.line, end)];
  const v = direction(subtract(other.line.to, other.line.from));
  const sine = Math.abs(cross(u, v));
  if (sine < ALIKE) return null;
  const offset = Math.abs(cross(v, subtract(p, other.line.from)));
  const station = dot(subtract(p, other.line.from), v);
  if (offset <= other.formed / 2 + MEETS || station < 0 || station > lengthOf(other.line)) return null;
  const point = add(p, scale(u, cross(subtract(other.line.from, p), v) / cross(u, v)));
  return distance(point, p) <= reach(own, other, sine, dot(u, v)) ? point : null;
}

function moveEnds(walls: readonly DrawnLine[], targets: ReadonlyMap<string, Target>): SnappedLines {
  const moved: MovedEnd[] = [];
  const lines = walls.map(({ line }, wall) => {
    const [from, to] = ENDS.map((end) => targets.get(`${wall}/${end}`)?.point ?? endOf(line, end)) as [Vector, Vector];
    const changed = line.arc
      ? bentLine(line, from, to)
      : dot(subtract(to, from), subtract(line.to, line.from)) > 0
        ? lineOf(from, to)
        : line;
    if (changed === line) return line;
    for (const end of ENDS) {
      const by = dot(subtract(endOf(changed, end), endOf(line, end)), outward(line, end));
      const target = targets.get(`${wall}/${end}`);
      if (target && Math.abs(by) > MEETS / 1_000) moved.push({ wall, end, by, to: target.to });
    }
    return changed;
  });
  return { lines, moved };
}

/** The arc of the same circle between other ends. */
function bentLine(line: WallLine, from: Vector, to: Vector): WallLine {
  const { arc } = line;
  if (!arc) return line;
  const side = Math.sign(arc.sweep);
  const turn = (a: Vector, b: Vector): number =>
    Math.atan2(cross(subtract(a, arc.centre), subtract(b, arc.centre)), dot(subtract(a, arc.centre), subtract(b, arc.centre)));
  const sweep = arc.sweep + turn(line.to, to) - turn(line.from, from);
  return Math.sign(sweep) === side ? { from, to, arc: { ...arc, sweep } } : line;
}
