import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { userStation } from './axes.js';
import type { FormUnit } from './course-units.js';
import type { HeadJoint } from './laid.js';
import type { CoursePieces } from './line-pieces.js';
import type { LineResult } from './storey-layout.js';
import type { BondBreak } from './takeoff.js';

const overlaps = (course: CoursePieces, at: Nm): boolean => course.run.voids.some((gap) => gap.from <= at && at <= gap.to);

/** What meets at a joint where forms of two kinds do. */
const unitsAt = ({ run }: CoursePieces, { at, kind }: HeadJoint): FormUnit[] =>
  kind === 'unit' ? run.segments.filter(({ from, to, unit }) => unit !== 'straight' && (from === at || to === at)).map(({ unit }) => unit) : [];

/** Why two joints came so close: the fixed ones first, since no choice moves them. */
function causeOf(lower: CoursePieces, upper: CoursePieces, below: HeadJoint, joint: HeadJoint, range: FormRange): BondBreak['cause'] {
  const unit = [...unitsAt(lower, below), ...unitsAt(upper, joint)];
  if (unit.length > 0) return unit.includes('ledge') ? 'ledge' : 'taper-top';
  const atLeg = ({ kind }: HeadJoint): boolean => kind === 'leg' || kind === 'seam-at-leg';
  if (atLeg(below) && atLeg(joint)) return 'corner-legs';
  const butt = (course: CoursePieces, at: Nm): boolean => course.run.fixedJoints.includes(at) && (at === course.run.to || at === course.run.from);
  if (butt(lower, below.at) || butt(upper, joint.at)) return 'height-step';
  const reach = range.formLength;
  const near = (course: CoursePieces): boolean => [-reach, reach].some((side) => overlaps(course, joint.at + side)) || course.run.voids.length > 0;
  const segment = upper.run.segments.find(({ from, to }) => from <= joint.at && joint.at <= to);
  if (segment && segment.to - segment.from < range.formLength + 2 * range.minPiece) return 'short-run';
  if (upper.run.forbidden.length > 0) return 'tee';
  return near(lower) || near(upper) ? 'opening' : 'no-placement';
}

/**
 * Every pair of head joints of successive courses closer than the stagger, and every joint in a tee's cut-out; seams and chord joints
 * are exempt.
 *
 * @param first index of the first course that is asked about; those below it only count as what lies beneath
 */
export function bondBreaks(result: Pick<LineResult, 'line' | 'courses'>, storey: string, range: FormRange, first = 0): BondBreak[] {
  const { walls } = result.line;
  const placeOf = (at: Nm): { wall: string; at: Nm } => {
    const index = walls.findLastIndex(({ from }) => at > from);
    const { wall, from } = walls[Math.max(0, index)]!;
    return { wall: wall.wall.mark, at: userStation(wall, at - from) };
  };
  const found: BondBreak[] = [];
  const counts = ({ kind }: HeadJoint): boolean => kind !== 'seam' && kind !== 'chord';
  const counted = result.courses.map(({ joints }) => joints.filter(counts));
  result.courses.forEach((course, index) => {
    if (index < first) return;
    const lower = result.courses[index - 1];
    const under = counted[index - 1] ?? [];
    for (const joint of counted[index]!) {
      const { at } = joint;
      const place = (): Pick<BondBreak, 'storey' | 'wall' | 'at' | 'course'> => ({ storey, ...placeOf(at), course: course.run.n });
      for (const zone of course.run.forbidden) {
        if (at <= zone.from || at >= zone.to) continue;
        const outside = Math.max(zone.from + range.webSpacing - at, at - zone.to + range.webSpacing, 0);
        found.push({ ...place(), distance: outside, cause: 'tee' });
      }
      for (const below of under) {
        const distance = Math.abs(below.at - at);
        if (distance < range.minStagger) found.push({ ...place(), distance, cause: causeOf(lower!, course, below, joint, range) });
      }
    }
  });
  return found;
}
