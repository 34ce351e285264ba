import { finding } from '../evidence/finding.js';
import { inches, toMm } from '../quantity/length.js';
import { millimetresToInches } from '../quantity/us-customary.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { SLUMP_LIMIT_IN } from '../engineering/aci-347-04/limits.js';
import { STAY_IN_PLACE_SLUMP_IN } from '../engineering/irc-2018/placing-limits.js';
import type { CheckReport } from './check-report.js';
import type { JobCheck } from './job-check.js';

const CODE = 'irc-2018 §R608.5.1.4';
const mmOf = (inch: number): number => toMm(inches(inch));
const both = (inch: number): string => `${n(inch)} in (${Math.round(mmOf(inch))} mm)`;
const NOTES = [
  `The code asks for a slump over ${both(STAY_IN_PLACE_SLUMP_IN)} where forms stay in place (IRC 2018 R608.5.1.4).`,
  `The pressure equations hold up to ${both(SLUMP_LIMIT_IN)} (ACI 347-04); over it the forms carry the full liquid head.`,
  `Both are kept over ${n(STAY_IN_PLACE_SLUMP_IN)} and up to ${n(SLUMP_LIMIT_IN)} in only.`,
] as const;

/**
 * The slump of a job's pour against the code's rule for stay-in-place forms and against the limit of the pressure equations, storey by storey.
 *
 * At or below the code's slump: `slump-stiff`, a note. Over the equations' limit `form-pressure` counts the full liquid head. Nothing where
 * no slump is stated.
 */
export const slumpOfJob: JobCheck = ({ schedule: { pour }, takeoff }) => {
  if (pour?.slumpMm === undefined) return [];
  const [slumpMm, slumpIn] = [pour.slumpMm, millimetresToInches(pour.slumpMm)];
  return takeoff.laid.storeys.filter(({ walls }) => walls.length > 0).map(({ id }) => reportOf(id, slumpMm, slumpIn));
};

function reportOf(storey: string, slumpMm: number, slumpIn: number): CheckReport {
  const [stiff, wet] = [slumpIn <= STAY_IN_PLACE_SLUMP_IN, slumpIn > SLUMP_LIMIT_IN];
  return {
    check: 'slump', storey, core: null, places: [], trace: [], source: `${CODE}; aci-347-04 §2.2.2`, defaults: [],
    results: {
      slumpMm, slumpIn, overMm: mmOf(STAY_IN_PLACE_SLUMP_IN), overIn: STAY_IN_PLACE_SLUMP_IN, atMostMm: mmOf(SLUMP_LIMIT_IN), atMostIn: SLUMP_LIMIT_IN,
      code: stiff ? 'too stiff' : 'met', pressureEquations: wet ? 'full liquid head' : 'hold',
    },
    notes: [...NOTES, ...(wet ? ['This slump is over the limit of the equations: see form-pressure.'] : [])],
    findings: stiff ? [finding('slump-stiff', { storey, numbers: { slumpIn, overIn: STAY_IN_PLACE_SLUMP_IN }, source: CODE })] : [],
  };
}
