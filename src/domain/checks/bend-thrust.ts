import { bothLineForces, factors, restraintReports, type RestraintPlace } from './restraint-report.js';
import { cornersOf, partsOf, type Corner } from '../reinforcement/rules/corner-brace.rule.js';
import { coreOfCourse } from '../takeoff/course-core.js';
import { cornerStation } from '../reinforcement/stations.js';
import { toFeet } from '../quantity/length.js';
import { wallFinder } from '../reinforcement/laid-places.js';
import type { CheckContext, JobCheck } from './job-check.js';
import type { LaidWall } from '../takeoff/laid.js';

const NOTES = [
  'The force is that of the whole height of the corner, with the same pressure from top to bottom: on the safe side near the top of the concrete.',
  'Verticals and braces are by others; no capacity of theirs is known here.',
];

/** Thrust on every corner, over its whole height, per unit height and in its worst course. Source: statics, as on a pipe bend. */
export const bendThrustOfJob: JobCheck = (job) =>
  restraintReports(
    { check: 'bend-thrust', name: 'thrust on the corner', equation: 'F = Σ p · √( t1² + t2² − 2 · t1 · t2 · cos θ ) · h', notes: NOTES },
    job.takeoff.laid.storeys.flatMap(cornersOf).map((corner) => placeOf(corner, job)),
  );

function placeOf({ storey, rows }: Corner, { range, pressureOf }: CheckContext): RestraintPlace {
  const [first] = rows;
  if (!first) throw new Error(`storey ${storey.id} has a corner without courses`);
  const [arriving, leaving] = first.walls.map(wallFinder(storey)) as [LaidWall, LaidWall];
  const parts = rows.flatMap((row) => partsOf(storey, row, arriving, leaving, pressureOf));
  const forces = parts.map(({ thrustLbPerFt, height }) => thrustLbPerFt * toFeet(height));
  const worst = Math.max(...parts.map(({ thrustLbPerFt }) => thrustLbPerFt));
  const hinged = rows.some(({ unit }) => unit === 'corner-hinged');
  const verticals = `${range.parameters.cornerBraceVerticals} full-height verticals on the convex side, braced`;
  return {
    storey: storey.id, core: coreOfCourse(arriving, first.courses[0] ?? 1).code, wall: arriving.mark, course: null, at: cornerStation(arriving, first.courses[0] ?? 1),
    forceLb: forces.reduce((sum, force) => sum + force, 0),
    substituted: parts.map(({ thrustLbPerFt, height }) => factors(thrustLbPerFt, toFeet(height))).join(' + '),
    resistedBy: hinged ? `${verticals}; ${range.parameters.hingedCornerStrips} strips of tape over the hinge a course` : verticals, capacityLb: null,
    more: { with: leaving.mark, turnDeg: Number(first.turn.toFixed(3)), courses: parts.length, ...bothLineForces('perHeight', worst) },
  };
}
