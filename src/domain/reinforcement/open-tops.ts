import { isGableCourse } from '../takeoff/course-core.js';
import type { HeadJoint, LaidCourse, LaidWall } from '../takeoff/laid.js';
import { within, type AxisRuns } from './axis-runs.js';
import type { Segment } from './segments.js';

/** The course of a wall's gable that stands on a course. */
const gableCourseOn = (wall: LaidWall, course: LaidCourse): LaidCourse | undefined =>
  wall.courses.find(({ n }) => n === course.n + 1 && isGableCourse(wall, n));

/**
 * The stretches of a course that no form of the same wall stands on: the whole top course, and under a gable what each course's
 * slope leaves open beside the course above.
 */
export function openStretches(wall: LaidWall, course: LaidCourse, { segmentsOf }: AxisRuns): readonly Segment[] {
  if (course.top) return segmentsOf(course);
  const above = gableCourseOn(wall, course);
  if (!above) return [];
  const beside = [{ from: -Infinity, to: above.from }, { from: above.to, to: Infinity }];
  return beside.flatMap((side) => within(segmentsOf(course), side));
}

/** Head joints of a course that no form of the same wall stands on. */
export function openJoints(wall: LaidWall, course: LaidCourse): readonly HeadJoint[] {
  if (course.top) return course.headJoints;
  const above = gableCourseOn(wall, course);
  return above ? course.headJoints.filter(({ at }) => at <= above.from || at >= above.to) : [];
}
