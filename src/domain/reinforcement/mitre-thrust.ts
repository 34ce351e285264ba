import { twoCoreThrust } from '../engineering/statics/two-core-thrust.js';
import { toFeet, toMm, feet } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import { coreOfCourse } from '../takeoff/course-core.js';
import type { MitredCorner, MitredEnd } from './mitred-corners.js';
import type { PressureOf } from './rule.js';

const MM2_PER_FT2 = toMm(feet(1)) ** 2;

/**
 * Outward force on the mitre of one course: the pressure on its two sections does not cancel at a turn, and what a ledge or a taper
 * adds to the core's section presses with it.
 *
 * @equation F = p · √( A1² + A2² − 2 · A1 · A2 · cos θ )
 * @returns  F, towards the convex side [lb]
 * @valid    p the same over the course: an upper bound near the top of the concrete
 * @source   statics, as on a pipe bend
 */
export function mitreThrustLb({ junction, arriving, leaving }: MitredCorner, storey: string, range: FormRange, pressureOf: PressureOf): number {
  const psf = Math.max(...[arriving, leaving].map(({ wall, course }) => pressureOf(storey, coreOfCourse(wall, course.n)).psf));
  return twoCoreThrust(psf, sectionFt2(arriving, range), sectionFt2(leaving, range), Math.abs(junction.turn));
}

/** Section of the concrete of a course where it reaches the mitre: its core, and the ledges and the taper that run to it [ft²]. */
function sectionFt2({ wall, course, end }: MitredEnd, range: FormRange): number {
  const reaches = (spans: readonly { readonly from: number; readonly to: number }[]): boolean =>
    spans.some(({ from, to }) => (end === 'start' ? from <= course.from : to >= course.to));
  const ledges = wall.ledges.filter((ledge) => ledge.course === course.n && reaches(ledge.spans)).length;
  const { taper } = wall;
  const tapered = taper !== null && taper.course === course.n && reaches(taper.spans);
  const extraMm2 = ledges * (range.ledge?.extraSectionMm2 ?? 0) + (tapered ? (range.taperTop?.faces[taper.faces].extraSectionMm2 ?? 0) : 0);
  return toFeet(coreOfCourse(wall, course.n).width) * toFeet(course.height) + extraMm2 / MM2_PER_FT2;
}
