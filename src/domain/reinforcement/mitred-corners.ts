import type { Nm } from '../quantity/length.js';
import type { Junction, LaidCourse, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { wallFinder } from './laid-places.js';

/** A corner in one course that has no corner unit there, because a ledge or a taper top runs round it: forms meet in a mitre. */
export interface MitredCorner {
  readonly junction: Junction;
  readonly arriving: MitredEnd;
  readonly leaving: MitredEnd;
  readonly by: 'ledge' | 'taper-top';
}

export interface MitredEnd {
  readonly wall: LaidWall;
  readonly course: LaidCourse;
  readonly end: 'start' | 'end';
  /** Axis station of the corner's node in this course; the forms pass it to the mitre's tip. */
  readonly node: Nm;
}

const OTHER_END = { start: 'end', end: 'start' } as const;

/** The end at which a wall arrives at its corner, in the user's own direction. */
export const arrivingEnd = ({ outside }: LaidWall): 'start' | 'end' => (outside === 'left' ? 'start' : 'end');

/** The course of another wall that stands beside a course, by the elevation of their beds. */
export function courseBeside(wall: LaidWall, n: number, other: LaidWall): LaidCourse | undefined {
  const course = wall.courses.find((each) => each.n === n);
  return course && other.courses.find(({ bottom }) => other.base + bottom === wall.base + course.bottom);
}

/** Every mitred corner of a storey, corner by corner from the bottom up. */
export function mitredCorners(storey: LaidStorey): readonly MitredCorner[] {
  const corners = storey.junctions.filter(({ kind, unit }) => kind === 'corner' && unit !== null);
  const wall = wallFinder(storey);
  return corners.flatMap((junction) => mitresOf(junction, wall(junction.walls[0] as string), wall(junction.walls[1] as string)));
}

function mitresOf(junction: Junction, arriving: LaidWall, leaving: LaidWall): readonly MitredCorner[] {
  const withUnit = new Set(junction.units.map(({ course }) => course));
  return junction.courses.flatMap((n): readonly MitredCorner[] => {
    const course = arriving.courses.find((each) => each.n === n);
    const beside = courseBeside(arriving, n, leaving);
    if (!course || !beside || withUnit.has(n)) return [];
    const by = reason(arriving, course, leaving, beside);
    if (!by) return [];
    const made = [...withUnit];
    const first = { wall: arriving, course, end: arrivingEnd(arriving) };
    const second = { wall: leaving, course: beside, end: OTHER_END[arrivingEnd(leaving)] };
    const besideMade = made.flatMap((each) => courseBeside(arriving, each, leaving)?.n ?? []);
    return [{ junction, by, arriving: { ...first, node: nodeOf(first, made) }, leaving: { ...second, node: nodeOf(second, besideMade) } }];
  });
}

function reason(arriving: LaidWall, course: LaidCourse, leaving: LaidWall, beside: LaidCourse): MitredCorner['by'] | null {
  const ledged = (wall: LaidWall, n: number): boolean => wall.ledges.some((ledge) => ledge.course === n);
  if (ledged(arriving, course.n) || ledged(leaving, beside.n)) return 'ledge';
  return arriving.taper?.course === course.n && leaving.taper?.course === beside.n ? 'taper-top' : null;
}

/** The level of a course: above a change of core the axis lies elsewhere, and its nodes with it. */
const levelOf = (wall: LaidWall, n: number): number => wall.coreChanges.findLast((change) => n >= change.course)?.course ?? 1;

/** The node is where courses of the same level that have their corner unit end; at the foot it is the end of the wall's axis. */
function nodeOf({ wall, course, end }: Omit<MitredEnd, 'node'>, made: readonly number[]): Nm {
  const level = levelOf(wall, course.n);
  const alike = level === 1 ? undefined : wall.courses.find(({ n }) => made.includes(n) && levelOf(wall, n) === level);
  if (alike) return end === 'start' ? alike.from : alike.to;
  return end === 'start' ? 0 : wall.length;
}
