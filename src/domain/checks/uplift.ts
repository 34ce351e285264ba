import { coreOfCourse } from '../takeoff/course-core.js';
import { factors, restraintReports, type RestraintPlace } from './restraint-report.js';
import { feet, toMm } from '../quantity/length.js';
import { isSteep } from '../reinforcement/rules/gable-edge.rule.js';
import { upliftPerLength } from '../engineering/statics/uplift-per-length.js';
import type { CheckContext, JobCheck } from './job-check.js';
import type { LaidStorey, LaidWall } from '../takeoff/laid.js';

const MM2_PER_FT2 = toMm(feet(1)) ** 2;
const NOTES = [
  'With the full pressure of the pour, as the rules count it: on the safe side at the top of the concrete. Weight of the forms is not taken off.',
  'The strength of tape, ties and screws on foam is not known here.',
];

/** Uplift of every taper top and every cap of a steep gable slope: pressure on what leans over the concrete, in plan. Source: statics. */
export const upliftOfJob: JobCheck = (job) =>
  restraintReports(
    { check: 'uplift', name: 'uplift', equation: 'U = p · area in plan', notes: NOTES },
    job.takeoff.laid.storeys.flatMap((storey) => storey.walls.flatMap((wall) => [...taperOf(storey, wall, job), ...capsOf(storey, wall, job)])),
  );

function taperOf(storey: LaidStorey, wall: LaidWall, job: CheckContext): readonly RestraintPlace[] {
  const { taper } = wall;
  if (!taper || taper.upliftMm2 === 0) return [];
  return [lifted(storey, wall, taper.course, taper.spans[0]?.from ?? null, taper.upliftMm2, { of: 'taper top' }, 'tape strips and ties of the top course', job)];
}

function capsOf(storey: LaidStorey, wall: LaidWall, job: CheckContext): readonly RestraintPlace[] {
  const steep = (wall.gable?.slopes ?? []).filter((slope) => isSteep(slope, job));
  return steep.map(({ from, capMm2, degrees }) =>
    lifted(storey, wall, wall.stack.courses, from, capMm2 * Math.cos((degrees * Math.PI) / 180), { of: 'gable cap' }, 'cap boards fixed to both panels', job));
}

function lifted(storey: LaidStorey, wall: LaidWall, n: number, at: number | null, planMm2: number, more: Readonly<Record<string, string>>, resistedBy: string, { pressureOf }: CheckContext): RestraintPlace {
  const core = coreOfCourse(wall, n);
  const { psf } = pressureOf(storey.id, core);
  const ft2 = planMm2 / MM2_PER_FT2;
  return {
    storey: storey.id, core: core.code, wall: wall.mark, course: more['of'] === 'taper top' ? n : null, at, forceLb: upliftPerLength(psf, ft2), substituted: factors(psf, ft2),
    resistedBy, capacityLb: null, more,
  };
}
