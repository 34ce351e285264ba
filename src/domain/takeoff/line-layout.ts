import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { compareCost, layCourses, mirroredRun, piecesOf, type BondMemory, type LayoutCost } from './bond.js';
import type { Placement } from './placements.js';
import { offModule } from './placements.js';
import type { CourseRun, Segment } from './runs.js';

/** A straight piece of a course along its line. */
export interface LinePiece {
  readonly from: Nm;
  readonly to: Nm;
  /** Cut to what is left of the module: it has a joint off the interlock. */
  readonly offModule: boolean;
  /** Station of that joint where it is the line's seam; null where it is a leg's own, which moves from course to course. */
  readonly seamAt: Nm | null;
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
function seamPlaces(runs: readonly CourseRun[], range: FormRange): { at: Nm; remainder: Nm }[] {
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
        offModule: seamHere && order === own.length - 1,
        seamAt: segment.seamRight && order === own.length - 1 ? piece.to : null,
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

function layOneWay(runs: readonly CourseRun[], range: FormRange, memory: BondMemory): LaidLine {
  const seams = seamPlaces(runs, range);
  if (seams.length === 0) {
    const layout = layCourses(runs, range, memory);
    return finish(runs, layout.chosen, seamAtLeg(runs, range), layout.cost, range);
  }
  const laid = seams.map((seam) => {
    const split = runs.map((run) => withSeam(run, seam.at, range));
    const layout = layCourses(split, range, memory);
    return finish(split, layout.chosen, seam, layout.cost, range);
  });
  return laid.reduce((best, next) => (compareLaid(next, best) < 0 ? next : best));
}

const mirroredPiece = ({ from, to, seamAt, over, offModule: off }: LinePiece, length: Nm): LinePiece => ({
  over,
  offModule: off,
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
 * Lays a line from both ends and takes the better, so that a mirrored or reversed drawing is laid with the same pieces.
 *
 * @param length of the line, node to node [nm]
 * @param memory what was ranked before, for lines of the same range
 */
export function layLine(runs: readonly CourseRun[], length: Nm, range: FormRange, memory: BondMemory): LaidLine {
  const ahead = layOneWay(runs, range, memory);
  const back = layOneWay(runs.map((run) => mirroredRun(run, length)), range, memory);
  return compareLaid(back, ahead) < 0 ? mirrored(back, length) : ahead;
}
