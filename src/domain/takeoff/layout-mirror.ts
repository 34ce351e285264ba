import type { Nm } from '../quantity/length.js';
import type { BondRun } from './layout-kinds.js';
import type { LinePiece } from './layout-line.js';
import type { Segment } from './runs.js';

/** The same segment seen from the line's other end; `length` is where station 0 comes to lie. */
export const mirroredSegment = (segment: Segment, length: Nm): Segment => ({
  ...segment,
  from: length - segment.to,
  to: length - segment.from,
  fixedLeft: segment.fixedRight,
  fixedRight: segment.fixedLeft,
  seamLeft: segment.seamRight,
  seamRight: segment.seamLeft,
  overLeft: segment.overRight,
  overRight: segment.overLeft,
});

export const mirroredSegments = (segments: readonly Segment[], length: Nm): Segment[] => segments.map((segment) => mirroredSegment(segment, length)).reverse();

/** What the layout of a course depends on, seen from the line's other end. */
export const mirroredRun = ({ ripped, segments, fixedJoints, forbidden }: BondRun, length: Nm): BondRun => ({
  ripped,
  segments: mirroredSegments(segments, length),
  fixedJoints: fixedJoints.map((at) => length - at).reverse(),
  forbidden: forbidden.map(({ from, to }) => ({ from: length - to, to: length - from })).reverse(),
});

export const mirroredPiece = ({ from, to, seamAt, atLeg, over }: LinePiece, length: Nm): LinePiece => ({
  from: length - to,
  to: length - from,
  seamAt: seamAt === null ? null : length - seamAt,
  atLeg,
  over,
});
