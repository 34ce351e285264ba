import { toMm, type Nm } from '../quantity/length.js';
import type { EndName } from '../schedule/line-normalisation.js';
import type { AxisWall } from './axes.js';
import { ledgesMeet, type FormUnit, type PlannedLedge, type PlannedTaper } from './course-units.js';
import type { LaidLedge, LaidTaper } from './laid.js';
import { ledgeEnd } from './ledges.js';
import { meets } from './openings.js';
import type { CourseRun, RunContext } from './runs.js';
import type { LineResult } from './storey-layout.js';
import { neighbourOf } from './storey-plan.js';

interface Span {
  readonly from: Nm;
  readonly to: Nm;
}

/** A wall on its line. */
interface Place {
  readonly wall: AxisWall;
  readonly from: Nm;
  readonly first: boolean;
  readonly last: boolean;
  /** Line station to the user's station. */
  readonly station: (at: Nm) => Nm;
}

/** Ledges and taper of one wall in the user's own direction, and their concrete beyond the wall's core. */
export interface LaidUnits {
  readonly ledges: readonly LaidLedge[];
  readonly taper: LaidTaper | null;
  readonly concreteNm3: bigint;
}

const runOf = (result: LineResult, course: number): CourseRun => result.courses.find(({ run }) => run.n === course)!.run;
const within = ({ from, to }: Span, low: Nm, high: Nm): Span[] => (Math.min(to, high) > Math.max(from, low) ? [{ from: Math.max(from, low), to: Math.min(to, high) }] : []);

/** Runs of forms of a unit that touch are one. */
function spansOf(run: CourseRun, is: (unit: FormUnit) => boolean, low: Nm, high: Nm): Span[] {
  const spans: Span[] = [];
  for (const segment of run.segments.filter(({ unit }) => is(unit)).flatMap((part) => within(part, low, high))) {
    const last = spans.at(-1);
    if (last?.to === segment.from) spans[spans.length - 1] = { from: last.from, to: segment.to };
    else spans.push({ from: segment.from, to: segment.to });
  }
  return spans;
}

/** What is left of a stretch beside the openings that meet its course. */
function besideOpenings(stretch: Span, run: CourseRun, result: LineResult): Span[] {
  const holes = result.openings.filter((opening) => meets(opening, run.bottom, run.height));
  return holes.reduce<Span[]>((left, hole) => left.flatMap((span) => [...within(span, -Infinity, hole.from), ...within(span, hole.to, Infinity)]), [stretch]);
}

const lengthOf = (spans: readonly Span[]): Nm => spans.reduce((sum, { from, to }) => sum + to - from, 0);
const userSpans = (spans: readonly Span[], { station }: Place): Span[] =>
  spans.map(({ from, to }) => [station(from), station(to)] as const).map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) })).sort((a, b) => a.from - b.from);

/** A section times a length: sections are given in square millimetres and known to a square micrometre [nm³]. */
const sweptNm3 = (sectionMm2: number, length: Nm): bigint => BigInt(Math.round(sectionMm2 * 1e6)) * 1_000_000n * BigInt(length);
const NM3_PER_MM3 = 1e18;

const standsBeside = (wall: AxisWall, end: EndName, elevation: Nm, context: RunContext): boolean => {
  const neighbour = neighbourOf(context.plan.joints[wall.index]![end]);
  return neighbour !== null && context.standsAt(neighbour, elevation);
};

function laidLedge(ledge: PlannedLedge, place: Place, result: LineResult, context: RunContext): { laid: LaidLedge; nm3: bigint } {
  const { plan, units, range } = context;
  const { wall } = place;
  const run = runOf(result, ledge.course);
  const length = Math.max(0, wall.length);
  const low = ledge.open.start ? (place.first ? -Infinity : place.from) : place.from + ledge.from;
  const high = ledge.open.end ? (place.last ? Infinity : place.from + length) : place.from + ledge.to;
  const ends = (['start', 'end'] as const).map((end) => ledgeEnd(ledge, end, standsBeside(wall, end, ledge.elevation, context), plan, units, range)) as [Nm, Nm];
  const swept = {
    from: place.from + (ledge.open.start ? ends[0] : Math.max(ledge.from, ends[0])),
    to: place.from + (ledge.open.end ? ends[1] : Math.min(ledge.to, ends[1])),
  };
  const nm3 = sweptNm3(range.ledge!.extraSectionMm2, lengthOf(besideOpenings(swept, run, result)));
  const mitred = (end: EndName): boolean => ledgesMeet(wall.index, end, ledge.elevation, ledge.face, plan, units) && standsBeside(wall, end, ledge.elevation, context);
  const [mitreStart, mitreEnd] = wall.reversed ? [mitred('end'), mitred('start')] : [mitred('start'), mitred('end')];
  const laid: LaidLedge = {
    face: ledge.face,
    asked: ledge.asked,
    bearing: ledge.bearing,
    course: ledge.course,
    projection: range.ledge!.projection,
    spans: userSpans(spansOf(run, (unit) => unit === 'ledge', low, high), place),
    mitreStart,
    mitreEnd,
    concreteMm3: Number(nm3) / NM3_PER_MM3,
  };
  return { laid, nm3 };
}

/** Where the taper's own concrete ends: at the node of a mitre, at the leg of a corner unit, at the closure of a free end. */
function taperEnd(place: Place, end: EndName, run: CourseRun, elevation: Nm, context: RunContext): Nm {
  const { wall } = place;
  const atLine = end === 'start' ? place.first : place.last;
  const outwards = end === 'start' ? -1 : 1;
  const node = place.from + (end === 'start' ? 0 : Math.max(0, wall.length));
  const joint = context.plan.joints[wall.index]![end];
  if (!atLine || joint.kind === 'unsettled') return node;
  if (joint.kind === 'free' || !standsBeside(wall, end, elevation, context)) return node + outwards * (wall.back[end] - context.range.closure.thickness);
  if (joint.kind === 'tee') return node - outwards * joint.tee.formTrim;
  const leg = end === 'start' ? run.startLeg?.to : run.endLeg?.from;
  return leg ?? node;
}

function laidTaper(taper: PlannedTaper, place: Place, result: LineResult, context: RunContext): { laid: LaidTaper; nm3: bigint } {
  const run = runOf(result, taper.course);
  const { seatGain, extraSectionMm2 } = context.range.taperTop!.faces[taper.faces];
  const length = Math.max(0, place.wall.length);
  const [from, to] = (['start', 'end'] as const).map((end) => taperEnd(place, end, run, taper.elevation, context)) as [Nm, Nm];
  const swept = lengthOf(besideOpenings({ from, to }, run, result).filter((span) => span.to > span.from));
  const nm3 = sweptNm3(extraSectionMm2, swept);
  const spans = spansOf(run, (unit) => unit === 'taper-one' || unit === 'taper-both', place.first ? -Infinity : place.from, place.last ? Infinity : place.from + length);
  const laid: LaidTaper = {
    faces: taper.faces,
    course: taper.course,
    seatGain,
    spans: userSpans(spans, place),
    concreteMm3: Number(nm3) / NM3_PER_MM3,
    upliftMm2: toMm(seatGain) * toMm(swept),
  };
  return { laid, nm3 };
}

/** Ledges and taper of one wall as later stages read them. */
export function laidUnits(place: Place, result: LineResult, context: RunContext): LaidUnits {
  const { ledges, tapers } = context.units;
  const laid = (ledges.get(place.wall.index) ?? []).map((ledge) => laidLedge(ledge, place, result, context));
  const planned = tapers.get(place.wall.index);
  const taper = planned ? laidTaper(planned, place, result, context) : null;
  return {
    ledges: laid.map((each) => each.laid),
    taper: taper?.laid ?? null,
    concreteNm3: laid.reduce((sum, { nm3 }) => sum + nm3, taper?.nm3 ?? 0n),
  };
}
