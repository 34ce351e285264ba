import type { Feature, Opening, Schedule } from '../../src/domain/schedule/schedule.js';
import { HERON } from './heron-figures.js';
import { endStation, heading, inchesOf } from './solid-curves.js';
import { footprintEnd, levelAt } from './solid-footprints.js';
import type { SolidWall } from './solid-lines.js';

/** The demo range's ledge and tapers, typed in from its sheet [in, in²]. */
export const LEDGE = { projection: 5, section: 40, cores: [6, 8] };
export const TAPER = { section: { one: 14, both: 28 }, cores: [6, 8] };

type Ledge = Extract<Feature, { kind: 'ledge' }>;

/** A section swept along a wall beyond its core. */
export interface Sweep {
  readonly wall: string;
  /** [in²] */
  readonly section: number;
  /** [in] */
  readonly length: number;
}

const EPSILON = 1e-6;
const ENDS = ['from', 'to'] as const;

/**
 * Where the leg of a corner unit ends in a wall's top course, as a station of its dimension line; which leg stands there is chosen
 * to buy the fewest forms, so no drawing tells it.
 */
export type LegEnd = (wall: SolidWall, end: 'from' | 'to') => number;

/** Everything a schedule's ledges and taper tops add to the cores, one sweep for each stretch between openings; decisions.md 23. */
export function sweepsOf(schedule: Schedule, walls: readonly SolidWall[], legEnd: LegEnd): Sweep[] {
  return walls.flatMap((wall) => schedule.features.flatMap((feature) => {
    if (feature.wall !== wall.mark) return [];
    if (feature.kind === 'ledge') return ledgeSweeps(feature, wall, schedule, walls);
    if (feature.kind === 'taper-top') return taperSweeps(feature.faces, wall, schedule, walls, legEnd);
    return [];
  }));
}

/** Top of the ledge's course above the storey's bottom. */
const bearingOf = (ledge: Ledge, wall: SolidWall): number => wall.base + inchesOf(ledge.at);

function ledgeSweeps(ledge: Ledge, wall: SolidWall, schedule: Schedule, walls: readonly SolidWall[]): Sweep[] {
  const top = bearingOf(ledge, wall);
  const [from, to] = ENDS.map((end) => ledgeEnd(ledge, end, wall, schedule, walls)) as [number, number];
  return between(from, to, wall, top - HERON.courseHeight, top).map((length) => ({ wall: wall.mark, section: LEDGE.section, length }));
}

const reaches = (ledge: Ledge, end: 'from' | 'to', wall: SolidWall): boolean => Math.abs(inchesOf(ledge[end]) - endStation(wall.curve, end)) < EPSILON;

/** Where a ledge's concrete ends along its foam face: as asked, or what lies at the wall's end. */
function ledgeEnd(ledge: Ledge, end: 'from' | 'to', wall: SolidWall, schedule: Schedule, walls: readonly SolidWall[]): number {
  const z = bearingOf(ledge, wall) - HERON.courseHeight / 2;
  const side = ledge.face === 'outside' ? -1 : 1;
  const corner = footprintEnd(wall, end, side, walls, z, HERON.panel);
  // An inner face ends before its dimension line does.
  if (!reaches(ledge, end, wall)) return end === 'from' ? Math.max(inchesOf(ledge.from), corner) : Math.min(inchesOf(ledge.to), corner);
  const joint = wall.joints[end];
  const other = joint.kind === 'corner' ? walls.find(({ mark }) => mark === joint.other.mark) : undefined;
  if (joint.kind !== 'corner' || !other || !levelAt(other, z)) return corner;
  const meets = schedule.features.some((each) => each.kind === 'ledge' && each.wall === other.mark && each.face === ledge.face &&
    reaches(each, joint.other.end, other) && Math.abs(bearingOf(each, other) - bearingOf(ledge, wall)) < EPSILON);
  if (!meets) return corner;
  // To the tip of the mitred ledges: past the corner of the faces on the convex side, short of it on the concave one.
  const turn = turnOf(wall, end, other, joint.other.end);
  const beyond = LEDGE.projection * Math.tan(turn / 2) * -side;
  return corner + (end === 'to' ? beyond : -beyond);
}

/** Signed turn in walking order, + to the left [rad]. */
export function turnOf(wall: SolidWall, end: 'from' | 'to', other: SolidWall, otherEnd: 'from' | 'to'): number {
  const way = (each: SolidWall, at: 'from' | 'to'): number => {
    const [x, y] = heading(each.curve, endStation(each.curve, at));
    return Math.atan2(y * each.walk, x * each.walk);
  };
  const arrives = (end === 'to') === (wall.walk === 1);
  const [before, after] = arrives ? [way(wall, end), way(other, otherEnd)] : [way(other, otherEnd), way(wall, end)];
  const turn = after - before;
  return turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
}

/**
 * Along the axis: to the node where both walls of a corner have the same taper and height, to the leg of a corner unit elsewhere, to
 * where the concrete ends at a free end, to the through wall's panel at a tee.
 */
function taperSweeps(faces: 'one' | 'both', wall: SolidWall, schedule: Schedule, walls: readonly SolidWall[], legEnd: LegEnd): Sweep[] {
  const z = wall.top - HERON.courseHeight / 2;
  const [from, to] = ENDS.map((end) => {
    const joint = wall.joints[end];
    const other = joint.kind === 'corner' ? walls.find(({ mark }) => mark === joint.other.mark)! : null;
    const alike = other && schedule.features.some((each) => each.kind === 'taper-top' && each.wall === other.mark && each.faces === faces);
    if (other && !(alike && other.top === wall.top)) return legEnd(wall, end);
    return footprintEnd(wall, end, 0, walls, z, joint.kind === 'tee' ? HERON.panel : 0);
  }) as [number, number];
  return between(from, to, wall, wall.top - HERON.courseHeight, wall.top).map((length) => ({ wall: wall.mark, section: TAPER.section[faces], length }));
}

/** What is left of a stretch of the dimension line beside the openings that meet a course at all. */
function between(from: number, to: number, wall: SolidWall, bottom: number, top: number): number[] {
  const meets = ({ sill, height }: Opening): boolean => wall.base + inchesOf(sill) < top - EPSILON && wall.base + inchesOf(sill + height) > bottom + EPSILON;
  const holes = wall.openings.filter(meets).map(({ at, width }) => [inchesOf(at), inchesOf(at + width)] as const).sort((a, b) => a[0] - b[0]);
  const lengths: number[] = [];
  let at = from;
  for (const [near, far] of holes) {
    lengths.push(Math.min(near, to) - at);
    at = Math.max(at, far);
  }
  return [...lengths, to - at].filter((length) => length > EPSILON);
}

