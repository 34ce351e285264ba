import { bothLineForces, factors, restraintReports, type RestraintPlace } from './restraint-report.js';
import { coreOfCourse } from '../takeoff/course-core.js';
import { hoopTension } from '../engineering/statics/hoop-tension.js';
import { placesOfStorey, type LaidPlace } from '../reinforcement/laid-places.js';
import { toFeet } from '../quantity/length.js';
import type { CheckContext, JobCheck } from './job-check.js';

const NOTES = [
  'The webs hold the faces together, so the band round the convex face holds p · core; a face without webs would carry p · radius.',
  'The strength of the band and of its fixings is not known here.',
];

/** Tension of the band round every curve, course by course. Source: statics. */
export const hoopTensionOfJob: JobCheck = (job) =>
  restraintReports(
    { check: 'hoop-tension', name: 'tension of the band', equation: 'F = p · t · h', notes: NOTES },
    job.takeoff.laid.storeys.flatMap((storey) => [...placesOfStorey(storey)].filter(({ wall }) => wall.arc !== null).map((at) => placeOf(at, job))),
  );

function placeOf({ storey, wall, course }: LaidPlace, { range, pressureOf }: CheckContext): RestraintPlace {
  const core = coreOfCourse(wall, course.n);
  const { psf } = pressureOf(storey.id, core);
  const perHeight = hoopTension(psf, toFeet(core.width));
  return {
    storey: storey.id, core: core.code, wall: wall.mark, course: course.n, at: null, forceLb: perHeight * toFeet(course.height),
    substituted: factors(psf, toFeet(core.width), toFeet(course.height)), capacityLb: null,
    resistedBy: wall.arc?.chord === null ? 'no chord fits this curve: no form, no band' : `${range.parameters.radiusBandBy} round the convex face`,
    more: bothLineForces('perHeight', perHeight),
  };
}
