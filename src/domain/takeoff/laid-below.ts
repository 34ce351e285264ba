import type { Nm } from '../quantity/length.js';
import type { HeadJoint } from './laid.js';
import type { CourseRun } from './runs.js';

/** Joints that the bond of the course above must stay clear of: seams and chord joints stand one above the other. */
export const countedJoints = (joints: readonly HeadJoint[]): Nm[] => joints.filter(({ kind }) => kind !== 'seam' && kind !== 'chord').map(({ at }) => at);

/** A course already laid, as the bond of what stands on it sees it: nothing to choose, its joints where they are. */
export const alreadyLaid = (joints: readonly Nm[]): CourseRun => ({
  n: 0,
  bottom: 0,
  height: 0,
  ripped: false,
  from: 0,
  to: 0,
  startLeg: null,
  endLeg: null,
  mitreStart: false,
  mitreEnd: false,
  betweenLegs: null,
  closureStart: null,
  closureEnd: null,
  voids: [],
  segments: [],
  fixedJoints: [...joints].sort((a, b) => a - b),
  forbidden: [],
});
