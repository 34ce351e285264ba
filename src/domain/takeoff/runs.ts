import { radians } from '../geometry/vector.js';
import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { cornerUnitFor, legOnAxis } from './corners.js';
import { mitreTip, type CourseUnits } from './course-units.js';
import { withUnits, type Segment } from './segments.js';
import { unitStretches } from './unit-stretches.js';
import type { EndName } from '../schedule/line-normalisation.js';
import type { Line } from './lines.js';
import { takesWhole, type LineOpening } from './openings.js';
import type { Gable } from './gables.js';
import type { Layer } from './stack.js';
import { facingEnd, neighbourOf, type StoreyPlan } from './storey-plan.js';
import type { Tee } from './tees.js';

export type { Segment } from './segments.js';

export interface Leg {
  readonly from: Nm;
  readonly to: Nm;
  readonly long: boolean;
}

export interface Closure {
  readonly at: Nm;
  readonly height: Nm;
}

/** One course of a line before its pieces are chosen. */
export interface CourseRun {
  readonly n: number;
  readonly bottom: Nm;
  readonly height: Nm;
  readonly ripped: boolean;
  readonly from: Nm;
  readonly to: Nm;
  readonly startLeg: Leg | null;
  readonly endLeg: Leg | null;
  /** No corner unit stands here: the forms run past the node to the mitre. */
  readonly mitreStart: boolean;
  readonly mitreEnd: boolean;
  /** What two corner legs leave between them, negative where they overlap; null where there are not two. */
  readonly betweenLegs: Nm | null;
  /** Closure of an end that is free in this course, or in its upper part beside a lower neighbour: outer station and height. */
  readonly closureStart: Closure | null;
  readonly closureEnd: Closure | null;
  readonly voids: readonly { readonly from: Nm; readonly to: Nm; readonly opening: LineOpening }[];
  readonly segments: readonly Segment[];
  /** Joints that no choice moves: leg to form, or run to run at a mark. */
  readonly fixedJoints: readonly Nm[];
  /** Where no head joint may fall: tee cut-outs and one web beside them. */
  readonly forbidden: readonly { readonly from: Nm; readonly to: Nm }[];
}

export interface RunContext {
  readonly plan: StoreyPlan;
  readonly range: FormRange;
  /**
   * Courses standing in a wall, by the elevation of their bottom above the storey; with an end, also those of a gable that stand whole at
   * that end (in walking direction).
   */
  readonly courseAt: (wall: number, elevation: Nm, end?: EndName) => Layer | null;
  /** Whether a wall stands at an elevation above the storey's bottom; with an end, up to `topAt` there. */
  readonly standsAt: (wall: number, elevation: Nm, end?: EndName) => boolean;
  /** Elevation of a wall's top; with an end, of the gable courses that are built into its neighbour there. */
  readonly topAt: (wall: number, end?: EndName) => Nm;
  /** The gable on a wall, in its walking direction. */
  readonly gableOf: (wall: number) => Gable | null;
  /** Elevations between which this context lays: a storey is laid level by level where a core changes. */
  readonly from: Nm;
  readonly to: Nm;
  readonly units: CourseUnits;
}

/** Where a course ends on a slope instead of at its wall's end. */
export interface Stretch {
  readonly from: Nm | null;
  readonly to: Nm | null;
}

const ALL: Stretch = { from: null, to: null };

interface EndState {
  readonly station: Nm;
  readonly leg: Nm;
  readonly long: boolean;
  readonly closure: Closure | null;
  /** Another run's forms butt here. */
  readonly butt: boolean;
  readonly mitre: boolean;
  /** Cut on the skew: the longer face passes the axis by this much. */
  readonly over: Nm;
}

/** Distance from the node back to the end of the wall as drawn, outward positive. */
const drawnBeyond = (line: Line, end: EndName): number => {
  const wall = end === 'start' ? line.walls[0]!.wall : line.walls.at(-1)!.wall;
  return Math.round(wall.back[end]);
};

/** Ordinal of a course by elevation, so that walls on different bases alternate their legs together. */
const ordinal = (line: Line, n: number, range: FormRange): number => n + Math.round(line.base / range.courseHeight);

/**
 * What stands at one end of a line in one course. Above a lower neighbour's top the end is free: the forms run to the end as
 * drawn and are closed (decisions 7 and 10).
 */
function endState(line: Line, end: EndName, n: number, bottom: Nm, height: Nm, arrivingFirst: boolean, context: RunContext): EndState {
  const joint = line[end];
  const node = end === 'start' ? 0 : line.length;
  const outwards = end === 'start' ? -1 : 1;
  const elevation = line.base + bottom;
  const drawn = node + outwards * drawnBeyond(line, end);
  const free: EndState = { station: drawn, leg: 0, long: false, closure: { at: drawn, height }, butt: false, mitre: false, over: 0 };
  if (joint.kind === 'free') return free;
  if (joint.kind === 'unsettled') return { ...free, station: node, closure: null };
  const beside = context.courseAt(neighbourOf(joint)!, elevation, facingEnd(joint, end));
  const own = end === 'start' ? line.walls[0]! : line.walls.at(-1)!;
  if (!beside) return free;
  if (joint.kind !== 'tee' && !context.courseAt(own.wall.index, elevation, end)) return { ...free, ...abutting(line, end, elevation, context), closure: null };
  const above = height - beside.height;
  const closure = joint.kind !== 'tee' && above > 0 ? { at: drawn, height: above } : null;
  if (joint.kind === 'tee') return { ...free, station: node - outwards * joint.tee.formTrim, closure: null, over: skewOver(line, joint.tee) };
  const curved = line.arc !== null || context.plan.walls[joint.partner]!.arc !== null;
  if (joint.kind === 'straight') return { ...free, station: node, closure, butt: !curved };
  if (curved) return { ...free, station: node, closure };
  const legs = legsAt(line, joint.turn, joint.unit?.legs.get(line.core.code) ?? null, context.range);
  const oddCourse = ordinal(line, n, context.range) % 2 === 1;
  const long = (oddCourse === arrivingFirst) === joint.arriving;
  const other = context.plan.walls[joint.partner]!.thickness;
  const leg = legs ? legOnAxis(long ? legs.long : legs.short, line.thickness, other, joint.turn) : 0;
  const otherLeg = legs ? legOnAxis(long ? legs.short : legs.long, other, line.thickness, joint.turn) : 0;
  const tip = mitreTip(own.wall.index, end, elevation, { own: leg, other: otherLeg }, context.plan, context.units, context.range);
  if (tip !== null) return { ...free, station: node + outwards * tip, closure, mitre: true };
  if (!legs) return { ...free, station: node, closure };
  return { ...free, station: node, leg, long, closure };
}

/** Gable courses that are not built into a neighbour which stands there end at its panel, or butt against it straight on. */
function abutting(line: Line, end: EndName, elevation: Nm, context: RunContext): { readonly station: Nm; readonly butt: boolean } {
  const wall = end === 'start' ? line.walls[0]!.wall : line.walls.at(-1)!.wall;
  const node = end === 'start' ? 0 : line.length;
  const inside = Math.max(0, formsWithin(wall.index, end, elevation, context));
  return { station: end === 'start' ? node + inside : node - inside, butt: line[end].kind === 'straight' };
}

/**
 * How far inside its node a wall's forms begin where its neighbour stands at an elevation and they are not built into each other: at the
 * neighbour's panel. −∞ where nothing stands there.
 */
export function formsWithin(wall: number, end: EndName, elevation: Nm, context: RunContext): number {
  const joint = context.plan.joints[wall]![end];
  const neighbour = neighbourOf(joint);
  if (neighbour === null || !context.standsAt(neighbour, elevation)) return -Infinity;
  if (joint.kind === 'tee') return joint.tee.formTrim;
  if (joint.kind !== 'corner') return 0;
  return Math.round(context.plan.walls[neighbour]!.thickness / 2 / Math.sin(radians(Math.abs(joint.turn))));
}

/** A branch cut on the skew is longer on one face by (T/2)·cot φ; the piece counts at its longer face (decision 9). */
function skewOver(line: Line, tee: Tee): Nm {
  if (tee.curvedOver !== null) return tee.curvedOver;
  return tee.square ? 0 : Math.round(Math.abs(line.thickness / 2 / Math.tan(radians(tee.angle))));
}

/** Legs of the corner; where two cores meet no unit exists and the wall's own core lends its legs, to be made by advice. */
function legsAt(line: Line, turn: number, made: { long: Nm; short: Nm } | null, range: FormRange): { long: Nm; short: Nm } | null {
  if (made) return made;
  const unit = cornerUnitFor(turn, line.core.code, range);
  return typeof unit === 'string' ? null : unit.legs.get(line.core.code)!;
}

/** Within this of a whole number of cut modules a run is that number (decision 6): sines and tangents leave less. */
const MODULE_REACH: Nm = 2_000;

/**
 * Where the legs end; the leg gives or takes what a run misses of whole modules by no more than the reach. Legs that overlap share
 * the room; the finding `run-too-short` says so.
 */
function fitLegs(from: Nm, to: Nm, start: EndState, end: EndState, module: Nm): { startTo: Nm; endFrom: Nm } {
  const room = to - from;
  const run = room - start.leg - end.leg;
  if (run >= 0) {
    const past = run - Math.round(run / module) * module;
    const stray = start.leg + end.leg > 0 && Math.abs(past) <= MODULE_REACH ? past : 0;
    return end.leg > 0 ? { startTo: from + start.leg, endFrom: to - end.leg - stray } : { startTo: from + start.leg + stray, endFrom: to };
  }
  const startTo = from + Math.round((room * start.leg) / (start.leg + end.leg));
  return { startTo, endFrom: startTo };
}

function segmentsBetween(from: Nm, to: Nm, voids: CourseRun['voids'], start: { fixed: boolean; over: Nm }, end: { fixed: boolean; over: Nm }): Segment[] {
  const segments: Segment[] = [];
  let left = from;
  let beside = start;
  const jamb = { fixed: false, over: 0 };
  const push = (at: Nm, next: { fixed: boolean; over: Nm }): void => {
    if (at <= left) return;
    const ends = { fixedLeft: beside.fixed, fixedRight: next.fixed, overLeft: beside.over, overRight: next.over };
    segments.push({ from: left, to: at, ...ends, wholeAtSeam: false, seamLeft: false, seamRight: false, unit: 'straight' });
  };
  for (const gap of voids) {
    push(Math.min(gap.from, to), jamb);
    left = Math.max(left, gap.to);
    beside = jamb;
  }
  push(to, end);
  return segments;
}

/** Every course of a line with its legs, voids and segments. `arrivingFirst`: long legs lie on the arriving walls in course 1. */
export function courseRuns(line: Line, openings: readonly LineOpening[], arrivingFirst: boolean, context: RunContext): CourseRun[] {
  return line.stack.layers.filter((layer) => layer.kind === 'course').map((layer) => courseRun(line, layer, ALL, openings, arrivingFirst, context));
}

const onSlope = (station: Nm): EndState => ({ station, leg: 0, long: false, closure: null, butt: false, mitre: false, over: 0 });

/** One course of a line; `stretch` says where it ends on a slope. */
export function courseRun(line: Line, layer: Layer, stretch: Stretch, openings: readonly LineOpening[], arrivingFirst: boolean, context: RunContext): CourseRun {
  const { range, plan } = context;
  const { course: n, bottom, height, ripped } = layer;
  const start = stretch.from === null ? endState(line, 'start', n, bottom, height, arrivingFirst, context) : onSlope(stretch.from);
  const end = stretch.to === null ? endState(line, 'end', n, bottom, height, arrivingFirst, context) : onSlope(stretch.to);
  const from = start.station;
  const to = Math.max(from, end.station);
  const voids = openings
    .filter((opening) => takesWhole(opening, bottom, height))
    .map((opening) => ({ from: Math.max(from, opening.formsFrom), to: Math.min(to, opening.formsTo), opening }))
    .filter((gap) => gap.to > gap.from);
  const fitted = fitLegs(from, to, start, end, range.cutModule);
  const firstVoid = voids[0]?.from ?? to;
  const lastVoid = voids.at(-1)?.to ?? from;
  const startTo = Math.min(fitted.startTo, Math.max(from, firstVoid));
  const endFrom = Math.max(fitted.endFrom, Math.min(to, lastVoid));
  const startLeg = start.leg > 0 && startTo > from ? { from, to: startTo, long: start.long } : null;
  const endLeg = end.leg > 0 && to > endFrom ? { from: endFrom, to, long: end.long } : null;
  const startWhole = startLeg !== null && startTo === fitted.startTo;
  const endWhole = endLeg !== null && endFrom === fitted.endFrom;
  const bare = segmentsBetween(startLeg ? startTo : from, endLeg ? endFrom : to, voids, { fixed: startWhole, over: start.over }, { fixed: endWhole, over: end.over });
  const stretches = unitStretches(line, n, bottom, height, openings, context.units);
  const segments = stretches.length === 0 ? bare : bare.flatMap((segment) => withUnits(segment, stretches, MODULE_REACH));
  const unitJoints = segments.slice(1).filter((segment, index) => segments[index]!.to === segment.from).map((segment) => segment.from);
  const isJoint = (at: Nm): boolean => segments.some((segment) => segment.from === at || segment.to === at);
  const fixedJoints = [
    ...(start.butt ? [from] : []),
    ...(startLeg && (isJoint(startTo) || startTo === endLeg?.from) ? [startTo] : []),
    ...(endLeg && endFrom !== startLeg?.to && isJoint(endFrom) ? [endFrom] : []),
    ...(end.butt ? [to] : []),
    ...unitJoints,
  ];
  const forbidden = line.tees
    .filter(({ tee }) => context.courseAt(tee.branch, line.base + bottom, tee.branchEnd) !== null)
    .map(({ tee, at }) => {
      const half = cutOutHalf(tee, plan) + range.webSpacing;
      return { from: at - half, to: at + half };
    });
  const betweenLegs = start.leg > 0 && end.leg > 0 ? end.station - start.station - start.leg - end.leg : null;
  return { n, bottom, height, ripped, from, to, startLeg, endLeg, mitreStart: start.mitre, mitreEnd: end.mitre, betweenLegs, closureStart: voids[0]?.from === from ? null : start.closure, closureEnd: voids.at(-1)?.to === to ? null : end.closure, voids, segments, fixedJoints, forbidden };
}

/** Half the cut-out of a tee along the through wall: the branch's core, longer on the skew (decision 9). */
export function cutOutHalf(tee: { readonly branch: number; readonly angle: number; readonly square: boolean }, plan: StoreyPlan): Nm {
  const core = plan.walls[tee.branch]!.core.width;
  return tee.square ? core / 2 : Math.round(core / 2 / Math.sin(radians(tee.angle)));
}
