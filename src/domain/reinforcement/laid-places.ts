import type { Nm } from '../quantity/length.js';
import type { LaidCourse, LaidJob, LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { RulePlace } from './rule.js';

export interface LaidPlace {
  readonly storey: LaidStorey;
  readonly wall: LaidWall;
  readonly course: LaidCourse;
  readonly place: RulePlace;
}

/** Every course of every wall of the job, storey by storey, from the bottom up. */
export function* laidPlaces(job: LaidJob): Generator<LaidPlace> {
  for (const storey of job.storeys) yield* placesOfStorey(storey);
}

export function* placesOfStorey(storey: LaidStorey): Generator<LaidPlace> {
  for (const wall of storey.walls) {
    for (const course of wall.courses) {
      yield { storey, wall, course, place: { storey: storey.id, wall: wall.mark, course: course.n } };
    }
  }
}

/**
 * Finds the walls that junctions name.
 *
 * @throws a defect where the laid job names a wall the storey does not hold
 */
export function wallFinder(storey: LaidStorey): (mark: string) => LaidWall {
  const walls = new Map(storey.walls.map((wall) => [wall.mark, wall]));
  return (mark) => {
    const wall = walls.get(mark);
    if (!wall) throw new Error(`storey ${storey.id} has a junction on wall ${mark}, which it does not hold`);
    return wall;
  };
}

/** Height of the height strip that lies on a course, 0 where none does; none lies on the top one. */
export const stripOn = ({ strips }: Pick<LaidWall, 'strips'>, n: number): Nm => strips.find(({ afterCourse }) => afterCourse === n)?.height ?? 0;

/** @throws a defect where a junction stands in a course the wall does not have */
export function courseOf(wall: LaidWall, n: number): LaidCourse {
  const course = wall.courses.find((each) => each.n === n);
  if (!course) throw new Error(`a junction stands in course ${n} of wall ${wall.mark}, which has ${wall.courses.length}`);
  return course;
}
