import { inches } from '../../src/domain/quantity/length.js';
import type { Nm } from '../../src/domain/quantity/length.js';
import type { SheetHeader } from '../../src/domain/drawing/index.js';
import { CAUTIONS } from '../../src/domain/evidence/cautions.js';
import type {
  HeadJoint,
  Junction,
  LaidCourse,
  LaidOpening,
  LaidStorey,
  LaidWall,
  Notch,
  Piece,
} from '../../src/domain/takeoff/laid.js';
import { CORES } from './rule-range.js';
import { junction, laidJob } from './laid.js';

/** Walls for drawings: laid out by the plainest rule that fills a course, so that every kind of piece and mark appears. Inches. */
export interface DrawnOpening {
  readonly mark: string;
  readonly at: number;
  readonly width: number;
  readonly sill: number;
  readonly height: number;
  readonly lining?: 'buck' | 'end-closure';
}

export interface DrawnWall {
  readonly mark: string;
  /** Axis length, node to node. */
  readonly length: number;
  readonly courses: number;
  readonly rippedTop?: number;
  readonly stripAfter?: readonly number[];
  readonly ends?: readonly ['corner' | 'free' | 'tee', 'corner' | 'free' | 'tee'];
  readonly openings?: readonly DrawnOpening[];
  readonly outside?: 'left' | 'right';
  readonly turn?: number;
  readonly seamAt?: number;
}

const HALF = 5.5;
const LEG = { long: 32, short: 16 } as const;
const CLOSURE = 2.5;
const COURSE = 16;
const STRIP = 3;

interface Line {
  readonly n: number;
  readonly bottom: number;
  readonly height: number;
  readonly ripped: boolean;
}

/** One wall of a storey on a footing with the storey round it. */
export function drawnWall(sketch: DrawnWall): { readonly wall: LaidWall; readonly storey: LaidStorey } {
  const [start, end] = sketch.ends ?? ['corner', 'corner'];
  const turn = sketch.turn ?? 90;
  const lines = linesOf(sketch);
  const laid = laidJob({ walls: [{ mark: sketch.mark, length: sketch.length, courses: [] }] }).storeys[0] as LaidStorey;
  const face = (kind: string): number => (kind === 'corner' ? HALF * Math.tan((turn * Math.PI) / 360) : 0);
  const last = lines.at(-1) as Line;
  const height = inches(last.bottom + last.height);
  const wall: LaidWall = {
    ...(laid.walls[0] as LaidWall),
    core: CORES[6],
    startJunction: 'S1-J1',
    endJunction: 'S1-J2',
    outside: sketch.outside ?? 'right',
    startOffset: inches(face(start)),
    dimensionLength: inches(sketch.length) + inches(face(start)) + inches(face(end)),
    trimStart: start === 'tee' ? inches(HALF) : 0,
    trimEnd: end === 'tee' ? inches(HALF) : 0,
    askedHeight: height,
    stack: {
      courses: sketch.courses,
      strips: sketch.stripAfter?.length ?? 0,
      ripped: sketch.rippedTop === undefined ? null : inches(sketch.rippedTop),
      height,
      deviation: 0,
    },
    openings: (sketch.openings ?? []).map(openingOf),
    courses: lines.map((line) => courseOf(sketch, line, start, end)),
    strips: (sketch.stripAfter ?? []).map((after) => stripOf(sketch, lines, after)),
  };
  return { wall, storey: { ...laid, walls: [wall, otherWall(wall, 'T')], junctions: junctionsOf(sketch, start, end, turn) } };
}

function linesOf(sketch: DrawnWall): Line[] {
  let bottom = 0;
  return Array.from({ length: sketch.courses }, (_, i) => {
    const ripped = i === sketch.courses - 1 && sketch.rippedTop !== undefined;
    const line = { n: i + 1, bottom, height: ripped ? (sketch.rippedTop as number) : COURSE, ripped };
    bottom += line.height + ((sketch.stripAfter ?? []).includes(i + 1) ? STRIP : 0);
    return line;
  });
}

const openingOf = (opening: DrawnOpening): LaidOpening => {
  const inset = opening.lining === 'end-closure' ? CLOSURE : 0;
  return {
    mark: opening.mark,
    from: inches(opening.at),
    to: inches(opening.at + opening.width),
    sill: inches(opening.sill),
    head: inches(opening.sill + opening.height),
    lining: opening.lining ?? 'buck',
    formsFrom: inches(opening.at + inset),
    formsTo: inches(opening.at + opening.width - inset),
  };
};

function courseOf(sketch: DrawnWall, line: Line, start: string, end: string): LaidCourse {
  const odd = line.n % 2 === 1;
  const [from, to] = [start === 'tee' ? HALF : 0, sketch.length - (end === 'tee' ? HALF : 0)];
  const voids = (sketch.openings ?? [])
    .filter((opening) => opening.sill <= line.bottom && opening.sill + opening.height >= line.bottom + line.height)
    .map((opening) => {
      const inset = opening.lining === 'end-closure' ? CLOSURE : 0;
      return { from: opening.at + inset, to: opening.at + opening.width - inset, opening: opening.mark };
    })
    .sort((a, b) => a.from - b.from);
  const pieces: Piece[] = [];
  const joints: HeadJoint[] = [];
  const id = (): string => `S1-${sketch.mark}-${line.n}-${pieces.length + 1}`;
  const legs = {
    start: start === 'corner' ? (odd ? LEG.short : LEG.long) : 0,
    end: end === 'corner' ? (odd ? LEG.long : LEG.short) : 0,
  };
  if (legs.start > 0) pieces.push(cornerPiece(id(), 0, legs.start, odd ? 'left' : 'right', 'S1-J1', odd));
  const edges = [
    legs.start > 0 ? legs.start : from,
    ...voids.flatMap((gap) => [gap.from, gap.to]),
    sketch.length - legs.end < to ? sketch.length - legs.end : to,
  ];
  for (let i = 0; i + 1 < edges.length; i += 2) {
    for (const span of fill(edges[i] as number, edges[i + 1] as number, odd, sketch.seamAt))
      pieces.push(straightPiece(id(), span, sketch, line));
  }
  if (legs.end > 0)
    pieces.push(cornerPiece(id(), sketch.length - legs.end, sketch.length, odd ? 'right' : 'left', 'S1-J2', !odd));
  pieces.slice(1).forEach((piece, i) => {
    if (pieces[i]?.to === piece.from)
      joints.push({ at: piece.from, kind: piece.from === inches(sketch.seamAt ?? -1) ? 'seam' : 'module' });
  });
  const closures = [
    ...(start === 'free' ? [0] : []),
    ...(end === 'free' ? [sketch.length - CLOSURE] : []),
    ...(sketch.openings ?? [])
      .filter((opening) => opening.lining === 'end-closure' && voids.some((gap) => gap.opening === opening.mark))
      .flatMap((opening) => [opening.at, opening.at + opening.width - CLOSURE]),
  ];
  closures.forEach((at) =>
    pieces.push({
      ...straightPiece(id(), [at, at + CLOSURE], sketch, line),
      kind: 'end-closure',
      sku: 'EC6',
      inside: true,
      why: 'end',
      webs: null,
      cutEnds: 0,
      notches: [],
    }),
  );
  return {
    n: line.n,
    bottom: inches(line.bottom),
    height: inches(line.height),
    ripped: line.ripped,
    top: line.n === sketch.courses,
    from: inches(from),
    to: inches(to),
    voids: voids.map((gap) => ({ ...gap, from: inches(gap.from), to: inches(gap.to) })),
    pieces,
    headJoints: joints,
  };
}

function fill(from: number, to: number, odd: boolean, seam: number | undefined): [number, number][] {
  const spans: [number, number][] = [];
  let at = from;
  if (!odd && to - from > 72) {
    spans.push([at, at + 24]);
    at += 24;
  }
  while (at < to) {
    const next = Math.min(to, at + 48, seam !== undefined && seam > at ? seam : Infinity);
    spans.push([at, next]);
    at = next;
  }
  return spans;
}

function straightPiece(id: string, [from, to]: readonly [number, number], sketch: DrawnWall, line: Line): Piece {
  const notches: Notch[] = (sketch.openings ?? []).flatMap((opening) => {
    const inset = opening.lining === 'end-closure' ? CLOSURE : 0;
    const [left, right] = [Math.max(from, opening.at + inset), Math.min(to, opening.at + opening.width - inset)];
    const [low, high] = [
      Math.max(0, opening.sill - line.bottom),
      Math.min(line.height, opening.sill + opening.height - line.bottom),
    ];
    return left < right && low < high
      ? [{ opening: opening.mark, from: inches(left), to: inches(right), bottom: inches(low), top: inches(high) }]
      : [];
  });
  const full = to - from === 48;
  return {
    id,
    from: inches(from),
    to: inches(to),
    kind: 'straight',
    sku: 'ST6',
    hand: null,
    why: full ? 'full' : 'closure',
    inside: false,
    counted: true,
    junction: null,
    pieceLength: inches(to) - inches(from),
    cutEnds: full ? 0 : 1,
    webs: [],
    slope: null,
    notches,
  };
}

const cornerPiece = (id: string, from: Nm, to: Nm, hand: 'left' | 'right', at: string, short: boolean): Piece => ({
  id,
  from: inches(from),
  to: inches(to),
  kind: 'corner',
  sku: hand === 'left' ? 'SQ6-L' : 'SQ6-R',
  hand,
  why: short ? 'leg-short' : 'leg-long',
  inside: false,
  counted: true,
  junction: at,
  pieceLength: inches(59),
  cutEnds: 0,
  webs: null,
  slope: null,
  notches: [],
});

function stripOf(sketch: DrawnWall, lines: readonly Line[], after: number): LaidWall['strips'][number] {
  const below = lines[after - 1] as Line;
  const bottom = below.bottom + below.height;
  const cuts = (sketch.openings ?? [])
    .filter((opening) => opening.sill < bottom + STRIP && opening.sill + opening.height > bottom)
    .sort((a, b) => a.at - b.at);
  const edges = [-HALF, ...cuts.flatMap((opening) => [opening.at, opening.at + opening.width]), sketch.length + HALF];
  const runs = [];
  for (let i = 0; i + 1 < edges.length; i += 2)
    runs.push({ from: inches(edges[i] as number), to: inches(edges[i + 1] as number) });
  return { afterCourse: after, bottom: inches(bottom), height: inches(STRIP), runs, sku: 'HS6', pieces: [] };
}

const otherWall = (wall: LaidWall, mark: string): LaidWall => ({ ...wall, mark, openings: [], courses: [], strips: [] });

function junctionsOf(sketch: DrawnWall, start: string, end: string, turn: number): Junction[] {
  const all = Array.from({ length: sketch.courses }, (_, i) => i + 1);
  const of = (id: string, kind: string, other: string): Junction => {
    if (kind === 'corner')
      return junction({ id, kind: 'corner', turn, walls: [other, sketch.mark], unit: 'corner', sku: 'SQ6', courses: all });
    if (kind === 'free') return junction({ id, kind: 'free-end', walls: [sketch.mark], courses: all });
    return junction({
      id,
      kind: 'tee',
      turn: 90,
      walls: ['T', sketch.mark],
      courses: all,
      tee: { through: 'T', branch: sketch.mark, cutFrom: inches(60), cutTo: inches(66), side: 'left' },
    });
  };
  return [of('S1-J1', start, 'D'), of('S1-J2', end, 'B')];
}

/** A title block with every caution in it: the fullest one there is. */
export const SHEET_HEADER: SheetHeader = {
  job: 'J-000123',
  jobName: 'Harbour clinic, block B',
  revision: 2,
  supplier: 'Heron Form Supply (demo)',
  caution: CAUTIONS.join(' '),
};
