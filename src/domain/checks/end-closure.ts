import { closuresAt, tapeHoldsLb } from '../reinforcement/rules/end-closure.rule.js';
import { factors, restraintReports, type RestraintPlace } from './restraint-report.js';
import { laidPlaces } from '../reinforcement/laid-places.js';
import { toFeet } from '../quantity/length.js';
import type { CheckContext, JobCheck } from './job-check.js';

const NOTES = ['How well the tape sticks to the foam is not known; where its strength is not stated, or less than the force, the rule backs the closure with a board.'];

/** Force on every end closure in every course, against the tape's two legs (decision 27). Source: statics. */
export const endClosureOfJob: JobCheck = (job) =>
  restraintReports({ check: 'end-closure', name: 'force on the closure', equation: 'F = p · t · h', notes: NOTES }, placesOf(job));

function placesOf({ takeoff, range, pressureOf }: CheckContext): readonly RestraintPlace[] {
  const capacityLb = tapeHoldsLb(range.materials.find(({ kind }) => kind === 'tape'));
  return [...laidPlaces(takeoff.laid)].flatMap((laid) =>
    closuresAt(laid, { range, pressureOf }).flatMap(({ at: { storey, wall, course }, core, closures, forceLb, board }) =>
      closures.map((at): RestraintPlace => ({
        storey: storey.id, core: core.code, wall: wall.mark, course: course.n, at, forceLb, capacityLb,
        substituted: factors(pressureOf(storey.id, core).psf, toFeet(core.width), toFeet(course.height)),
        resistedBy: board ? 'tape and board' : 'tape',
      })),
    ),
  );
}
