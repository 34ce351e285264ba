import { inches, type Nm } from '../../src/domain/quantity/length.js';
import type { Core } from '../../src/domain/range/range.js';
import type {
  HeadJoint, Junction, LaidArc, LaidCarried, LaidCoreChange, LaidCourse, LaidGable, LaidJob, LaidLedge, LaidOpening, LaidSlope, LaidStorey, LaidStrip, LaidTaper, LaidWall, Notch, Piece,
} from '../../src/domain/takeoff/laid.js';
import { CORES } from './rule-range.js';

/**
 * Small laid jobs for tests of what reads them. Every length is given in inches; what a test does not say is left empty, so a
 * literal shows just what the rule looks at.
 */
export interface CourseSketch {
  readonly height?: number;
  readonly ripped?: boolean;
  readonly from?: number;
  readonly to?: number;
  /** [from, to] of openings of the full course height. */
  readonly voids?: readonly (readonly [number, number])[];
  readonly pieces?: readonly Piece[];
  readonly joints?: readonly HeadJoint[];
}

export interface WallSketch {
  readonly mark?: string;
  /** Station of the wall's first node on the x axis. */
  readonly x?: number;
  /** Junctions at the wall's own ends. */
  readonly start?: string;
  readonly end?: string;
  /** Drawn against the walking direction: its start lies at x + length. */
  readonly reversed?: boolean;
  readonly core?: Core;
  readonly length: number;
  readonly courses: readonly CourseSketch[];
  readonly strips?: readonly LaidStrip[];
  /** Courses of `courses` that stand under a gable's slope, above the stack. */
  readonly gableCourses?: number;
  /** What the wall has besides: a curve, a gable, ledges, a taper, changes of the core, openings, what it carries. */
  readonly features?: Partial<Pick<LaidWall, 'arc' | 'gable' | 'ledges' | 'taper' | 'coreChanges' | 'openings' | 'carries'>>;
}

export interface StoreySketch {
  readonly id?: string;
  readonly onFooting?: boolean;
  readonly storeyAbove?: boolean;
  readonly walls: readonly WallSketch[];
  readonly junctions?: readonly Junction[];
}

export const laidJob = (...storeys: readonly StoreySketch[]): LaidJob => ({ storeys: storeys.map(laidStorey) });

function laidStorey({ id = 'S1', onFooting = true, storeyAbove = false, walls, junctions = [] }: StoreySketch): LaidStorey {
  return { id, grade: 'above', storeyAbove, onFooting, walls: walls.map((wall) => laidWall(wall, id)), junctions };
}

function laidWall(sketch: WallSketch, storey: string): LaidWall {
  const { mark = 'A', core = CORES[6], length, courses, strips = [], x = 0, reversed = false } = sketch;
  const [near, far] = [{ x: inches(x), y: 0 }, { x: inches(x + length), y: 0 }];
  const laid = laidCourses(courses, length);
  const stacked = laid.slice(0, laid.length - (sketch.gableCourses ?? 0));
  const height = stacked.reduce((sum, course) => sum + course.height, 0) + strips.reduce((sum, strip) => sum + strip.height, 0);
  return {
    mark,
    storey,
    core,
    thickness: core.width + inches(5),
    base: 0,
    askedHeight: height,
    length: inches(length),
    startOffset: 0,
    dimensionLength: inches(length),
    trimStart: 0,
    trimEnd: 0,
    outside: reversed ? 'left' : 'right',
    axisFrom: reversed ? far : near,
    axisTo: reversed ? near : far,
    stack: { courses: stacked.length, strips: strips.length, ripped: null, height, deviation: 0 },
    alternatives: [],
    courses: laid,
    strips,
    openings: [],
    arc: null,
    gable: null,
    ledges: [],
    taper: null,
    coreChanges: [],
    carries: [],
    ...sketch.features,
    startJunction: sketch.start ?? `${storey}-${mark}-start`,
    endJunction: sketch.end ?? `${storey}-${mark}-end`,
    concreteNm3: 0n,
    faceNm2: 0n,
    openingNm2: 0n,
  };
}

function laidCourses(sketches: readonly CourseSketch[], length: number): readonly LaidCourse[] {
  let bottom = 0;
  return sketches.map((sketch, index) => {
    const height = inches(sketch.height ?? 16);
    const course: LaidCourse = {
      n: index + 1,
      bottom,
      height,
      ripped: sketch.ripped ?? false,
      top: index === sketches.length - 1,
      from: inches(sketch.from ?? 0),
      to: inches(sketch.to ?? length),
      voids: (sketch.voids ?? []).map(([from, to]) => ({ from: inches(from), to: inches(to), opening: 'W1' })),
      pieces: sketch.pieces ?? [],
      headJoints: sketch.joints ?? [],
    };
    bottom += height;
    return course;
  });
}

/** The same course several times. */
export const times = (count: number, sketch: CourseSketch = {}): readonly CourseSketch[] => Array.from({ length: count }, () => sketch);

export const joint = (at: number, kind: HeadJoint['kind'] = 'module'): HeadJoint => ({ at: inches(at), kind });

let issued = 0;

function piece(from: Nm, to: Nm, rest: Partial<Piece> & Pick<Piece, 'kind' | 'sku' | 'why'>): Piece {
  issued += 1;
  return {
    id: `piece-${issued}`, from, to, hand: null, inside: false, counted: true, junction: null,
    pieceLength: to - from, cutEnds: 0, webs: null, slope: null, notches: [], ...rest,
  };
}

/** A straight piece from station to station with webs at the stations given. */
export const straight = (from: number, to: number, webs: readonly number[], rest: Partial<Piece> = {}): Piece =>
  piece(inches(from), inches(to), { kind: 'straight', sku: 'ST6', why: 'full', webs: webs.map(inches), ...rest });

export const closure = (at: number, why: 'end' | 'jamb', rest: Partial<Piece> = {}): Piece =>
  piece(inches(at), inches(at + 2.5), { kind: 'end-closure', sku: 'EC6', why, inside: true, ...rest });

/** One wall's part of a corner unit; give both parts one id. */
export const leg = (from: number, to: number, rest: Pick<Piece, 'id' | 'kind' | 'sku' | 'hand' | 'junction'> & Partial<Piece>): Piece =>
  piece(inches(from), inches(to), { why: 'leg-long', ...rest });

export const notch = (opening: string, from: number, to: number, bottom: number, top: number): Notch => ({
  opening, from: inches(from), to: inches(to), bottom: inches(bottom), top: inches(top),
});

export const strip = (afterCourse: number, runs: readonly (readonly [number, number])[]): LaidStrip => ({
  afterCourse,
  bottom: inches(16 * afterCourse),
  height: inches(3),
  runs: runs.map(([from, to]) => ({ from: inches(from), to: inches(to) })),
  sku: 'HS6',
  pieces: [],
});

export const junction = (rest: Pick<Junction, 'id' | 'kind' | 'walls'> & Partial<Junction>): Junction => ({
  turn: 0, sku: null, unit: null, at: { x: 0, y: 0 }, courses: [], tee: null, units: [], ...rest,
});

export const opening = (mark: string, at: readonly [number, number], heights: readonly [number, number], lining: LaidOpening['lining'] = 'buck'): LaidOpening => ({
  mark, from: inches(at[0]), to: inches(at[1]), sill: inches(heights[0]), head: inches(heights[1]), lining, formsFrom: inches(at[0]), formsTo: inches(at[1]),
});

const spans = (each: readonly (readonly [number, number])[]): { from: Nm; to: Nm }[] => each.map(([from, to]) => ({ from: inches(from), to: inches(to) }));

/** A ledge outside, meeting another wall's at the ends named. */
export const laidLedge = (course: number, over: readonly (readonly [number, number])[], mitres: { readonly start?: boolean; readonly end?: boolean } = {}): LaidLedge => ({
  face: 'outside', asked: inches(16 * course), bearing: inches(16 * course), course, projection: inches(6), spans: spans(over),
  mitreStart: mitres.start ?? false, mitreEnd: mitres.end ?? false, concreteMm3: 0,
});

/** A taper top; `upliftIn2` is what of its faces leans over the concrete, in plan. */
export const laidTaper = (faces: LaidTaper['faces'], course: number, over: readonly (readonly [number, number])[], upliftIn2 = 0): LaidTaper => ({
  faces, course, seatGain: inches(3), spans: spans(over), concreteMm3: 0, upliftMm2: upliftIn2 * 25.4 ** 2,
});

/** A gable by the runs of its two slopes: [run, length] each, from the wall's start to its end; no run leaves a slope out. */
export const laidGable = (rise: number, slopes: readonly (readonly [number, number])[], courses: number): LaidGable => {
  const [near, far] = [slopes[0]?.[0] ?? 0, slopes[1]?.[0] ?? 0];
  const slope = (from: number, run: number, length: number, rises: LaidSlope['rises']): LaidSlope => ({
    from: inches(from), to: inches(from + run), rises, length: inches(length), degrees: (Math.atan2(rise, run) * 180) / Math.PI, capMm2: 0,
  });
  const both = [slope(0, near, slopes[0]?.[1] ?? 0, 'with-stations'), slope(near, far, slopes[1]?.[1] ?? 0, 'against-stations')];
  return { rise: inches(rise), peakAt: inches(near), courses, slopes: both.filter(({ from, to }) => to > from) };
};

/** A curve of chords of 8 in, banded over `band`. */
export const laidArc = (band: number, chords: number, chord: number | null = 8): LaidArc => ({
  turns: 'left', centre: { x: 0, y: 0 }, axisRadius: inches(120), concaveRadius: inches(114.5), chord: chord === null ? null : inches(chord),
  lastChord: chord === null ? null : inches(chord), chords, gap: inches(0.7), bandLength: inches(band),
});

/** Another core from a course up; `shift` is how far its axis lies towards the inside. */
export const coreChange = (course: number, core: Core, flush: LaidCoreChange['flush'], shift: number, seats: readonly [number, number] = [0, 0]): LaidCoreChange => ({
  course, at: inches(16 * (course - 1)), core, flush, axisShift: inches(shift), seatOutside: inches(seats[0]), seatInside: inches(seats[1]),
});

export const carried = (from: number, to: number, wall = 'U'): LaidCarried => ({
  storey: 'S2', wall, from: inches(from), to: inches(to), core: '6', seatOutside: 0, seatInside: 0,
});

/** Two walls that go straight on at a mark: one line of forms. The second may be drawn the other way round. */
export function parted(first: Omit<WallSketch, 'mark'>, second: Omit<WallSketch, 'mark'>): StoreySketch {
  const meeting = second.reversed ? { end: 'M' } : { start: 'M' };
  return {
    walls: [
      { ...first, mark: 'A', end: 'M' },
      { ...second, ...meeting, mark: 'B', x: first.length },
    ],
    junctions: [junction({ id: 'M', kind: 'straight', walls: ['A', 'B'], courses: [1] })],
  };
}
