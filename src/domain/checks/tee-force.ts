import { CoherentUnits } from './both-units.js';
import { coreOfCourse } from '../takeoff/course-core.js';
import { courseOf, wallFinder } from '../reinforcement/laid-places.js';
import { factors, bothForces, restraintReports, type RestraintPlace } from './restraint-report.js';
import { middleOf } from '../reinforcement/stations.js';
import { pinBarOf, pinBarStep } from './pin-bar-input.js';
import { teeForce } from '../engineering/statics/tee-force.js';
import { toFeet } from '../quantity/length.js';
import { WIRE_GAUGES, wireBreakingLoad } from '../engineering/en5151-forms/wire-breaking-load.js';
import { ASSUMED_FACTOR } from './tie-wire-input.js';
import { finding, type Finding } from '../evidence/finding.js';
import type { CheckContext, JobCheck } from './job-check.js';
import type { CheckPlace, CheckReport } from './check-report.js';
import type { FormRange } from '../range/range.js';
import type { Junction, LaidStorey } from '../takeoff/laid.js';

const STRANDS = 2;
const UNITS = new CoherentUnits('us-customary');
const NOTES = ['The far panel has no webs over the cut-out. The wire holds the bar at its middle; how the web of the branch holds the wire is not known.'];
const DEFAULTS = [`wire tie: ${STRANDS} strands, straight, safety factor ${ASSUMED_FACTOR} on the breaking load, from memory`, 'pin bar: yield 60 ksi'];

/**
 * Force on the far panel of every tee in every course, against the wire and the bar of the rule `tee-cut-out`; `tee-tie-short`, a note, where the
 * wire does not carry it by itself. Source: statics.
 */
export const teeForceOfJob: JobCheck = (job) =>
  forcesAtTees(job).map((report) => ({ ...report, findings: shortTies(report) }));

const forcesAtTees: JobCheck = (job) =>
  restraintReports(
    { check: 'tee', name: 'force on the far panel', equation: 'F = p · w · h', source: 'statics; en5151-forms Table 5', notes: NOTES, defaults: DEFAULTS },
    job.takeoff.laid.storeys.flatMap((storey) => storey.junctions.flatMap((junction) => placesOf(storey, junction, job))),
  );

/** A junction's courses are numbered in the first of its walls, as in the rule. */
function placesOf(storey: LaidStorey, junction: Junction, { range, pressureOf }: CheckContext): readonly RestraintPlace[] {
  const { tee } = junction;
  if (!tee || junction.courses.length === 0) return [];
  const through = wallFinder(storey)(junction.walls[0] as string);
  const width = tee.cutTo - tee.cutFrom;
  const bar = pinBarOf(range.parameters.teePinBar, range.webSpacing);
  const alone = bar ? pinBarStep(UNITS, bar, width).value : null;
  const capacityLb = wireTieLb(range);
  return junction.courses.map((n): RestraintPlace => {
    const core = coreOfCourse(through, n);
    const { psf } = pressureOf(storey.id, core);
    const measured = [psf, toFeet(width), toFeet(courseOf(through, n).height)] as const;
    const forceLb = teeForce(...measured);
    const short = capacityLb !== null && capacityLb < forceLb ? ': it alone does not carry the force' : '';
    return {
      storey: storey.id, core: core.code, wall: through.mark, course: n, at: middleOf({ from: tee.cutFrom, to: tee.cutTo }), forceLb, substituted: factors(...measured), capacityLb,
      resistedBy: `${range.parameters.teePinBar} pin bar, one wire tie${capacityLb === null ? ', strength not known' : short}`,
      more: { branch: tee.branch, ...(alone === null ? {} : bothForces('barAlone', alone)) },
    };
  });
}

function shortTies({ storey, core, places }: CheckReport): readonly Finding[] {
  const short = places.filter(({ results }) => Number(results['share'] ?? 0) > 1);
  const worst = short.reduce<CheckPlace | null>((most, place) => (most === null || Number(place.results['share']) > Number(most.results['share']) ? place : most), null);
  if (worst === null) return [];
  const { forceLb = 0, capacityLb = 0 } = worst.results;
  return [finding('tee-tie-short', { storey, walls: [...new Set(short.map(({ wall }) => wall))], numbers: { core: core ?? '', forceLb, capacityLb }, source: 'statics; en5151-forms Table 5' })];
}

/** What one wire tie of the range carries [lb]; null where its gauge has no strength. */
function wireTieLb({ materials }: FormRange): number | null {
  const gauge = /^(\d+) ga$/.exec(materials.find(({ kind }) => kind === 'wire-tie')?.size ?? '')?.[1];
  return gauge !== undefined && WIRE_GAUGES.includes(gauge) ? wireBreakingLoad(gauge, STRANDS) / ASSUMED_FACTOR : null;
}
