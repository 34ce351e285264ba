import { coreOfCourse } from '../takeoff/course-core.js';
import { courseOf, stripOn, wallFinder } from '../reinforcement/laid-places.js';
import { factors, restraintReports, type RestraintPlace } from './restraint-report.js';
import { toFeet, type Nm } from '../quantity/length.js';
import type { CheckContext, JobCheck } from './job-check.js';
import type { Core } from '../range/range.js';
import type { Junction, LaidCourse, LaidStorey, LaidWall } from '../takeoff/laid.js';

const NOTES = ['The bulkhead closes what the wider core is wider by. Its lumber is by others; no capacity of it is known here.'];

/** Push on the bulkhead where a wall runs straight on with another core, course by course (decision 4). Source: statics. */
export const coreStepOfJob: JobCheck = (job) =>
  restraintReports(
    { check: 'core-step', name: 'push on the bulkhead', equation: 'F = p · ( t1 − t2 ) · h', notes: NOTES },
    job.takeoff.laid.storeys.flatMap((storey) => storey.junctions.filter(({ kind }) => kind === 'straight').flatMap((junction) => placesOf(storey, junction, job))),
  );

/** A junction's courses are numbered in the first of its walls. */
function placesOf(storey: LaidStorey, { id, walls, courses }: Junction, { pressureOf }: CheckContext): readonly RestraintPlace[] {
  const [first, second] = walls.map(wallFinder(storey));
  if (!first || !second) return [];
  return courses.flatMap((n): readonly RestraintPlace[] => {
    const course = courseOf(first, n);
    const beside = coreBeside(first, course, second);
    const own = coreOfCourse(first, n);
    if (beside === null || beside.width === own.width) return [];
    const [narrow, wide] = own.width < beside.width ? [own, beside] : [beside, own];
    const measured = [pressureOf(storey.id, wide).psf, toFeet(wide.width - narrow.width), toFeet(heightOf(first, course, courses))] as const;
    return [{
      storey: storey.id, core: wide.code, wall: first.mark, course: n, at: first.startJunction === id ? course.from : course.to,
      forceLb: measured[0] * measured[1] * measured[2], substituted: factors(...measured), resistedBy: 'a bulkhead over the step, braced', capacityLb: null,
      more: { with: second.mark, narrowCore: narrow.code },
    }];
  });
}

/** The step is closed over a strip between two of its courses too. */
const heightOf = (wall: LaidWall, { n, height }: LaidCourse, courses: readonly number[]): Nm => height + (courses.includes(n + 1) ? stripOn(wall, n) : 0);

/** The core of another wall at the middle of a course, null where it does not stand there. */
function coreBeside(wall: LaidWall, { bottom, height }: LaidCourse, other: LaidWall): Core | null {
  const middle = wall.base + bottom + height / 2 - other.base;
  const course = other.courses.find((each) => each.bottom <= middle && middle < each.bottom + each.height);
  return course === undefined ? null : coreOfCourse(other, course.n);
}
