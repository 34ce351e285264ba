import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { layCourses, USUAL, WIDE, type BondMemory, type Breadth, type LineLayout } from './bond.js';
import type { WaysMemory } from './bond-course.js';
import { compareCost } from './bond-cost.js';
import { lineKey } from './layout-kinds.js';
import type { LaidLine, LinePiece } from './layout-line.js';
import { mirroredRun } from './layout-mirror.js';
import { remainderAtLeg, seamPlaces, withSeam, type Seam } from './layout-seams.js';
import { offModule, piecesOf } from './placements.js';
import type { CourseRun } from './runs.js';

export type { LaidLine, LinePiece };

const REMEMBERED = 20_000;

/** A line as it is tried: from one end or the other, without a seam or parted at one. */
interface Trial {
  readonly turned: boolean;
  readonly seam: Seam | null;
  readonly runs: readonly CourseRun[];
}

interface Tried extends Trial {
  readonly layout: LineLayout;
}

function finish({ runs, seam, layout }: Tried, range: FormRange): LaidLine {
  const pieces = runs.map((run, course) =>
    run.segments.flatMap((segment, index) => {
      const own = piecesOf(segment, layout.chosen[course]![index]!, range.formLength);
      const seamHere = segment.seamRight || offModule(segment, range) > 0;
      return own.map((piece, order): LinePiece => ({
        from: piece.from,
        to: piece.to,
        seamAt: seamHere && order === own.length - 1 ? piece.to : null,
        atLeg: !segment.seamRight,
        over: (order === 0 ? segment.overLeft : 0) + (order === own.length - 1 ? segment.overRight : 0),
      }));
    }),
  );
  const lengths = runs.flatMap((run, course) => pieces[course]!.map(({ from, to, over }) => (run.ripped ? -1 : 1) * (to - from + over)));
  const atLeg = seam ? null : remainderAtLeg(runs, range);
  return { runs, pieces, seam: seam ?? (atLeg === null ? null : { at: null, remainder: atLeg }), cost: layout.cost, lengths: lengths.sort((a, b) => b - a) };
}

export function compareLengths(a: readonly Nm[], b: readonly Nm[]): number {
  if (a.length !== b.length) return a.length - b.length;
  const index = a.findIndex((length, place) => length !== b[place]);
  return index < 0 ? 0 : a[index]! - b[index]!;
}

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

/** Which of two layouts is taken: bond, forms, cuts, then fewer and shorter pieces; equal means the same pieces. */
const better = (a: Tried, b: Tried, range: FormRange): Tried =>
  (compareCost(b.layout.cost, a.layout.cost) || compareLengths(finish(b, range).lengths, finish(a, range).lengths)) < 0 ? b : a;

const isBroken = ({ layout: { cost } }: Tried): boolean => cost[0] + cost[1] > 0;

/** The courses of a line as they are laid from one end, parted at a seam or not. */
function trialOf(runs: readonly CourseRun[], turned: boolean, seam: Seam | null, length: Nm, range: FormRange): Trial {
  const seen = turned ? runs.map((run) => mirroredRun(run, length)) : runs;
  return { turned, seam, runs: seam ? seen.map((run) => withSeam(run, seam.at, range)) : seen };
}

/** Lays every trial with a breadth and takes the best. */
function layBest(trials: readonly Trial[], range: FormRange, ways: WaysMemory, breadth: Breadth): Tried {
  return trials.map((trial): Tried => ({ ...trial, layout: layCourses(trial.runs, range, ways, breadth) })).reduce((best, next) => better(best, next, range));
}

/** Lays a line from both ends, each with the best of its seams where it needs one; a broken bond is looked at once more, more widely. */
function layBothWays(runs: readonly CourseRun[], length: Nm, range: FormRange, ways: WaysMemory): Tried {
  const ends = [false, true].map((turned): readonly Trial[] => {
    const whole = trialOf(runs, turned, null, length, range);
    const seams = seamPlaces(whole.runs, range);
    return seams.length === 0 ? [whole] : seams.map((seam) => ({ ...whole, seam, runs: whole.runs.map((run) => withSeam(run, seam.at, range)) }));
  });
  const usual = ends.map((trials) => layBest(trials, range, ways, USUAL));
  const best = usual.reduce((ahead, back) => better(ahead, back, range));
  return isBroken(best) ? better(best, layBest(usual, range, ways, WIDE), range) : best;
}

/**
 * Lays a line from both ends and takes the better, so that a mirrored or reversed drawing is laid with the same pieces. Where every
 * layout found that way breaks a bond, the wide search tries again at the seams they chose. A line like one before takes its pieces.
 *
 * @param length of the line, node to node [nm]
 * @param memory of lines of the same range
 */
export function layLine(runs: readonly CourseRun[], length: Nm, range: FormRange, memory: BondMemory): LaidLine {
  if (memory.size > REMEMBERED) memory.clear();
  const key = lineKey(runs);
  const known = memory.get(key);
  if (known) {
    const own = known.seam ? trialOf(runs, known.turned, known.seam, length, range).runs : runs;
    return { ...known.laid, runs: known.seam && known.turned ? own.map((run) => mirroredRun(run, length)) : own };
  }
  const tried = layBothWays(runs, length, range, (memory.ways ??= new Map()));
  const laid = tried.turned ? mirrored(finish(tried, range), length) : finish(tried, range);
  memory.set(key, { laid, turned: tried.turned, seam: tried.seam });
  return laid;
}
