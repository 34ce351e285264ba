import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { AxisWall } from './axes.js';
import { chordJoints, chordParts, chordsOf, REST_REACH, type Chords } from './chords.js';
import type { HeadJoint, LaidArc } from './laid.js';
import { compareLengths, type LaidLine } from './line-layout.js';
import { chordJoint, closures, type CoursePiece, type CoursePieces } from './line-pieces.js';
import type { Line } from './lines.js';
import type { LineOpening } from './openings.js';
import { courseRuns, type CourseRun, type RunContext } from './runs.js';
import type { StoreyPlan } from './storey-plan.js';
import { stripsOf, type LineStrip } from './strips.js';

type Laid = { readonly from: Nm; readonly to: Nm; readonly length: Nm }[][];

const lineChords = (line: Line, range: FormRange): Chords => chordsOf(line.arc!, line.thickness, range);

function cutWay(chords: Chords, runs: readonly CourseRun[], joints: readonly Nm[], range: FormRange): Laid {
  return runs.map((run) =>
    run.segments.flatMap(({ from, to, overLeft, overRight }) => chordParts(chords, from, to, joints, { left: overLeft, right: overRight }, range.formLength)),
  );
}

const PLAIN = { left: 0, right: 0 };
const stripParts = (chords: Chords, { from, to }: { from: Nm; to: Nm }, joints: readonly Nm[], range: FormRange): Nm[] =>
  chordParts(chords, from, to, joints, PLAIN, range.formLength).map(({ length }) => length);

const lengthsOf = (laid: Laid, runs: readonly CourseRun[]): Nm[] =>
  laid.flatMap((pieces, course) => pieces.map(({ length }) => (runs[course]!.ripped ? -length : length))).sort((a, b) => b - a);

/** Lengths that miss each other by less than a joint may are alike: a mirrored drawing leaves no more. */
function compareSawn(a: readonly Nm[], b: readonly Nm[]): number {
  return a.length === b.length && a.every((length, index) => Math.abs(length - b[index]!) <= REST_REACH) ? 0 : compareLengths(a, b);
}

const stripLengths = (chords: Chords, strips: readonly LineStrip[], joints: readonly Nm[], range: FormRange): Nm[] =>
  strips.flatMap(({ runs }) => runs.flatMap((run) => stripParts(chords, run, joints, range))).sort((a, b) => b - a);

/**
 * Joints of a curve's chords, one above the other in every course and strip. Whole chords go from the walking start; where openings
 * make it fewer or shorter pieces, of the courses or else of the strips, they go from the other end, so that a mirrored drawing is
 * laid with the same pieces.
 */
function chosenJoints(chords: Chords, runs: readonly CourseRun[], strips: readonly LineStrip[], range: FormRange): Nm[] {
  const from = Math.min(...runs.map((run) => run.from));
  const to = Math.max(...runs.map((run) => run.to));
  const [ahead, back] = (['from-start', 'from-end'] as const).map((way) => chordJoints(chords, from, to, way)) as [Nm[], Nm[]];
  const forms = (joints: readonly Nm[]): Nm[] => lengthsOf(cutWay(chords, runs, joints, range), runs);
  const difference = compareSawn(forms(back), forms(ahead)) || compareSawn(stripLengths(chords, strips, back, range), stripLengths(chords, strips, ahead, range));
  return difference < 0 ? back : ahead;
}

/** Lays a radius wall in chords; without a single piece where no chord fits (`radius-tight`). */
export function layRadius(line: Line, openings: readonly LineOpening[], context: RunContext): LaidLine {
  const { range } = context;
  const runs = courseRuns(line, openings, true, context);
  const chords = lineChords(line, range);
  const laid: Laid = chords.chord === null ? runs.map(() => []) : cutWay(chords, runs, chosenJoints(chords, runs, stripsOf(line, openings, context, range), range), range);
  return {
    runs,
    pieces: laid.map((pieces) => pieces.map(({ from, to, length }) => ({ from, to, seamAt: null, atLeg: false, over: length - (to - from) }))),
    seam: null,
    cost: [0, 0, 0, 0, 0, 0],
    lengths: lengthsOf(laid, runs),
  };
}

/** Every piece and joint of every course of a laid radius wall. */
export function radiusPieces(line: Line, laid: LaidLine, openings: readonly LineOpening[], plan: StoreyPlan, range: FormRange): CoursePieces[] {
  const mark = line.walls[0]!.wall.wall.mark;
  return laid.runs.map((run, course): CoursePieces => {
    const id = (part: string | number): string => `${plan.storey.id}.${mark}.${run.n}.${part}`;
    const pieces = laid.pieces[course]!.map((piece, index): CoursePiece => ({
      id: id(index + 1),
      from: piece.from,
      to: piece.to,
      kind: 'straight',
      sku: `${range.straightPrefix}${line.core.code}`,
      hand: null,
      why: 'chord',
      inside: false,
      junction: null,
      counted: true,
      height: run.height,
      cutLength: piece.to - piece.from + piece.over,
    }));
    const joints = pieces.slice(1).flatMap((piece, index): HeadJoint[] => (pieces[index]!.to === piece.from ? [{ at: piece.from, kind: 'chord' }] : []));
    return { run, pieces: [...pieces, ...closures(line, run, openings, id, range)], joints: [...joints, ...chordJoint(line, run, pieces, plan)] };
  });
}

/** Strips of a radius wall are sawn to the same chords. */
export function radiusStrips(line: Line, laid: LaidLine, strips: readonly LineStrip[], range: FormRange): LineStrip[] {
  const chords = lineChords(line, range);
  if (chords.chord === null) return strips.map((strip) => ({ ...strip, runs: strip.runs.map((run) => ({ ...run, pieces: [] })) }));
  const joints = chosenJoints(chords, laid.runs, strips, range);
  return strips.map((strip) => ({
    ...strip,
    runs: strip.runs.map(({ from, to }) => ({ from, to, pieces: stripParts(chords, { from, to }, joints, range) })),
  }));
}

/** The curve of a laid wall as later stages read it; null for a straight one. */
export function laidArc(line: Line, runs: readonly CourseRun[], wall: AxisWall, range: FormRange): LaidArc | null {
  if (!line.arc || !wall.arc || !wall.wall.arc) return null;
  const chords = lineChords(line, range);
  const { from, to } = runs[0] ?? { from: 0, to: line.length };
  const joints = chordJoints(chords, from, to, 'from-start');
  const parts = chords.chord === null ? [] : chordParts(chords, from, to, joints, PLAIN, range.formLength);
  return {
    turns: wall.wall.arc.turns,
    centre: line.arc.centre,
    axisRadius: Math.round(line.arc.radius),
    concaveRadius: Math.round(chords.concaveRadius),
    chord: chords.chord,
    lastChord: parts.at(-1)?.length ?? null,
    chords: parts.length,
    gap: chords.chord === null ? 0 : Math.round(chords.gap),
    bandLength: Math.round(((to - from) * (line.arc.radius + line.thickness / 2)) / line.arc.radius),
  };
}

/** Webs of a chord as stations along the axis: those of the form it was sawn from, between its two cuts. */
export function chordWebs(piece: CoursePiece, offset: Nm, station: (at: Nm) => Nm, range: FormRange): Nm[] {
  const webs: Nm[] = [];
  for (let web = range.firstWeb; web < Math.min(range.formLength, offset + piece.cutLength); web += range.webSpacing) {
    if (web > offset) webs.push(station(piece.from + Math.round(((web - offset) * (piece.to - piece.from)) / piece.cutLength)));
  }
  return webs.sort((a, b) => a - b);
}
