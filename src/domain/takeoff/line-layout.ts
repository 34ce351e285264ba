import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { layCourses, USUAL, WIDE, type BondMemory, type Breadth, type LineLayout } from './bond.js';
import type { WaysMemory } from './bond-course.js';
import { asNamedCost, compareCost } from './bond-cost.js';
import { eachKind, kindsOf, lineKey, sameCourse, type BondRun } from './layout-kinds.js';
import type { LaidLine, LinePiece } from './layout-line.js';
import { mirroredPiece, mirroredRun, mirroredSegments } from './layout-mirror.js';
import { lineLengths, linePieces } from './layout-pieces.js';
import { remainderAtLeg, seamPlaces, withSeam, type Seam } from './layout-seams.js';
import type { CourseRun } from './runs.js';

export type { LaidLine, LinePiece };

/** Lines and kinds of segment kept in mind, each: about 50 MB of them. */
const REMEMBERED = 6_000;

/** A line to lay; courses alike are known by the first of them. */
interface Task {
  readonly runs: readonly CourseRun[];
  readonly kinds: readonly number[];
  readonly length: Nm;
  readonly range: FormRange;
  readonly ways: WaysMemory;
}

/** A line as it is tried: seen from one end or the other, without a seam or parted at one. */
interface Trial {
  readonly turned: boolean;
  readonly seam: Seam | null;
  readonly runs: readonly BondRun[];
}

interface Tried extends Trial {
  readonly layout: LineLayout;
}

export function compareLengths(a: readonly Nm[], b: readonly Nm[]): number {
  if (a.length !== b.length) return a.length - b.length;
  const index = a.findIndex((length, place) => length !== b[place]);
  return index < 0 ? 0 : a[index]! - b[index]!;
}

/** Which of two layouts is taken: bond, forms, cuts, then fewer and shorter pieces; equal means the same pieces. */
function better(a: Tried, b: Tried, form: Nm): Tried {
  const lengths = ({ runs, layout }: Tried): Nm[] => lineLengths(runs, layout.chosen, form);
  return (compareCost(b.layout.cost, a.layout.cost) || compareLengths(lengths(b), lengths(a))) < 0 ? b : a;
}

const isBroken = ({ layout: { cost } }: Tried): boolean => cost[0] + cost[1] > 0;

/** Lays every trial with a breadth and takes the best, the one to beat among them; a trial that comes to cost more is given up. */
function layBest(trials: readonly Trial[], { kinds, range, ways }: Task, breadth: Breadth, toBeat: Tried | null): Tried | null {
  let best = toBeat;
  for (const trial of trials) {
    const layout = layCourses(trial.runs, kinds, range, ways, breadth, best && asNamedCost(best.layout.cost));
    if (layout) best = best ? better(best, { ...trial, layout }, range.formLength) : { ...trial, layout };
  }
  return best;
}

/** The trials of a line from one end: whole, or at each place for its seam where it needs one. */
function trialsFrom({ runs, kinds, length, range }: Task, turned: boolean): readonly Trial[] {
  const whole: readonly BondRun[] = turned ? eachKind(runs, kinds, (run) => mirroredRun(run, length)) : runs;
  const seams = seamPlaces(whole, range);
  if (seams.length === 0) return [{ turned, seam: null, runs: whole }];
  return seams.map((seam) => ({ turned, seam, runs: eachKind(whole, kinds, (run) => withSeam(run, seam.at, range)) }));
}

/** Seen from its other end the line is the same. */
const isSymmetric = ({ runs, kinds, length }: Task): boolean =>
  kinds.every((kind, course) => kind !== course || sameCourse(runs[course]!, mirroredRun(runs[course]!, length)));

/** Lays a line from both ends, each with the best of its seams where it needs one; a broken bond is looked at once more, more widely. */
function layBothWays(task: Task): Tried {
  const ahead = layBest(trialsFrom(task, false), task, USUAL, null)!;
  if (isSymmetric(task)) return isBroken(ahead) ? layBest([ahead], task, WIDE, ahead)! : ahead;
  if (!isBroken(ahead)) return layBest(trialsFrom(task, true), task, USUAL, ahead)!;
  const back = layBest(trialsFrom(task, true), task, USUAL, null)!;
  const best = better(ahead, back, task.range.formLength);
  return isBroken(best) ? layBest([ahead, back], task, WIDE, best)! : best;
}

/** The line's own courses, parted at the seam where there is one. */
function ownRuns({ runs, length, range }: Task, { turned, seam }: Pick<Trial, 'turned' | 'seam'>): readonly CourseRun[] {
  if (!seam) return runs;
  if (!turned) return runs.map((run) => withSeam(run, seam.at, range));
  return runs.map((run) => ({ ...run, segments: mirroredSegments(withSeam(mirroredRun(run, length), seam.at, range).segments, length) }));
}

function laidLine(task: Task, tried: Tried): LaidLine {
  const { kinds, length, range } = task;
  const { turned, seam, layout } = tried;
  const seen = linePieces(tried.runs, kinds, layout.chosen, range);
  const pieces = turned ? seen.map((course) => course.map((piece) => mirroredPiece(piece, length)).reverse()) : seen;
  const remainder = seam ? seam.remainder : remainderAtLeg(tried.runs, range);
  const at = seam && (turned ? length - seam.at : seam.at);
  const lengths = lineLengths(tried.runs, layout.chosen, range.formLength);
  return { runs: ownRuns(task, tried), pieces, seam: remainder === null ? null : { at, remainder }, cost: layout.cost, lengths };
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
  if (memory.ways && memory.ways.size > REMEMBERED) memory.ways.clear();
  const kinds = kindsOf(runs);
  const task: Task = { runs, kinds, length, range, ways: (memory.ways ??= new Map()) };
  const key = lineKey(runs, kinds);
  const known = memory.get(key);
  if (known) return { ...known.laid, runs: ownRuns(task, known) };
  const tried = layBothWays(task);
  const laid = laidLine(task, tried);
  memory.set(key, { laid: { ...laid, runs: [] }, turned: tried.turned, seam: tried.seam });
  return laid;
}
