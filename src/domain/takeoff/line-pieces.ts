import type { FormRange, Hand } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { cornerSku, handOf } from './corners.js';
import { formOf, isForm } from './course-units.js';
import type { HeadJoint, PieceKind, PieceReason } from './laid.js';
import type { LaidLine, LinePiece } from './line-layout.js';
import type { Line } from './lines.js';
import { meets, type LineOpening } from './openings.js';
import type { CourseRun } from './runs.js';
import type { StoreyPlan } from './storey-plan.js';

/** A piece along its line, walking; `height` is the part of the course it stands in. */
export interface CoursePiece {
  readonly id: string;
  readonly from: Nm;
  readonly to: Nm;
  readonly kind: PieceKind;
  readonly sku: string;
  readonly hand: Hand | null;
  readonly why: PieceReason;
  readonly inside: boolean;
  readonly junction: string | null;
  /** A corner unit belongs to the arriving wall; everything else to its own. */
  readonly counted: boolean;
  readonly height: Nm;
  /** Length it is cut to: at its longer face where an end is cut on the skew. */
  readonly cutLength: Nm;
}

export interface CoursePieces {
  readonly run: CourseRun;
  readonly pieces: readonly CoursePiece[];
  readonly joints: readonly HeadJoint[];
}

/** What stands at a corner that no unit makes: a piece to be made as support advises. */
export const UNSETTLED_SKU = 'BY-ADVICE';

function reason(length: Nm, order: number, count: number, seam: boolean, form: Nm): PieceReason {
  if (seam) return 'seam';
  if (length === form) return 'full';
  if (count === 1) return 'single';
  return order === 0 ? 'starter' : 'closure';
}

/** Both legs of a unit are named by the arriving wall's course, whatever base the leaving wall stands on. */
function arrivingCourse(line: Line, run: CourseRun, joint: { readonly arriving: boolean; readonly partner: number }, plan: StoreyPlan, range: FormRange): number {
  if (joint.arriving) return run.n;
  const elevation = line.base + run.bottom - plan.walls[joint.partner]!.wall.base;
  const { stack, layers } = plan.stacks[joint.partner]!;
  const own = layers.find((layer) => layer.kind === 'course' && layer.bottom === elevation)?.course;
  return own ?? stack.courses + 1 + Math.floor((elevation - stack.height) / range.courseHeight);
}

function legPiece(line: Line, run: CourseRun, end: 'start' | 'end', plan: StoreyPlan, range: FormRange): CoursePiece[] {
  const leg = end === 'start' ? run.startLeg : run.endLeg;
  const joint = line[end];
  if (!leg || joint.kind !== 'corner') return [];
  const wall = end === 'start' ? line.walls[0]!.wall : line.walls.at(-1)!.wall;
  const junction = plan.junctions[plan.junctionAt[wall.index]![end]]!;
  const hand = handOf(joint.turn, leg.long === joint.arriving);
  const unit = joint.unit;
  return [
    {
      id: `${junction.id}.${arrivingCourse(line, run, joint, plan, range)}`,
      from: leg.from,
      to: leg.to,
      kind: unit?.kind ?? 'corner',
      sku: unit ? cornerSku(unit, line.core.code, hand) : UNSETTLED_SKU,
      hand: unit ? hand : null,
      why: leg.long ? 'leg-long' : 'leg-short',
      inside: false,
      junction: junction.id,
      counted: joint.arriving,
      height: run.height,
      cutLength: leg.to - leg.from,
    },
  ];
}

/** Closures of free ends and of jambs closed by end closures; they sit inside the forms, every course. */
export function closures(line: Line, run: CourseRun, openings: readonly LineOpening[], id: (part: string) => string, range: FormRange): CoursePiece[] {
  const { thickness, prefix } = range.closure;
  const closure = (name: string, from: Nm, why: 'end' | 'jamb', height: Nm): CoursePiece => ({
    id: id(name),
    from,
    to: from + thickness,
    kind: 'end-closure',
    sku: `${prefix}${line.core.code}`,
    hand: null,
    why,
    inside: true,
    junction: null,
    counted: true,
    height,
    cutLength: height,
  });
  const ends = [
    ...(run.closureStart ? [closure('c0', run.closureStart.at, 'end', run.closureStart.height)] : []),
    ...(run.closureEnd ? [closure('c1', run.closureEnd.at - thickness, 'end', run.closureEnd.height)] : []),
  ];
  const jambs = openings
    .filter((opening) => opening.lining === 'end-closure' && meets(opening, run.bottom, run.height))
    .flatMap((opening) => {
      const height = Math.min(opening.head, run.bottom + run.height) - Math.max(opening.sill, run.bottom);
      return [
        closure(`${opening.mark}-l`, opening.from, 'jamb', height),
        closure(`${opening.mark}-r`, opening.to - thickness, 'jamb', height),
      ];
    });
  return [...ends, ...jambs];
}

/** Every piece and head joint of every course of a laid line. */
export function coursePieces(line: Line, laid: LaidLine, openings: readonly LineOpening[], plan: StoreyPlan, range: FormRange): CoursePieces[] {
  const mark = line.walls[0]!.wall.wall.mark;
  return laid.runs.map((run, course): CoursePieces => {
    const id = (part: string | number): string => `${plan.storey.id}.${mark}.${run.n}.${part}`;
    const straight = laid.pieces[course]!;
    const groups = run.segments.map((segment) => straight.filter((piece) => piece.from >= segment.from && piece.to <= segment.to));
    const forms = groups.flatMap((group, index) => {
      const form = formOf(run.segments[index]!.unit, line.core, range);
      return group.map((piece, order): CoursePiece => ({
        id: '',
        from: piece.from,
        to: piece.to,
        ...form,
        hand: null,
        why: reason(piece.to - piece.from + piece.over, order, group.length, piece.seamAt !== null, range.formLength),
        inside: false,
        junction: null,
        counted: true,
        height: run.height,
        cutLength: piece.to - piece.from + piece.over,
      }));
    });
    const tiled = [...legPiece(line, run, 'start', plan, range), ...forms, ...legPiece(line, run, 'end', plan, range)];
    const named = tiled.map((piece, index) => (piece.id ? piece : { ...piece, id: id(index + 1) }));
    return { run, pieces: [...named, ...closures(line, run, openings, id, range)], joints: [...headJoints(line, run, named, straight), ...chordJoint(line, run, named, plan)] };
  });
}

/**
 * The joint at a mark where a curve begins, listed by the line that arrives there: cut to the run, it keeps no module. A course on a slope
 * ends before it.
 */
export function chordJoint(line: Line, run: CourseRun, tiled: readonly CoursePiece[], plan: StoreyPlan): HeadJoint[] {
  const onSlope = run.n > line.stack.stack.courses;
  if (onSlope || line.end.kind !== 'straight' || !(line.arc || plan.walls[line.end.partner]!.arc)) return [];
  const alone = run.closureEnd !== null && run.closureEnd.height === run.height;
  return !alone && tiled.at(-1)?.to === run.to ? [{ at: run.to, kind: 'chord' }] : [];
}

/** Joints between neighbours; where two runs butt at a mark the arriving one lists the joint. */
function headJoints(line: Line, run: CourseRun, tiled: readonly CoursePiece[], straight: readonly LinePiece[]): HeadJoint[] {
  const joints = tiled.slice(1).flatMap((piece, index): HeadJoint[] => {
    const before = tiled[index]!;
    if (before.to !== piece.from) return [];
    const seam = straight.find((form) => form.seamAt === piece.from);
    if (seam) return [{ at: piece.from, kind: seam.atLeg ? 'seam-at-leg' : 'seam' }];
    const unit = run.segments.some(({ from }) => from === piece.from);
    return [{ at: piece.from, kind: isForm(before.kind) && isForm(piece.kind) ? (unit ? 'unit' : 'module') : 'leg' }];
  });
  const butts = line.end.kind === 'straight' && run.fixedJoints.includes(run.to) ? [{ at: run.to, kind: 'module' as const }] : [];
  return [...joints, ...butts];
}
