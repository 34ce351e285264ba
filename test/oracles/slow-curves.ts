import type { Takeoff } from '../../src/domain/takeoff/index.js';
import type { Schedule, Wall } from '../../src/domain/schedule/schedule.js';
import type { CurvedPlan } from '../support/curved-plans.js';
import { HERON } from './heron-figures.js';
import { slowCourses, slowStacks } from './slow-stack.js';
import { heading, meeting, pointAt, radiusAt, slowArc, squareEnd, station, walkedArea, type At, type SlowTrackWall } from './slow-tracks.js';

const NM = 25_400_000;
const RADIUS_GAP = 1;
/** Shortest piece that may be cut [in]; chords are whole inches (the demo range's sheet). */
const MIN_PIECE = 8;

/** What the slow way makes of a plan with curves: of every curve the chords of its courses, of every storey closures and concrete. */
export interface SlowCurves {
  /** By mark: lengths of the pieces of each course as laid from either end [in]. */
  readonly chords: ReadonlyMap<string, { readonly chord: number; readonly ways: readonly (readonly (readonly number[])[])[] }>;
  readonly axis: ReadonlyMap<string, number>;
  readonly closures: ReadonlyMap<string, number>;
  /** [in³] */
  readonly concrete: number;
}

interface Member {
  readonly wall: SlowTrackWall;
  /** Who goes on at its ends, or what it stands on. */
  readonly before: SlowTrackWall | null;
  readonly after: SlowTrackWall | null;
  readonly onStart: SlowTrackWall | null;
  readonly onEnd: SlowTrackWall | null;
  readonly bands: readonly { readonly bottom: number; readonly top: number; readonly strip: boolean }[];
  readonly top: number;
}

function trackWall({ mark, from, to, arc, core, dimensionsTo, height }: Wall): SlowTrackWall {
  const [a, b] = [from, to].map(({ x, y }): At => [x / NM, y / NM]) as [At, At];
  const width = HERON.coreWidth[core]!;
  const thickness = width + 2 * HERON.panel;
  const offset = { 'foam-face': thickness / 2, 'concrete-face': width / 2, axis: 0 }[dimensionsTo];
  return { mark, from: a, to: b, core: width, thickness, offset, height: height / NM, arc: arc && slowArc(a, b, arc.radius / NM, arc.turns === 'left' ? 1 : -1) };
}

function membersOf(plan: CurvedPlan, schedule: Schedule): Member[] {
  const walls = schedule.walls.map(trackWall);
  let first = 0;
  return plan.chains.flatMap(({ marks, closed, on }) => {
    const own = walls.slice(first, (first += marks.length));
    return own.map((wall, index): Member => {
      const last = index === own.length - 1;
      const stack = slowStacks(wall.height, HERON)[0]!;
      const courses = slowCourses(stack, HERON);
      const bands = courses.flatMap(({ bottom, top }, n) => [
        ...(n > 0 && courses[n - 1]!.top < bottom - 1e-9 ? [{ bottom: courses[n - 1]!.top, top: bottom, strip: true }] : []),
        { bottom, top, strip: false },
      ]);
      return {
        wall, bands, top: stack.height,
        before: own.at(index - 1)! !== wall && (index > 0 || closed) ? own.at(index - 1)! : null,
        after: last ? (closed && own.length > 1 ? own[0]! : null) : own[index + 1]!,
        onStart: index === 0 && on?.start !== undefined ? walls[on.start]! : null,
        onEnd: last && on?.end !== undefined ? walls[on.end]! : null,
      };
    });
  });
}

const goesOn = (a: SlowTrackWall, b: SlowTrackWall): boolean => {
  const [[ax, ay], [bx, by]] = [heading(a, 'end'), heading(b, 'start')];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) < Math.PI / 180;
};

/** The line `left` of the dimension line where one wall goes on into the next. */
function corner(a: SlowTrackWall, b: SlowTrackWall, left: number): At {
  if (goesOn(a, b)) return squareEnd(a, left, 'end');
  const node = meeting(a, a.offset, b, b.offset, squareEnd(a, a.offset, 'end'));
  return meeting(a, left, b, left, node);
}

/** A branch on the near face, `half` off the axis, of the wall it stands on. */
function onFace(branch: SlowTrackWall, end: 'start' | 'end', through: SlowTrackWall, half: number, left: number): At {
  const tip = squareEnd(branch, branch.offset, end);
  const node = meeting(branch, branch.offset, through, through.offset, tip);
  const along = station(branch, node);
  const [x, y] = pointAt(branch, along + (end === 'start' ? 20 : -20), branch.offset);
  const [hx, hy] = heading(through, 'start');
  const side = hx * (y - through.from[1]) - hy * (x - through.from[0]) > through.offset ? 1 : -1;
  return meeting(branch, left, through, through.offset + side * half, node);
}

/** Whether a neighbour still stands at a height. */
const stands = (wall: SlowTrackWall | null, height: number): boolean => wall !== null && height < slowStacks(wall.height, HERON)[0]!.height - 1e-9;

/** Where an end of a wall's core lies at a height, on the line `left` of the dimension line. */
function coreEnd(member: Member, end: 'start' | 'end', left: number, height: number): At {
  const { wall } = member;
  const [beside, on] = end === 'start' ? [member.before, member.onStart] : [member.after, member.onEnd];
  if (on && stands(on, height)) return onFace(wall, end, on, on.core / 2, left);
  if (beside && stands(beside, height)) return end === 'start' ? corner(beside, wall, left) : corner(wall, beside, left);
  const drawn = station(wall, squareEnd(wall, wall.offset, end));
  return pointAt(wall, end === 'start' ? HERON.closure : fullLength(wall, drawn) - HERON.closure, left);
}

/** The end of a half circle comes out as its start from either side. */
const fullLength = (wall: SlowTrackWall, measured: number): number => (wall.arc ? wall.arc.sweep * radiusAt(wall, wall.offset) : measured);

/** Footprint of one wall's core at a height: down its right face, back along its left. */
function footprint(member: Member, height: number): number {
  const { wall } = member;
  const [right, left] = [wall.offset - wall.core / 2, wall.offset + wall.core / 2];
  return walkedArea([
    { to: coreEnd(member, 'start', right, height), along: null },
    { to: coreEnd(member, 'end', right, height), along: wall },
    { to: coreEnd(member, 'end', left, height), along: null },
    { to: coreEnd(member, 'start', left, height), along: wall, back: true },
  ]);
}

interface Hole {
  readonly from: number;
  readonly to: number;
  readonly sill: number;
  readonly head: number;
  readonly closed: boolean;
}

function holesOf(wall: SlowTrackWall, schedule: Schedule, top: number): Hole[] {
  const scale = wall.arc ? radiusAt(wall, wall.offset) / wall.arc.radius : 1;
  return schedule.openings.filter((opening) => opening.wall === wall.mark).map((opening) => ({
    from: (opening.at / NM) * scale, to: ((opening.at + opening.width) / NM) * scale, sill: opening.sill / NM,
    head: Math.min(top, (opening.sill + opening.height) / NM), closed: opening.lining === 'end-closure',
  }));
}

/** Stations along the axis, from its square start, where the forms of a course end. */
function formEnds(member: Member, height: number): { from: number; to: number; overFrom: number; overTo: number } {
  const { wall } = member;
  const node = (end: 'start' | 'end'): { at: number; over: number } => {
    const [beside, on] = end === 'start' ? [member.before, member.onStart] : [member.after, member.onEnd];
    const free = end === 'start' ? 0 : fullLength(wall, station(wall, squareEnd(wall, wall.offset, 'end')));
    if (on && stands(on, height)) {
      const face = (left: number): number => station(wall, onFace(wall, end, on, on.thickness / 2, left));
      const at = face(wall.offset);
      const past = [1, -1].map((side) => (end === 'start' ? at - face(wall.offset + (side * wall.thickness) / 2) : face(wall.offset + (side * wall.thickness) / 2) - at));
      return { at, over: Math.max(0, ...past) };
    }
    if (!beside || !stands(beside, height) || goesOn(...((end === 'start' ? [beside, wall] : [wall, beside]) as [SlowTrackWall, SlowTrackWall]))) return { at: free, over: 0 };
    return { at: station(wall, end === 'start' ? corner(beside, wall, wall.offset) : corner(wall, beside, wall.offset)), over: 0 };
  };
  const [start, end] = [node('start'), node('end')];
  return { from: start.at, to: end.at, overFrom: start.over, overTo: end.over };
}

/** Pieces of one course, laid one by one: a joint wherever a whole chord from one end of the wall is full, and at every jamb. */
function courseChords(member: Member, holes: readonly Hole[], { bottom, top }: { bottom: number; top: number }, step: number, begin: number, way: 1 | -1): number[] {
  const { wall } = member;
  const axis = radiusAt(wall, wall.offset);
  const concave = axis - wall.thickness / 2;
  const { from, to, overFrom, overTo } = formEnds(member, bottom);
  const stops = holes.filter(({ sill, head }) => sill <= bottom + 1e-9 && head >= top - 1e-9)
    .map((hole) => (hole.closed ? [hole.from + HERON.closure, hole.to - HERON.closure] : [hole.from, hole.to]) as [number, number]).sort((a, b) => a[0] - b[0]);
  const edges = [from, ...stops.flat(), to];
  const lengths: number[] = [];
  for (let index = 0; index < edges.length; index += 2) {
    const [low, high] = [edges[index]!, edges[index + 1]!];
    const cuts: number[] = [];
    for (let count = 1; count * step < 1e5; count += 1) {
      const at = begin + way * count * step;
      if (at > low + 4e-5 && at < high - 4e-5) cuts.push(at);
      if (way > 0 ? at > high : at < low) break;
    }
    const ends = [low, ...cuts.sort((a, b) => a - b), high];
    ends.slice(1).forEach((at, place) => {
      const extra = [place === 0 && low === from ? overFrom : 0, place === ends.length - 2 && high === to ? overTo : 0] as const;
      const chordOf = (a: number, b: number): number => 2 * concave * Math.sin((b - a) / axis / 2);
      const length = chordOf(ends[place]!, at) + extra[0] + extra[1];
      const middle = (ends[place]! + at) / 2;
      lengths.push(...(length > HERON.formLength + 1e-9 ? [chordOf(ends[place]!, middle) + extra[0], chordOf(middle, at) + extra[1]] : [length]));
    });
  }
  return lengths;
}

/** The longest whole inch that fits the gap, tried one by one. */
function longestChord(concave: number, thickness: number): number {
  for (let chord = HERON.formLength; chord >= MIN_PIECE; chord -= 1) if ((thickness * chord) / concave <= RADIUS_GAP + 1e-9 && chord <= 2 * concave) return chord;
  return 0;
}

export function slowCurves(plan: CurvedPlan, schedule: Schedule): SlowCurves {
  const chords = new Map<string, { chord: number; ways: number[][][] }>();
  const closures = new Map<string, number>();
  const axis = new Map<string, number>();
  let concrete = 0;
  for (const member of membersOf(plan, schedule)) {
    const { wall, bands, top } = member;
    const holes = holesOf(wall, schedule, top);
    const ends = bands.map(({ bottom }) => formEnds(member, bottom));
    axis.set(wall.mark, ends[0]!.to - ends[0]!.from);
    for (const { bottom, top: head } of bands) {
      concrete += footprint(member, bottom) * (head - bottom);
      const free = [member.before ?? member.onStart, member.after ?? member.onEnd].filter((beside) => !stands(beside, bottom)).length;
      const jambs = holes.filter((hole) => hole.closed && hole.sill < head - 1e-9 && hole.head > bottom + 1e-9).length * 2;
      closures.set(String(wall.core), (closures.get(String(wall.core)) ?? 0) + free + jambs);
    }
    for (const hole of holes) concrete -= (hole.to - hole.from) * wall.core * (hole.head - hole.sill);
    if (!wall.arc) continue;
    const concave = radiusAt(wall, wall.offset) - wall.thickness / 2;
    const chord = longestChord(concave, wall.thickness);
    chords.set(wall.mark, { chord, ways: [] });
    if (chord === 0) continue;
    const step = 2 * Math.asin(chord / 2 / concave) * radiusAt(wall, wall.offset);
    const courses = bands.filter(({ strip }) => !strip);
    const [begin, finish] = [Math.min(...ends.map(({ from }) => from)), Math.max(...ends.map(({ to }) => to))];
    const way = (from: number, direction: 1 | -1): number[][] => courses.map((course) => courseChords(member, holes, course, step, from, direction));
    chords.set(wall.mark, { chord, ways: [way(begin, 1), way(finish, -1)] });
  }
  return { chords, axis, closures, concrete };
}

const close = (a: readonly number[], b: readonly number[]): boolean => a.length === b.length && a.every((value, index) => Math.abs(value - b[index]!) < 1e-6);

/** Where a take-off differs from the slow one, in words. Of the two ends a curve may be laid from, the one with fewer pieces counts. */
export function curveDifferences({ laid, units, concrete }: Takeoff, slow: SlowCurves): string[] {
  const walls = laid.storeys.flatMap((storey) => storey.walls);
  const sorted = (lengths: readonly number[]): number[] => [...lengths].sort((a, b) => a - b);
  const pieces = (way: readonly (readonly number[])[]): number => way.reduce((sum, course) => sum + course.length, 0);
  const wrong = walls.flatMap((wall) => {
    const expected = slow.chords.get(wall.mark);
    if (!expected) return [];
    if ((wall.arc!.chord ?? 0) / NM !== expected.chord) return [`${wall.mark}: chord ${wall.arc!.chord} nm, slow ${expected.chord} in`];
    if (expected.chord === 0) return [];
    const got = wall.courses.map(({ pieces: all }) => sorted(all.filter(({ inside }) => !inside).map(({ pieceLength }) => pieceLength / NM)));
    const fewest = Math.min(...expected.ways.map(pieces));
    const same = expected.ways.some((way) => pieces(way) === fewest && way.every((course, index) => close(sorted(course), got[index]!)));
    return same ? [] : [`${wall.mark}: ${pieces(got)} pieces ${JSON.stringify(got[0])}, slow ${expected.ways.map(pieces).join(' or ')} ${JSON.stringify(expected.ways[0]![0])}`];
  });
  const volume = Number(concrete.reduce((sum, { nm3 }) => sum + nm3, 0n)) / NM ** 3;
  const closures = [...slow.closures].flatMap(([core, count]) => {
    const got = units.filter((unit) => unit.kind === 'end-closure' && unit.core === core).reduce((sum, unit) => sum + unit.pieces, 0);
    return got === count ? [] : [`core ${core}: ${got} closures, slow ${count}`];
  });
  return [...wrong, ...closures, ...(Math.abs(volume / slow.concrete - 1) <= 1e-9 ? [] : [`concrete ${volume} in³, slow ${slow.concrete}`])];
}
