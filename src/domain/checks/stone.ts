import { meant } from '../quantity/rounding.js';
import { coresOfWall } from '../takeoff/index.js';
import { finding } from '../evidence/finding.js';
import { largestStone } from '../engineering/irc-2018/largest-stone.js';
import { millimetresToInches } from '../quantity/us-customary.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { toMm } from '../quantity/length.js';
import { workedStep } from './worked-step.js';
import type { CheckReport } from './check-report.js';
import type { Core } from '../range/range.js';
import type { JobCheck } from './job-check.js';

const SOURCE = 'irc-2018 §R608.5.1.3, from memory';
/** A stone this close to the limit is the limit: what is left of a conversion. */
const SAME = 1 + 1e-9;
const NOTES = [
  'At most a fifth of the clear width between the panels (IRC R608.5.1.3 and ACI 318, from memory); between bars three quarters of the clear distance, which is not counted here.',
] as const;
const GRID_NOTE = 'The narrowest part of a grid core is narrower than its width, and its measure is not in the range: the limit is less than this.';

/**
 * Largest stone that each core of a storey lets through, and whether the mix keeps to it.
 *
 * The limit is always answered; `stone-large`, a note, where the stated stone is over it.
 */
export const stoneOfJob: JobCheck = ({ schedule: { pour }, takeoff }) =>
  takeoff.laid.storeys.flatMap(({ id, walls }) => {
    const cores = new Map(walls.flatMap(coresOfWall).map((core) => [core.code, core])).values();
    return [...cores].map((core) => reportOf(id, core, pour?.stoneMm));
  });

function reportOf(storey: string, core: Core, stoneMm: number | undefined): CheckReport {
  const clearMm = toMm(core.width);
  const limitMm = meant(largestStone(clearMm));
  const grid = core.family !== 'flat';
  const large = stoneMm !== undefined && stoneMm > limitMm * SAME;
  const verdict: Readonly<Record<string, number | string>> = stoneMm === undefined ? { notStated: 'stone' } : { stoneMm, stoneIn: millimetresToInches(stoneMm), stone: large ? 'too large' : grid ? 'not known' : 'passes' };
  const numbers = { core: core.code, stoneMm: stoneMm ?? 0, limitMm };
  return {
    check: 'stone', storey, core: core.code, places: [], source: SOURCE, defaults: [],
    results: { clearMm, [grid ? 'underMm' : 'limitMm']: limitMm, [grid ? 'underIn' : 'limitIn']: millimetresToInches(limitMm), ...verdict },
    trace: [workedStep('largest stone', 's = b / 5', `${n(clearMm)} / 5`, limitMm, 'mm', SOURCE)],
    notes: grid ? [...NOTES, GRID_NOTE] : NOTES,
    findings: large ? [finding('stone-large', { storey, numbers, source: SOURCE })] : [],
  };
}
