import type { Feature, Opening, Schedule } from '../../src/domain/schedule/schedule.js';
import { HERON } from './heron-figures.js';
import { footprintEnd, levelAt } from './solid-footprints.js';
import { endStation, heading, inchesOf, type SolidWall } from './solid-lines.js';

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

/** Everything a schedule's ledges and taper tops add to the cores, one sweep for each stretch between openings; decisions.md 23. */
export function sweepsOf(schedule: Schedule, walls: readonly SolidWall[]): Sweep[] {
  return walls.flatMap((wall) => schedule.features.flatMap((feature) => {
    if (feature.wall !== wall.mark) return [];
    if (feature.kind === 'ledge') return ledgeSweeps(feature, wall, schedule, walls);
    if (feature.kind === 'taper-top') return taperSweeps(feature.faces, wall, schedule, walls);
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
  if (!reaches(ledge, end, wall)) return inchesOf(ledge[end]);
  const z = bearingOf(ledge, wall) - HERON.courseHeight / 2;
  const side = ledge.face === 'outside' ? -1 : 1;
  const corner = footprintEnd(wall, end, side, walls, z, HERON.panel);
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
function turnOf(wall: SolidWall, end: 'from' | 'to', other: SolidWall, otherEnd: 'from' | 'to'): number {
  const way = (each: SolidWall, at: 'from' | 'to'): number => {
    const [x, y] = heading(each.curve, endStation(each.curve, at));
    return Math.atan2(y * each.walk, x * each.walk);
  };
  const arrives = (end === 'to') === (wall.walk === 1);
  const [before, after] = arrives ? [way(wall, end), way(other, otherEnd)] : [way(other, otherEnd), way(wall, end)];
  const turn = after - before;
  return turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
}

/** Along the axis from node to node where the taper is mitred; to where the concrete ends at a free end. */
function taperSweeps(faces: 'one' | 'both', wall: SolidWall, schedule: Schedule, walls: readonly SolidWall[]): Sweep[] {
  const z = wall.top - HERON.courseHeight / 2;
  const [from, to] = ENDS.map((end) => footprintEnd(wall, end, 0, walls, z, 0)) as [number, number];
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

