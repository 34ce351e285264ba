import type { CheckReport } from '../../domain/checks/check-report.js';
import type { Finding } from '../../domain/evidence/finding.js';
import type { Measurement } from '../../domain/pipeline.js';
import type { Nm } from '../../domain/quantity/length.js';
import { toMm } from '../../domain/quantity/length.js';
import { coreOfCourse } from '../../domain/takeoff/index.js';
import { featureAnswers } from './feature-answers.js';
import type { LaidCourse, LaidStrip, LaidWall, Stack } from '../../domain/takeoff/laid.js';
import type { CutLine } from '../../domain/takeoff/takeoff.js';
import type { FindingAnswer } from './findings.schemas.js';
import type { CheckAnswer, TakeoffAnswer, WallAnswer } from './takeoffs.schemas.js';

const NM2_PER_M2 = 1e18;
const NM3_PER_M3 = 1e27;
const M3_PER_YD3 = 0.764554857984;

export const m2 = (nm2: bigint): number => Number(nm2) / NM2_PER_M2;
export const m3 = (nm3: bigint): number => Number(nm3) / NM3_PER_M3;
export const yd3 = (nm3: bigint): number => m3(nm3) / M3_PER_YD3;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const sumBig = (values: readonly bigint[]): bigint => values.reduce((total, value) => total + value, 0n);
const orNull = (value: Nm | null): number | null => (value === null ? null : toMm(value));

export type JobWide = Pick<Measurement, 'engine' | 'range' | 'materials' | 'instructions'> & {
  readonly takeoff: Omit<Measurement['takeoff'], 'cuts' | 'findings'>;
};

/** The take-off as the contract shows it, without its walls' courses. */
export function takeoffAnswer(revision: number, measurement: JobWide): TakeoffAnswer {
  const { takeoff } = measurement;
  const storeys = takeoff.laid.storeys;
  return {
    revision,
    engine: measurement.engine,
    range: measurement.range,
    totals: totalsOf(takeoff),
    units: takeoff.units.map(({ because: _, ...unit }) => unit),
    materials: measurement.materials.map(({ sku, kind, quantity, unit, because }) => ({
      sku,
      kind,
      quantity,
      unit,
      because: because.map((each) => ({ ...each, atMm: [...(each.atMm ?? [])] })),
    })),
    walls: storeys.flatMap((storey) => storey.walls.map((wall) => wallAnswer(wall))),
    junctions: storeys.flatMap((storey) =>
      storey.junctions.map(({ id, kind, turn, walls, sku }) => ({ id, kind, turn, walls: [...walls], sku })),
    ),
    concrete: takeoff.concrete.map(({ storey, nm3, orderYd3 }) => ({ storey, concreteM3: m3(nm3), orderYd3 })),
    bondBreaks: takeoff.bondBreaks.map(({ storey, wall, course, at, distance, cause }) => ({
      storey,
      wall,
      course,
      atMm: toMm(at),
      distanceMm: toMm(distance),
      cause,
    })),
    instructions: [...measurement.instructions],
  };
}

function totalsOf(takeoff: JobWide['takeoff']): TakeoffAnswer['totals'] {
  const walls = takeoff.laid.storeys.flatMap((storey) => storey.walls);
  const concrete = sumBig(takeoff.concrete.map(({ nm3 }) => nm3));
  return {
    forms: sum(takeoff.units.map(({ bought }) => bought)),
    concreteM3: m3(concrete),
    concreteYd3: yd3(concrete),
    orderYd3: sum(takeoff.concrete.map(({ orderYd3 }) => orderYd3)),
    faceM2: m2(sumBig(walls.map(({ faceNm2 }) => faceNm2))),
    openingM2: m2(sumBig(walls.map(({ openingNm2 }) => openingNm2))),
  };
}

export function wallAnswer(wall: LaidWall, detail = false): WallAnswer {
  return {
    mark: wall.mark,
    storey: wall.storey,
    core: wall.core.code,
    lengthMm: toMm(wall.length),
    startOffsetMm: toMm(wall.startOffset),
    trimStartMm: toMm(wall.trimStart),
    trimEndMm: toMm(wall.trimEnd),
    stack: stackAnswer(wall.stack),
    alternatives: wall.alternatives.map(stackAnswer),
    concreteM3: m3(wall.concreteNm3),
    ...featureAnswers(wall),
    ...(detail ? { courses: wall.courses.map((course) => courseAnswer(course, wall)), strips: wall.strips.map(stripAnswer) } : {}),
  };
}

const stackAnswer = (stack: Stack): WallAnswer['stack'] => ({
  courses: stack.courses,
  strips: stack.strips,
  rippedMm: orNull(stack.ripped),
  heightMm: toMm(stack.height),
  deviationMm: toMm(stack.deviation),
});

const courseAnswer = (course: LaidCourse, wall: LaidWall): NonNullable<WallAnswer['courses']>[number] => ({
  n: course.n,
  core: coreOfCourse(wall, course.n).code,
  fromMm: toMm(course.from),
  toMm: toMm(course.to),
  bottomMm: toMm(course.bottom),
  heightMm: toMm(course.height),
  voids: course.voids.map(({ from, to, opening }) => ({ fromMm: toMm(from), toMm: toMm(to), opening })),
  pieces: course.pieces.map(({ id, from, to, kind, sku, hand, why, inside, pieceLength, slope }) => ({
    id,
    fromMm: toMm(from),
    toMm: toMm(to),
    kind,
    sku,
    hand,
    why,
    inside,
    lengthMm: toMm(pieceLength),
    slope: slope && {
      fromHeightMm: toMm(slope.fromHeight),
      toHeightMm: toMm(slope.toHeight),
      peakAtMm: orNull(slope.peak?.at ?? null),
      peakHeightMm: orNull(slope.peak?.height ?? null),
    },
  })),
});

const stripAnswer = (strip: LaidStrip): NonNullable<WallAnswer['strips']>[number] => ({
  afterCourse: strip.afterCourse,
  bottomMm: toMm(strip.bottom),
  heightMm: toMm(strip.height),
  sku: strip.sku,
  runs: strip.runs.map(({ from, to }) => ({ fromMm: toMm(from), toMm: toMm(to) })),
});

export const cutAnswer = (cut: CutLine): NonNullable<TakeoffAnswer['cuts']>[number] => ({
  storey: cut.storey,
  sku: cut.sku,
  form: cut.form,
  parts: cut.parts.map(({ piece, offset, length, wall, course, turned }) => ({
    piece,
    offsetMm: toMm(offset),
    lengthMm: toMm(length),
    wall,
    course,
    turned,
  })),
  offcutMm: toMm(cut.offcut),
});

export const findingAnswer = ({ code, severity, storey, wall, course, atMm, numbers, source }: Finding): FindingAnswer => ({
  code,
  severity,
  storey,
  wall,
  course,
  atMm,
  numbers: { ...numbers },
  source,
});

export const checkAnswer = (report: CheckReport): CheckAnswer => ({
  check: report.check,
  storey: report.storey,
  core: report.core,
  results: { ...report.results },
  places: report.places.map((place) => ({ ...place, results: { ...place.results } })),
  trace: [...report.trace],
  source: report.source,
  defaults: [...report.defaults],
  notes: [...report.notes],
  findings: report.findings.map(findingAnswer),
});
