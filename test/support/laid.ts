import { inches, type Nm } from '../../src/domain/quantity/length.js';
import type { Core } from '../../src/domain/range/range.js';
import type { HeadJoint, Junction, LaidCourse, LaidJob, LaidStorey, LaidStrip, LaidWall, Notch, Piece } from '../../src/domain/takeoff/laid.js';
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
}

export interface StoreySketch {
  readonly id?: string;
  readonly onFooting?: boolean;
  readonly walls: readonly WallSketch[];
  readonly junctions?: readonly Junction[];
}

export const laidJob = (...storeys: readonly StoreySketch[]): LaidJob => ({ storeys: storeys.map(laidStorey) });

function laidStorey({ id = 'S1', onFooting = true, walls, junctions = [] }: StoreySketch): LaidStorey {
  return { id, grade: 'above', storeyAbove: false, onFooting, walls: walls.map((wall) => laidWall(wall, id)), junctions };
}

function laidWall(sketch: WallSketch, storey: string): LaidWall {
  const { mark = 'A', core = CORES[6], length, courses, strips = [], x = 0, reversed = false } = sketch;
  const [near, far] = [{ x: inches(x), y: 0 }, { x: inches(x + length), y: 0 }];
  const laid = laidCourses(courses, length);
  const height = laid.reduce((sum, course) => sum + course.height, 0) + strips.reduce((sum, strip) => sum + strip.height, 0);
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
    stack: { courses: laid.length, strips: strips.length, ripped: null, height, deviation: 0 },
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
