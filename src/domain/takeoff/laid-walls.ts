import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { userStation, type AxisWall } from './axes.js';
import type { GableCourses } from './gable-courses.js';
import { laidGable, slopeOf } from './gables.js';
import { wallConcrete } from './concrete.js';
import { isForm } from './course-units.js';
import type { HeadJoint, LaidCourse, LaidOpening, LaidStrip, LaidWall, Notch, Piece } from './laid.js';
import type { CoursePiece, CoursePieces } from './line-pieces.js';
import { laidUnits } from './laid-units.js';
import { meets } from './openings.js';
import { chordWebs, laidArc } from './radius-walls.js';
import type { RunContext } from './runs.js';
import type { LineResult } from './storey-layout.js';
import type { CutPlace } from './units.js';

/** A wall's window on its line, and how to bring a station of the line to the user's own direction. */
interface Window {
  readonly wall: AxisWall;
  readonly from: Nm;
  readonly to: Nm;
  readonly first: boolean;
  readonly last: boolean;
  /** Line station to the user's station. */
  readonly station: (at: Nm) => Nm;
}

function windowsOf(result: Pick<LineResult, 'line'>): Window[] {
  const { walls, length } = result.line;
  return walls.map(({ wall, from }, index): Window => {
    const to = walls[index + 1]?.from ?? length;
    const own = Math.max(0, wall.length);
    return {
      wall,
      from,
      to,
      first: index === 0,
      last: index === walls.length - 1,
      station: wall.reversed ? (at) => own - (at - from) : (at) => at - from,
    };
  });
}

/** The part of a span of the line that lies in a window, in the user's direction; null where it lies outside. */
function clip(window: Window, from: Nm, to: Nm): { from: Nm; to: Nm } | null {
  const low = window.first ? from : Math.max(from, window.from);
  const high = window.last ? to : Math.min(to, window.to);
  if (high <= low) return null;
  const a = window.station(low);
  const b = window.station(high);
  return a <= b ? { from: a, to: b } : { from: b, to: a };
}

/** The window a station of the line belongs to; a station on a mark belongs to the wall that arrives there. */
const holds = (window: Window, at: Nm): boolean => (window.first || at > window.from) && (window.last || at <= window.to);

function websOf(piece: CoursePiece, window: Window, cut: CutPlace | undefined, span: { from: Nm; to: Nm }, range: FormRange): Nm[] {
  const offset = cut?.offset ?? 0;
  if (piece.why === 'chord') return chordWebs(piece, offset, window.station, range);
  const webs: Nm[] = [];
  const end = offset + piece.to - piece.from;
  for (let web = range.firstWeb; web <= range.formLength && web < end; web += range.webSpacing) {
    if (web <= offset) continue;
    const at = window.station(piece.from + web - offset);
    if (at >= span.from && at <= span.to) webs.push(at);
  }
  return window.wall.reversed ? webs.reverse() : webs;
}

/** Openings that meet a course without taking its full height. */
const notching = ({ bottom, height }: { bottom: Nm; height: Nm }, openings: readonly LaidOpening[]): readonly LaidOpening[] =>
  openings.filter((opening) => meets(opening, bottom, height) && !(opening.sill <= bottom && opening.head >= bottom + height));

/** @param openings those that notch the course */
function notchesOf(span: { from: Nm; to: Nm }, course: { bottom: Nm; height: Nm }, openings: readonly LaidOpening[]): Notch[] {
  if (openings.length === 0) return [];
  return openings
    .filter((opening) => opening.from < span.to && opening.to > span.from)
    .map((opening) => ({
      opening: opening.mark,
      from: Math.max(span.from, opening.formsFrom),
      to: Math.min(span.to, opening.formsTo),
      bottom: Math.max(0, opening.sill - course.bottom),
      top: Math.min(course.height, opening.head - course.bottom),
    }))
    .filter((notch) => notch.to > notch.from && notch.top > notch.bottom);
}

function piecesIn(window: Window, pieces: readonly CoursePiece[], course: CoursePieces, openings: readonly LaidOpening[], cuts: ReadonlyMap<string, CutPlace>, range: FormRange): Piece[] {
  const found: Piece[] = [];
  const notches = notching(course.run, openings);
  for (const piece of pieces) {
    const span = clip(window, piece.from, piece.to);
    if (!span) continue;
    const form = isForm(piece.kind);
    const cut = form ? cuts.get(piece.id) : undefined;
    const begins = piece.from >= window.from || window.first;
    found.push({
      id: piece.id,
      from: span.from,
      to: span.to,
      kind: piece.kind,
      sku: piece.sku,
      hand: piece.hand,
      why: piece.why,
      inside: piece.inside,
      counted: piece.counted && begins && (window.last || piece.from < window.to),
      junction: piece.junction,
      pieceLength: piece.inside ? piece.to - piece.from : piece.cutLength,
      cutEnds: cut?.cutEnds ?? 0,
      webs: form ? websOf(piece, window, cut, span, range) : null,
      slope: null,
      notches: piece.inside ? [] : notchesOf(span, course.run, notches),
    });
  }
  const order = (a: Piece, b: Piece): number => Number(a.inside) - Number(b.inside) || a.from - b.from;
  return found.sort(order);
}

function courseIn(window: Window, course: CoursePieces, top: number | null, openings: readonly LaidOpening[], cuts: ReadonlyMap<string, CutPlace>, range: FormRange): LaidCourse {
  const { run } = course;
  const ends = clip(window, run.from, run.to) ?? { from: 0, to: 0 };
  const joints = course.joints
    .filter((joint) => holds(window, joint.at))
    .map((joint): HeadJoint => ({ ...joint, at: window.station(joint.at) }))
    .sort((a, b) => a.at - b.at);
  const voids = run.voids
    .flatMap((gap) => {
      const span = clip(window, gap.from, gap.to);
      return span ? [{ ...span, opening: gap.opening.mark }] : [];
    })
    .sort((a, b) => a.from - b.from);
  return {
    n: run.n,
    bottom: run.bottom,
    height: run.height,
    ripped: run.ripped,
    top: run.n === top,
    ...ends,
    voids,
    pieces: piecesIn(window, course.pieces, course, openings, cuts, range),
    headJoints: joints,
  };
}

function stripsIn(window: Window, result: LineResult, range: FormRange): LaidStrip[] {
  const sku = `${range.stripPrefix ?? ''}${result.line.core.code}`;
  return result.strips.map((strip): LaidStrip => {
    const runs = strip.runs.flatMap((run) => clip(window, run.from, run.to) ?? []).sort((a, b) => a.from - b.from);
    const begun = strip.runs.filter((run) => holds(window, run.from + 1));
    const pieces = begun.flatMap((run) => run.pieces.map((length) => ({ length })));
    return { afterCourse: strip.afterCourse, bottom: strip.bottom, height: strip.height, runs, sku, pieces };
  });
}

/** The openings of one wall, in the user's direction. */
function openingsIn(window: Window, result: LineResult): LaidOpening[] {
  return result.openings
    .filter((opening) => opening.wall === window.wall.index)
    .map((opening) => turnedOpening(window, opening))
    .sort((a, b) => a.from - b.from);
}

function turnedOpening({ wall, station }: Window, { mark, sill, head, lining, ...opening }: LaidOpening): LaidOpening {
  const turned = wall.reversed;
  return {
    mark,
    sill,
    head,
    lining,
    from: station(turned ? opening.to : opening.from),
    to: station(turned ? opening.from : opening.to),
    formsFrom: station(turned ? opening.formsTo : opening.formsFrom),
    formsTo: station(turned ? opening.formsFrom : opening.formsTo),
  };
}

/** What every opening of the line takes out of a window's wall: an opening may reach across a mark. */
function openingsOver(window: Window, result: LineResult): LaidOpening[] {
  return result.openings.flatMap((opening) => {
    const hole = clip(window, opening.from, opening.to);
    const forms = clip(window, opening.formsFrom, opening.formsTo);
    return hole && forms ? [{ ...opening, ...hole, formsFrom: forms.from, formsTo: forms.to }] : [];
  });
}

/** The courses of a window's own gable, which stand on a line of that wall alone, with what the slope leaves of each piece. */
function gableCoursesIn(window: Window, { line, courses, openings, gable }: GableCourses, cuts: ReadonlyMap<string, CutPlace>, range: FormRange): LaidCourse[] {
  const own = windowsOf({ line })[0]!;
  const top = courses.at(-1)!.run.n;
  const over = openings.map((opening) => turnedOpening(own, opening));
  return courses.map((course): LaidCourse => {
    const laid = courseIn(own, course, top, over, cuts, range);
    const bottom = course.run.bottom - line.stack.stack.height;
    const sloped = (piece: Piece): Piece => {
      if (piece.kind !== 'straight') return piece;
      const ends = [userStation(window.wall, piece.from), userStation(window.wall, piece.to)].sort((a, b) => a - b) as [Nm, Nm];
      const slope = slopeOf(gable, ...ends, bottom, course.run.height);
      return { ...piece, slope: slope && turnedSlope(slope, window.wall) };
    };
    return { ...laid, pieces: laid.pieces.map(sloped) };
  });
}

function turnedSlope(slope: NonNullable<Piece['slope']>, wall: AxisWall): NonNullable<Piece['slope']> {
  if (!wall.reversed) return slope;
  const peak = slope.peak && { ...slope.peak, at: userStation(wall, slope.peak.at) };
  return { fromHeight: slope.toHeight, toHeight: slope.fromHeight, peak };
}

/** The walls of one line, clipped at their marks and turned to the user's own direction. */
export function laidWalls(result: LineResult, cuts: ReadonlyMap<string, CutPlace>, context: RunContext): LaidWall[] {
  const { range, plan } = context;
  const { stack, alternatives } = result.line.stack;
  return windowsOf(result).map((window): LaidWall => {
    const { wall } = window;
    const gable = result.gables.find((candidate) => candidate.wall.index === wall.index) ?? null;
    const over = openingsOver(window, result);
    const openings = openingsIn(window, result);
    const units = laidUnits(window, result, context);
    const concrete = wallConcrete(wall, openings, context);
    const trim = (end: 'start' | 'end'): Nm => {
      const joint = plan.joints[wall.index]![end];
      return joint.kind === 'tee' ? joint.tee.formTrim : 0;
    };
    const user = <T>(start: T, end: T): [T, T] => (wall.reversed ? [end, start] : [start, end]);
    const [trimStart, trimEnd] = user(trim('start'), trim('end'));
    const [axisFrom, axisTo] = user(wall.from, wall.to);
    const at = plan.junctionAt[wall.index]!;
    const [startJunction, endJunction] = user(at.start, at.end).map((index) => plan.junctions[index]!.id) as [string, string];
    return {
      mark: wall.wall.mark,
      storey: wall.wall.storey,
      core: wall.core,
      thickness: wall.thickness,
      base: wall.wall.base,
      askedHeight: wall.wall.height,
      length: Math.max(0, wall.length),
      startOffset: wall.reversed ? wall.back.end : wall.back.start,
      dimensionLength: wall.drawn,
      trimStart,
      trimEnd,
      outside: wall.reversed ? 'left' : 'right',
      axisFrom,
      axisTo,
      stack,
      alternatives,
      courses: [
        ...result.courses.map((course) => courseIn(window, course, gable ? null : stack.courses, over, cuts, range)),
        ...(gable ? gableCoursesIn(window, gable, cuts, range) : []),
      ],
      strips: stripsIn(window, result, range),
      openings,
      arc: laidArc(result.line, result.laid.runs, wall, range),
      gable: gable ? laidGable(gable.gable, wall, gable.courses.length) : null,
      ledges: units.ledges,
      taper: units.taper,
      coreChanges: [],
      carries: [],
      startJunction,
      endJunction,
      ...concrete,
      concreteNm3: concrete.concreteNm3 + units.concreteNm3,
    };
  });
}
