import type { Nm } from '../quantity/length.js';
import type { LaidCourse } from '../takeoff/laid.js';

export interface Segment {
  readonly from: Nm;
  readonly to: Nm;
}

/**
 * The stretches of a course where forms stand: from the first form's end to the last one's, less the openings that interrupt it.
 *
 * A notched course is not interrupted. Stretches of no length are left out.
 *
 * @source decisions: spaced items run along the axis length of forms less interrupting openings, per segment
 */
export function formSegments(course: Pick<LaidCourse, 'from' | 'to' | 'voids'>): readonly Segment[] {
  const segments: Segment[] = [];
  let from = course.from;
  for (const gap of [...course.voids].sort((a, b) => a.from - b.from)) {
    if (gap.from > from) segments.push({ from, to: Math.min(gap.from, course.to) });
    from = Math.max(from, gap.to);
  }
  if (course.to > from) segments.push({ from, to: course.to });
  return segments;
}

/** Length of forms in a course [nm]. */
export function formLengthOf(course: Pick<LaidCourse, 'from' | 'to' | 'voids'>): Nm {
  return formSegments(course).reduce((sum, segment) => sum + segment.to - segment.from, 0);
}
