import { DEFAULT_CODE } from '../schedule/schedule.js';
import { finding, type Finding } from '../evidence/finding.js';
import { lineLoads, loadStated } from './lintel-line-loads.js';
import { lintelByTable } from './lintel-by-table.js';
import { lintelOver, lintelResults } from './lintel-place.js';
import { concreteOver } from './lintel-over-opening.js';
import { toMm } from '../quantity/length.js';
import { trimBars } from './trim-bars.js';
import { WORKED_IN_US_NOTE } from './strength-input.js';
import type { CheckContext, JobCheck } from './job-check.js';
import type { CheckPlace, CheckReport } from './check-report.js';
import type { LaidOpening, LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { TraceStep } from '../evidence/trace.js';

const SOURCE = 'aci-318-14 §9';
const DEEP_NOTE =
  'A clear span of at most four depths is a deep beam (ACI 318-14 §9.9.1.1, from memory): part of its load goes to the jambs in struts, so the bars of an ordinary section are on the safe side; its spread bars (§9.9.3.1) are not worked.';
const NOTES = [
  'Simple span of the clear opening under the full height of the wall above; the shear is that at the jamb: both on the safe side.',
  'The lintel is as deep as keeps its span over four depths, 8 in at least and 24 in at most; concrete above that is load.',
  'Stirrups run over the whole clear span. A trim bar is at least the size said; beside a jamb it is no smaller than the vertical bars of the wall.',
  WORKED_IN_US_NOTE,
] as const;

interface Lintel {
  readonly place: CheckPlace;
  readonly core: string;
  readonly share: number;
  readonly trace: readonly TraceStep[];
  readonly findings: readonly Finding[];
}

/**
 * Lintels over every opening of a job: one report for each storey and core with a place for each opening, `atMm` its near jamb.
 *
 * By ACI 318 with bars and stirrups; where the site's code is `obc-2024` and its tables have a row, by the table with ACI as the cross-check
 * beside it. Holds an opening that no bars or stirrups carry (`opening-too-wide`) and notes once for a storey that its floors and roof are not stated.
 */
export const checkLintels: JobCheck = (job) => job.takeoff.laid.storeys.flatMap((storey) => {
  const lintels = storey.walls.flatMap((wall) => wall.openings.map((opening) => lintel(job, wall, opening)));
  const cores = [...new Set(lintels.map(({ core }) => core))];
  return cores.map((core, index) => report(job, storey, core, lintels.filter((each) => each.core === core), index === 0));
});

function report({ schedule }: CheckContext, storey: LaidStorey, core: string, lintels: readonly Lintel[], first: boolean): CheckReport {
  const worst = lintels.toSorted((a, b) => b.share - a.share)[0];
  const read = schedule.storeys.find(({ id }) => id === storey.id);
  const unstated = first && read !== undefined && !loadStated(read) ? [finding('lintel-load-not-stated', { storey: storey.id, source: 'common practice' })] : [];
  return {
    check: 'lintel', storey: storey.id, core, results: { openings: lintels.length }, places: lintels.map(({ place }) => place),
    trace: worst?.trace ?? [], source: SOURCE, notes: lintels.some(({ place }) => place.results['deepBeam'] === 'yes') ? [DEEP_NOTE, ...NOTES] : NOTES,
    defaults: ['fc: 3000 psi', 'fy: 60 ksi (Grade 60)', 'cover: 1 1/2 in to stirrups of #3 with two legs', ...(schedule.site?.code === undefined ? [`code: ${DEFAULT_CODE}`] : [])],
    findings: [...unstated, ...lintels.flatMap(({ findings }) => findings)],
  };
}

function lintel({ schedule, takeoff: { laid } }: CheckContext, wall: LaidWall, opening: LaidOpening): Lintel {
  const over = concreteOver(wall, opening);
  const [clearMm, atMm, core] = [toMm(over.clear), toMm(opening.from), over.narrow.code];
  const answered = { opening: opening.mark, clearMm, aboveMm: toMm(over.least) };
  const place = (results: CheckPlace['results']): CheckPlace => ({ wall: wall.mark, course: null, atMm, results: { ...answered, ...results, ...trimBars(opening, over, schedule.site?.code ?? DEFAULT_CODE) } });
  if (over.least <= 0) return { place: place({ lintel: 'no concrete above' }), core, share: 0, trace: [], findings: [] };
  const at = { storey: wall.storey, wall: wall.mark, atMm, source: SOURCE };
  if (over.narrow.family !== 'flat') {
    const numbers = { method: 'ACI 318-14', core, family: over.narrow.family, limit: 'flat' };
    return { place: place({ governs: 'outside-method' }), core, share: 0, trace: [], findings: [finding('outside-method', { ...at, numbers })] };
  }
  const { load, stated, storeysAbove } = lineLoads(schedule, laid, wall, opening, over);
  const { section, design } = lintelOver(over, load.lbPerFt);
  const worked = { loads: stated, factoredLbPerFt: load.lbPerFt, ...lintelResults(section, design, clearMm) };
  const table = schedule.site?.code === 'obc-2024'
    ? lintelByTable({ clear: over.clear, core: over.narrow.width, least: over.least, storeysAbove, snowKpa: schedule.site.snowKpa, momentInLb: design.momentInLb })
    : null;
  if (table?.found) return { place: place(besideTable(table.results, worked)), core, share: design.bars === null ? 1 : design.momentInLb / design.bars.strengthInLb, trace: [...load.trace, ...design.trace], findings: [] };
  const numbers = { widthMm: clearMm, core, depthMm: section.depthIn * 25.4 };
  return {
    place: place({ ...worked, ...(table !== null && { table: `none: ${table.why}` }) }),
    core,
    share: design.bars === null ? Number.POSITIVE_INFINITY : design.momentInLb / design.bars.strengthInLb,
    trace: [...load.trace, ...design.trace],
    findings: design.bars === null ? [finding('opening-too-wide', { ...at, numbers })] : [],
  };
}

/** The table's answer, and under names of its own what ACI 318 answers: at another depth, with other bars. */
function besideTable(table: CheckPlace['results'], worked: CheckPlace['results']): CheckPlace['results'] {
  const own = ['bars', 'stirrups', 'stirrupSpacingMm', 'depthMm', 'governs', 'momentShare', 'shearOfConcreteShare', 'deepBeam'];
  const { by: _, stirrupsOverMm: __, ...aci } = worked;
  const named = Object.entries(aci).map(([key, value]) => [own.includes(key) ? `crossCheck${key[0]?.toUpperCase()}${key.slice(1)}` : key, value]);
  return { ...Object.fromEntries(named), ...table };
}
