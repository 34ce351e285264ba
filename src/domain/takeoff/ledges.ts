import { finding, type Finding } from '../evidence/finding.js';
import { cross, dot, radians } from '../geometry/vector.js';
import { toMm, type Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import { MEETING_REACH, type EndName } from '../schedule/line-normalisation.js';
import type { Feature } from '../schedule/schedule.js';
import type { AxisWall } from './axes.js';
import { faceTip, isFolded, lateral, ledgesMeet, type CourseUnits, type PlannedLedge, type PlannedTaper } from './course-units.js';
import type { Layer } from './stack.js';
import type { StoreyPlan } from './storey-plan.js';
import type { Tee } from './tees.js';

type LedgeFeature = Extract<Feature, { kind: 'ledge' }>;

/** The course whose top bears what is asked for: within tolerance, else the nearest, the lower of two as near. */
const bearingCourse = (at: Nm, courses: readonly Layer[]): Layer =>
  courses.reduce((best, next) => (Math.abs(next.bottom + next.height - at) < Math.abs(best.bottom + best.height - at) ? next : best));

/** Where a face of the wall ends at a corner, as an axis station; the end as drawn elsewhere. */
function faceEnd(wall: AxisWall, end: EndName, face: 'outside' | 'inside', plan: StoreyPlan): Nm {
  const joint = plan.joints[wall.index]![end];
  const outwards = end === 'start' ? -1 : 1;
  const node = end === 'start' ? 0 : wall.length;
  const drawn = node + outwards * wall.back[end];
  if (joint.kind !== 'corner' || isFolded(joint.turn)) return drawn;
  const corner = node + outwards * faceTip(wall.thickness, plan.walls[joint.partner]!.thickness, joint.turn, face, 0);
  return end === 'start' ? Math.max(drawn, corner) : Math.min(drawn, corner);
}

/** A ledge as asked, on its wall's axis and in walking direction. */
function ledgeOnAxis(feature: LedgeFeature, wall: AxisWall, { course, bottom, height }: Layer, plan: StoreyPlan): PlannedLedge {
  const [drawnFrom, drawnTo] = wall.reversed ? [wall.drawn - feature.to, wall.drawn - feature.from] : [feature.from, feature.to];
  const [from, to] = [drawnFrom - wall.back.start, drawnTo - wall.back.start];
  const { face } = feature;
  return {
    wall,
    face,
    course,
    bottom,
    elevation: wall.wall.base + bottom,
    asked: feature.at,
    bearing: bottom + height,
    from,
    to,
    open: { start: from <= faceEnd(wall, 'start', face, plan) + MEETING_REACH, end: to >= faceEnd(wall, 'end', face, plan) - MEETING_REACH },
  };
}

/** Branches on a wall's side with their stations along it, those at a mark where it runs straight on included. */
function teesBeside(wall: AxisWall, plan: StoreyPlan): { tee: Tee; at: Nm }[] {
  const { start, end } = plan.joints[wall.index]!;
  return plan.tees.flatMap((tee) => {
    if (tee.through === wall.index) return [{ tee, at: tee.station }];
    if (start.kind === 'straight' && start.partner === tee.through) return [{ tee, at: tee.station - plan.walls[tee.through]!.length }];
    if (end.kind === 'straight' && end.partner === tee.through) return [{ tee, at: wall.length + tee.station }];
    return [];
  });
}

/** The branch whose forms stand where a ledge would run, null where none does. */
function branchInWay(ledge: PlannedLedge, plan: StoreyPlan): AxisWall | null {
  const side = ledge.face === 'outside' ? 'right' : 'left';
  const [low, high] = [ledge.open.start ? -Infinity : ledge.from, ledge.open.end ? Infinity : ledge.to];
  const inWay = teesBeside(ledge.wall, plan).find(({ tee, at }) => {
    const branch = plan.walls[tee.branch]!;
    const half = branch.thickness / 2 / Math.sin(radians(tee.angle));
    const bed = ledge.elevation - branch.wall.base;
    const stands = bed >= 0 && bed < plan.stacks[tee.branch]!.stack.height;
    return stands && tee.side === side && at + half > low + MEETING_REACH && at - half < high - MEETING_REACH && at + half > 0 && at - half < ledge.wall.length;
  });
  return inWay ? plan.walls[inWay.tee.branch]! : null;
}

const overlap = (a: PlannedLedge, b: PlannedLedge): boolean => a.course === b.course && a.from < b.to && b.from < a.to;

/** Why a ledge cannot be laid, as the numbers of its finding; null where it can. */
function refusal(ledge: PlannedLedge, known: readonly PlannedLedge[], ripped: boolean, taper: PlannedTaper | undefined, plan: StoreyPlan, range: FormRange): Record<string, number | string> | null {
  const core = ledge.wall.core.code;
  if (!range.ledge?.cores.includes(core)) return { feature: 'ledge', core };
  if (ripped) return { feature: 'ledge in a ripped course', core, askedMm: toMm(ledge.asked) };
  if (taper?.course === ledge.course) return { feature: 'ledge in a taper-top course', core, askedMm: toMm(ledge.asked) };
  if (known.some((other) => overlap(ledge, other))) return { feature: 'two ledges at one place', core, askedMm: toMm(ledge.asked) };
  const branch = branchInWay(ledge, plan);
  return branch && { feature: 'ledge over a tee', core, branchCore: branch.core.code };
}

/** Ledges of a storey on their walls' axes, what cannot be laid as holds, and those that move to the nearest course line. */
export function planLedges(features: readonly Feature[], tapers: CourseUnits['tapers'], coursesOf: (wall: number) => readonly Layer[], plan: StoreyPlan, range: FormRange): { ledges: CourseUnits['ledges']; findings: Finding[] } {
  const byMark = new Map(plan.walls.map((wall) => [wall.wall.mark, wall]));
  const ledges = new Map<number, PlannedLedge[]>();
  const findings: Finding[] = [];
  for (const feature of features) {
    const wall = byMark.get(feature.wall);
    if (feature.kind !== 'ledge' || !wall) continue;
    const layer = bearingCourse(feature.at, coursesOf(wall.index));
    if (!plan.stacks[wall.index]!.layers.includes(layer)) continue;
    const ledge = ledgeOnAxis(feature, wall, layer, plan);
    const known = ledges.get(wall.index) ?? [];
    const place = { storey: plan.storey.id, wall: wall.wall.mark };
    const refused = refusal(ledge, known, layer.ripped, tapers.get(wall.index), plan, range);
    if (refused) {
      findings.push(finding('outside-method', { ...place, numbers: refused, source: 'take-off' }));
      continue;
    }
    ledges.set(wall.index, [...known, ledge]);
    const deviation = ledge.bearing - ledge.asked;
    if (Math.abs(deviation) <= range.parameters.stackTolerance) continue;
    const numbers = { askedMm: toMm(ledge.asked), stackMm: toMm(ledge.bearing), deviationMm: toMm(deviation), feature: 'ledge' };
    findings.push(finding('height-not-coursed', { ...place, course: ledge.course, numbers }));
  }
  return { ledges, findings };
}

/**
 * Where a face of a branch stops at its through wall's panel, as an axis station: on the skew one face reaches further.
 *
 * @param at axis station of the panel face
 */
function faceAtTee(wall: AxisWall, at: Nm, face: 'outside' | 'inside', { tee, plan }: { readonly tee: Tee; readonly plan: StoreyPlan }): Nm {
  if (tee.square) return at;
  const through = plan.walls[tee.through]!;
  const left = (-lateral(face) * wall.thickness) / 2;
  return Math.round(at - (left * dot(through.forward, wall.forward)) / cross(through.forward, wall.forward));
}

/**
 * Where the concrete of an open ledge ends, measured along the foam face it stands on, as an axis station of its wall: at the outer
 * tip where it meets another wall's ledge in a mitre, at the corner of the foam faces where it does not, at the closure of a free end,
 * at the panel face of a through wall.
 *
 * @param stands whether the wall beside the end has this course
 * @source statement of the project's decision 23
 */
export function ledgeEnd(ledge: PlannedLedge, end: EndName, stands: boolean, plan: StoreyPlan, units: CourseUnits, range: FormRange): Nm {
  const { wall, face, elevation } = ledge;
  const joint = plan.joints[wall.index]![end];
  const outwards = end === 'start' ? -1 : 1;
  const node = end === 'start' ? 0 : Math.max(0, wall.length);
  if (joint.kind === 'unsettled') return node;
  if (joint.kind === 'free' || !stands) return node + outwards * (wall.back[end] - range.closure.thickness);
  if (joint.kind === 'straight') return node;
  if (joint.kind === 'tee') return faceAtTee(wall, node - outwards * joint.tee.formTrim, face, { tee: joint.tee, plan });
  if (isFolded(joint.turn)) return node;
  const out = ledgesMeet(wall.index, end, elevation, face, plan, units) ? range.ledge!.projection : 0;
  return node + outwards * faceTip(wall.thickness, plan.walls[joint.partner]!.thickness, joint.turn, face, out);
}
