import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { compareCost, layCourses, mirroredRun, piecesOf, USUAL, WIDE, type BondMemory, type Breadth, type LayoutCost } from './bond.js';
import type { Placement } from './placements.js';
import { offModule } from './placements.js';
import type { CourseRun, Segment } from './runs.js';

/** A straight piece of a course along its line. */
export interface LinePiece {
  readonly from: Nm;
  readonly to: Nm;
  /** Station of the joint off the interlock that this piece was cut for, null where it has none. */
  readonly seamAt: Nm | null;
  /** That joint is a leg's own and moves from course to course; it is no seam of the line. */
  readonly atLeg: boolean;
  /** Added to its axis length where an end is cut on the skew. */
  readonly over: Nm;
}

export interface LaidLine {
  readonly runs: readonly CourseRun[];
  /** Straight pieces of each course in order of station. */
  readonly pieces: readonly (readonly LinePiece[])[];
  /** The line's seam and what is left of the module; no station where it falls on the legs; null where every run is whole modules. */
  readonly seam: { readonly at: Nm | null; readonly remainder: Nm } | null;
  readonly cost: LayoutCost;
  /** Lengths of all straight pieces, longest first, ripped ones as negative numbers: what two layouts are compared by last. */
  readonly lengths: readonly Nm[];
}

interface Seam {
  readonly at: Nm;
  readonly remainder: Nm;
}

/** The shortest part of a run right of its seam, in 48ths of a form: candidates for the place of the seam. */
const SEAM_STEPS = [48, 32, 40, 24, 64, 96, 16, 8];

/** Splits the run that spans from leg to leg at the seam; other segments stay as they are. */
function withSeam(run: CourseRun, at: Nm, range: FormRange): CourseRun {
  const segments = run.segments.flatMap((segment): Segment[] => {
    if (offModule(segment, range) === 0 || at <= segment.from || at >= segment.to) return [segment];
    return [
      { ...segment, to: at, fixedRight: false, seamRight: true, overRight: 0 },
      { ...segment, from: at, fixedLeft: false, seamLeft: true, wholeAtSeam: true, overLeft: 0 },
    ];
  });
  return { ...run, segments };
}

/**
 * Places where a line's seam may stand: the same station in every course, a whole number of modules from the right-hand legs,
 * leaving no piece below the minimum on either side.
 */
function seamPlaces(runs: readonly CourseRun[], range: FormRange): Seam[] {
  const spans = runs.flatMap((run) => run.segments.filter((segment) => offModule(segment, range) > 0));
  if (spans.length === 0) return [];
  const left = Math.max(...spans.map((segment) => segment.from));
  const right = Math.min(...spans.map((segment) => segment.to));
  const remainder = offModule(spans[0]!, range);
  const step = range.formLength / 48;
  return SEAM_STEPS.map((steps) => ({ at: right - Math.round((steps * step) / range.cutModule) * range.cutModule, remainder }))
    .filter(({ at }) => at - left >= range.minPiece && right - at >= range.minPiece);
}

/** A run too short to be parted has its off-module joint at a leg, which moves from course to course; the bond counts it. */
function seamAtLeg(runs: readonly CourseRun[], range: FormRange): LaidLine['seam'] {
  const span = runs.flatMap((run) => run.segments).find((segment) => offModule(segment, range) > 0);
  return span ? { at: null, remainder: offModule(span, range) } : null;
}

function finish(runs: readonly CourseRun[], chosen: readonly (readonly Placement[])[], seam: LaidLine['seam'], cost: LayoutCost, range: FormRange): LaidLine {
  const pieces = runs.map((run, course) =>
    run.segments.flatMap((segment, index) => {
      const own = piecesOf(segment, chosen[course]![index]!);
      const seamHere = segment.seamRight || offModule(segment, range) > 0;
      return own.map((piece, order): LinePiece => ({
        ...piece,
        seamAt: seamHere && order === own.length - 1 ? piece.to : null,
        atLeg: !segment.seamRight,
        over: (order === 0 ? segment.overLeft : 0) + (order === own.length - 1 ? segment.overRight : 0),
      }));
    }),
  );
  const lengths = runs.flatMap((run, course) => pieces[course]!.map(({ from, to, over }) => (run.ripped ? -1 : 1) * (to - from + over)));
  return { runs, pieces, seam, cost, lengths: lengths.sort((a, b) => b - a) };
}

export function compareLengths(a: readonly Nm[], b: readonly Nm[]): number {
  if (a.length !== b.length) return a.length - b.length;
  const index = a.findIndex((length, place) => length !== b[place]);
  return index < 0 ? 0 : a[index]! - b[index]!;
}

/** Which of two layouts is taken: bond, forms, cuts, then fewer and shorter pieces; equal means the same pieces. */
export const compareLaid = (a: LaidLine, b: LaidLine): number => compareCost(a.cost, b.cost) || compareLengths(a.lengths, b.lengths);

/** Lays a line from one end: without a seam, or with the best of its possible seams. */
function layOneWay(runs: readonly CourseRun[], range: FormRange, memory: BondMemory, breadth: Breadth, seams: readonly Seam[]): LaidLine {
  if (seams.length === 0) {
    const layout = layCourses(runs, range, memory, breadth);
    return finish(runs, layout.chosen, seamAtLeg(runs, range), layout.cost, range);
  }
  const laid = seams.map((seam) => {
    const split = runs.map((run) => withSeam(run, seam.at, range));
    const layout = layCourses(split, range, memory, breadth);
    return finish(split, layout.chosen, seam, layout.cost, range);
  });
  return laid.reduce((best, next) => (compareLaid(next, best) < 0 ? next : best));
}

const isBroken = ({ cost }: LaidLine): boolean => cost[0] + cost[1] > 0;
const better = (a: LaidLine, b: LaidLine): LaidLine => (compareLaid(b, a) < 0 ? b : a);

const mirroredPiece = ({ from, to, seamAt, atLeg, over }: LinePiece, length: Nm): LinePiece => ({
  over,
  atLeg,
  from: length - to,
  to: length - from,
  seamAt: seamAt === null ? null : length - seamAt,
});

function mirrored(laid: LaidLine, length: Nm): LaidLine {
  return {
    ...laid,
    runs: laid.runs.map((run) => mirroredRun(run, length)),
    pieces: laid.pieces.map((course) => course.map((piece) => mirroredPiece(piece, length)).reverse()),
    seam: laid.seam && { ...laid.seam, at: laid.seam.at === null ? null : length - laid.seam.at },
  };
}

/**
 * Lays a line from both ends and takes the better, so that a mirrored or reversed drawing is laid with the same pieces. Where every
 * layout found that way breaks a bond, the wide search tries again at the seams they chose.
 *
 * @param length of the line, node to node [nm]
 * @param memory what was ranked before, for lines of the same range
 */
export function layLine(runs: readonly CourseRun[], length: Nm, range: FormRange, memory: BondMemory): LaidLine {
  const turned = runs.map((run) => mirroredRun(run, length));
  const ahead = layOneWay(runs, range, memory, USUAL, seamPlaces(runs, range));
  const back = layOneWay(turned, range, memory, USUAL, seamPlaces(turned, range));
  const usual = better(ahead, mirrored(back, length));
  if (!isBroken(usual)) return usual;
  const seamOf = ({ seam }: LaidLine): readonly Seam[] => (seam === null || seam.at === null ? [] : [{ at: seam.at, remainder: seam.remainder }]);
  const wideAhead = layOneWay(runs, range, memory, WIDE, seamOf(ahead));
  const wideBack = layOneWay(turned, range, memory, WIDE, seamOf(back));
  return better(usual, better(wideAhead, mirrored(wideBack, length)));
}
