import { checkFormPressure } from './form-pressure.js';
import { finding } from '../evidence/finding.js';
import type { CheckReport } from './check-report.js';
import type { FormRange } from '../range/range.js';
import type { Schedule } from '../schedule/schedule.js';
import type { Takeoff } from '../takeoff/takeoff.js';

/**
 * Every check of a laid job.
 *
 * What concerns the whole job and not one storey (`pour-not-stated`, `site-not-stated`) is said once, on the first report.
 *
 * @param schedule the canonical schedule: its pour and site
 * @param range    the form range it was laid with
 * @param takeoff  the laid job
 * @returns        reports by storey, then core
 */
export function checkJob(schedule: Schedule, range: FormRange, takeoff: Takeoff): readonly CheckReport[] {
  const reports = checkFormPressure(takeoff.laid.storeys, schedule.pour, range);
  return reports.map((report, index) => {
    const own = report.findings.filter((found) => found.code !== 'pour-not-stated');
    if (index > 0) return { ...report, findings: own };
    const pour = report.findings.filter((found) => found.code === 'pour-not-stated');
    const site = schedule.site === null ? [finding('site-not-stated', { source: 'common practice' })] : [];
    return { ...report, findings: [...own, ...pour, ...site] };
  });
}
