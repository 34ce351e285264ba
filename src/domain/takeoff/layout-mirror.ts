import type { Nm } from '../quantity/length.js';
import type { CourseRun, Segment } from './runs.js';

const flipped = <T extends { readonly from: Nm; readonly to: Nm }>(span: T, length: Nm): T => ({ ...span, from: length - span.to, to: length - span.from });

const mirroredSegment = (segment: Segment, length: Nm): Segment => ({
  ...flipped(segment, length),
  fixedLeft: segment.fixedRight,
  fixedRight: segment.fixedLeft,
  seamLeft: segment.seamRight,
  seamRight: segment.seamLeft,
  overLeft: segment.overRight,
  overRight: segment.overLeft,
});

/** The same course seen from its other end; `length` is where station 0 comes to lie. */
export function mirroredRun(run: CourseRun, length: Nm): CourseRun {
  return {
    ...flipped(run, length),
    startLeg: run.endLeg && flipped(run.endLeg, length),
    endLeg: run.startLeg && flipped(run.startLeg, length),
    closureStart: run.closureEnd && { ...run.closureEnd, at: length - run.closureEnd.at },
    closureEnd: run.closureStart && { ...run.closureStart, at: length - run.closureStart.at },
    voids: run.voids.map((gap) => flipped(gap, length)).reverse(),
    segments: run.segments.map((segment) => mirroredSegment(segment, length)).reverse(),
    fixedJoints: run.fixedJoints.map((at) => length - at).reverse(),
    forbidden: run.forbidden.map((zone) => flipped(zone, length)).reverse(),
  };
}
