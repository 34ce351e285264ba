import { checkFormPressure } from './form-pressure.js';
import { checkLintels } from './job-lintels.js';
import { concreteTemperatureOfJob } from './concrete-temperature.js';
import { evaporationOfJob } from './evaporation.js';
import { finding } from '../evidence/finding.js';
import { bendThrustOfJob } from './bend-thrust.js';
import { coreStepOfJob } from './core-step.js';
import { endClosureOfJob } from './end-closure.js';
import { headOfJob, jambOfJob, sillOfJob } from './opening-restraint.js';
import { hoopTensionOfJob } from './hoop-tension.js';
import { pourPlanOfJob } from './pour-plan.js';
import { slumpOfJob } from './slump.js';
import { stoneOfJob } from './stone.js';
import { teeForceOfJob } from './tee-force.js';
import { upliftOfJob } from './uplift.js';
import { wallBars } from './wall-bars.js';
import type { CheckContext, JobCheck } from './job-check.js';
import type { CheckReport } from './check-report.js';

export type { CheckContext, JobCheck } from './job-check.js';

export const formPressure: JobCheck = ({ schedule, range, takeoff }) => checkFormPressure(takeoff.laid.storeys, schedule.pour, range);

/** What concrete pushes out of the forms, and what holds it. */
const RESTRAINT: readonly JobCheck[] = [bendThrustOfJob, coreStepOfJob, hoopTensionOfJob, teeForceOfJob, upliftOfJob, endClosureOfJob, jambOfJob, headOfJob, sillOfJob];

/** How the concrete is placed. */
const PLACING: readonly JobCheck[] = [pourPlanOfJob, slumpOfJob, stoneOfJob, evaporationOfJob, concreteTemperatureOfJob];

/** In the order in which they are answered. */
const CHECKS: readonly JobCheck[] = [formPressure, wallBars, checkLintels, ...RESTRAINT, ...PLACING];

/** Said of the whole job, however many reports come to say it. */
const ONCE: ReadonlySet<string> = new Set(['pour-not-stated', 'site-not-stated']);

/**
 * Every check of a laid job.
 *
 * What concerns the whole job and not one storey (`pour-not-stated`, `site-not-stated`) is said once, on the first report.
 *
 * @returns reports check by check, each by storey, then core
 */
export function checkJob(job: CheckContext, checks: readonly JobCheck[] = CHECKS): readonly CheckReport[] {
  const reports = checks.flatMap((check) => check(job));
  const [pour] = reports.flatMap(({ findings }) => findings.filter(({ code }) => code === 'pour-not-stated'));
  const site = job.schedule.site === null ? [finding('site-not-stated', { source: 'common practice' })] : [];
  return reports.map((report, index) => {
    const own = report.findings.filter(({ code }) => !ONCE.has(code));
    return { ...report, findings: index > 0 ? own : [...own, ...(pour ? [pour] : []), ...site] };
  });
}
