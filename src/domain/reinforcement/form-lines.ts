import type { Nm } from '../quantity/length.js';
import { partsToCover } from '../quantity/rounding.js';
import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { Segment } from './segments.js';

/**
 * Straight-on walls of one core, height and base: one line of forms whatever their marks, so that a wall drawn in two parts takes
 * what it takes in one. Stations of a line run in walking direction from the first wall's node.
 */
export interface FormLine {
  readonly walls: readonly LineWall[];
}

export interface LineWall {
  readonly wall: LaidWall;
  /** Station of the wall's node along the line. */
  readonly from: Nm;
  /** The user drew the wall against the walking direction. */
  readonly reversed: boolean;
}

/** Axis nodes of one line coincide but for the rounding of coordinates; 0.1 mm tells them from walls set off sideways. */
const NODE_TOLERANCE: Nm = 100_000;

const isReversed = (wall: LaidWall): boolean => wall.outside === 'left';
const walkStart = (wall: LaidWall): string => (isReversed(wall) ? wall.endJunction : wall.startJunction);
const walkEnd = (wall: LaidWall): string => (isReversed(wall) ? wall.startJunction : wall.endJunction);

/** A station of the wall as a station of its line. */
export function lineStation({ wall, from, reversed }: LineWall, at: Nm): Nm {
  return reversed ? from + wall.length - at : from + at;
}

/** A station of the line as a station of the wall. */
export function wallStation({ wall, from, reversed }: LineWall, at: Nm): Nm {
  return reversed ? from + wall.length - at : at - from;
}

/** Every line of a storey, in the order in which their first walls are listed; every wall is in one. */
export function formLines(storey: LaidStorey): readonly FormLine[] {
  const next = followers(storey);
  const followed = new Set(next.values());
  return storey.walls.filter((wall) => !followed.has(wall)).map((first) => lineFrom(first, next));
}

function lineFrom(first: LaidWall, next: ReadonlyMap<LaidWall, LaidWall>): FormLine {
  const walls: LineWall[] = [];
  let from: Nm = 0;
  for (let wall: LaidWall | undefined = first; wall; wall = next.get(wall)) {
    walls.push({ wall, from, reversed: isReversed(wall) });
    from += wall.length;
  }
  return { walls };
}

/** For each wall the one that carries its line on, where there is one. */
function followers(storey: LaidStorey): ReadonlyMap<LaidWall, LaidWall> {
  const byMark = new Map(storey.walls.map((wall) => [wall.mark, wall]));
  const next = new Map<LaidWall, LaidWall>();
  for (const junction of storey.junctions) {
    const through = throughMarks(junction).flatMap((mark) => byMark.get(mark) ?? []);
    const arriving = through.find((wall) => walkEnd(wall) === junction.id);
    const leaving = through.find((wall) => wall !== arriving && walkStart(wall) === junction.id);
    if (arriving && leaving && alike(arriving, leaving)) next.set(arriving, leaving);
  }
  return next;
}

/** The two walls that go straight on at a junction: a tee may stand at a mark of its through wall. */
function throughMarks({ kind, walls }: Junction): readonly string[] {
  if (kind === 'straight') return walls;
  return kind === 'tee' && walls.length === 3 ? walls.slice(0, 2) : [];
}

function alike(arriving: LaidWall, leaving: LaidWall): boolean {
  const [from, to] = [walkNode(arriving, 'end'), walkNode(leaving, 'start')];
  return (
    arriving.arc === null &&
    leaving.arc === null &&
    arriving.core.code === leaving.core.code &&
    arriving.askedHeight === leaving.askedHeight &&
    arriving.base === leaving.base &&
    sameCores(arriving, leaving) &&
    Math.hypot(to.x - from.x, to.y - from.y) <= NODE_TOLERANCE
  );
}

const sameCores = ({ coreChanges: a }: LaidWall, { coreChanges: b }: LaidWall): boolean =>
  a.length === b.length && a.every(({ course, core }, index) => b[index]?.course === course && b[index]?.core.code === core.code);

const walkNode = (wall: LaidWall, end: 'start' | 'end'): LaidWall['axisFrom'] =>
  (end === 'end') === isReversed(wall) ? wall.axisFrom : wall.axisTo;

/** What is set along one wall of a line at a spacing. */
export interface Spaced {
  readonly wall: LaidWall;
  readonly items: number;
  /** The part of the wall that each item holds, in the wall's own stations: a spacing long, the last of a segment what is left. */
  readonly parts: readonly Segment[];
}

/**
 * Items set along a line at a spacing: ⌈L / s⌉ for each segment, segments that touch at a mark being one.
 *
 * @param segmentsOf the segments of one wall, in its own stations
 * @returns          the items of each wall; those of a segment that crosses a mark are dealt out from its beginning
 */
export function spacedAlong(line: FormLine, segmentsOf: (wall: LaidWall) => readonly Segment[], spacing: Nm): readonly Spaced[] {
  let last: Segment | null = null;
  return line.walls.map((member) => {
    const parts: Segment[] = [];
    for (const { from, to } of inWalkingOrder(member, segmentsOf(member.wall))) {
      const begun: Nm = last?.to === from ? last.from : from;
      for (let n = partsToCover(from - begun, spacing); n < partsToCover(to - begun, spacing); n += 1) parts.push(partAt(member, begun + n * spacing, spacing, to));
      last = { from: begun, to };
    }
    return { wall: member.wall, items: parts.length, parts };
  });
}

/** A part that begins at a station of the line, clipped to its segment in the wall and turned to the wall's own stations. */
function partAt(member: LineWall, from: Nm, spacing: Nm, end: Nm): Segment {
  const [a, b] = [wallStation(member, from), wallStation(member, Math.min(from + spacing, end))];
  return a <= b ? { from: a, to: b } : { from: b, to: a };
}

function inWalkingOrder(member: LineWall, segments: readonly Segment[]): readonly Segment[] {
  const turned = segments.map(({ from, to }): Segment => {
    const [a, b] = [lineStation(member, from), lineStation(member, to)];
    return a <= b ? { from: a, to: b } : { from: b, to: a };
  });
  return [...turned].sort((a, b) => a.from - b.from);
}
