import { finding, type Finding } from '../evidence/finding.js';
import { toMm, type Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import type { Opening, Schedule, Storey } from '../schedule/schedule.js';
import { bondBreaks } from './bond-breaks.js';
import { orderOf } from './concrete.js';
import type { Junction, LaidStorey } from './laid.js';
import { laidJunctions } from './laid-junctions.js';
import { laidWalls } from './laid-walls.js';
import { heightFindings, lineFindings } from './line-findings.js';
import { UNSETTLED_SKU, type CoursePiece, type CoursePieces } from './line-pieces.js';
import { slopeShape, type SlopeShape } from './slope-cutting.js';
import { planFindings } from './plan-findings.js';
import { gableFindings } from './gable-findings.js';
import { gablesByMark } from './gables.js';
import { layStorey, runContext, type DrawnGables, type LineResult } from './storey-layout.js';
import { planStorey, straightWallsOf, type StoreyPlan } from './storey-plan.js';
import type { Takeoff } from './takeoff.js';
import { orderUnits, type CutPlace, type PieceOrder } from './units.js';
import { wallConflicts } from './wall-conflicts.js';

interface StoreyResult {
  readonly plan: StoreyPlan;
  readonly lines: readonly LineResult[];
}

/** Pieces to buy or saw of one line: every counted piece once, in the wall where it begins. */
function piecesToOrder(result: LineResult, storey: string, range: FormRange): PieceOrder[] {
  const { walls, core } = result.line;
  const wallAt = (at: number): string => (walls.findLast(({ from }) => at >= from) ?? walls[0]!).wall.wall.mark;
  const ordered = ({ run, pieces: laid }: CoursePieces, markAt: (at: Nm) => string, shape: (piece: CoursePiece) => SlopeShape | null): PieceOrder[] =>
    laid
      .filter((piece) => piece.counted && piece.sku !== UNSETTLED_SKU)
      .map((piece): PieceOrder => ({
        id: piece.id,
        sku: piece.sku,
        kind: piece.kind,
        core: core.code,
        hand: piece.hand,
        storey,
        wall: markAt(piece.from),
        course: run.n,
        length: piece.cutLength,
        whole: piece.kind === 'straight' && run.ripped,
        slope: shape(piece),
      }));
  const pieces = [
    ...result.courses.flatMap((course) => ordered(course, wallAt, () => null)),
    ...result.gables.flatMap(({ wall, gable, line, courses }) =>
      courses.flatMap((course) => {
        const bottom = course.run.bottom - line.stack.stack.height;
        const shape = (piece: CoursePiece): SlopeShape | null => (piece.kind === 'straight' ? slopeShape(gable, piece.from, piece.to, bottom, course.run.height) : null);
        return ordered(course, () => wall.wall.mark, shape);
      }),
    ),
  ];
  const closures = result.strips.flatMap(({ afterCourse, height, closures: stations }) =>
    stations.map((at, index): PieceOrder => ({
      id: `${storey}.${walls[0]!.wall.wall.mark}.s${afterCourse}.c${index}`,
      sku: `${range.closure.prefix}${core.code}`,
      kind: 'end-closure',
      core: core.code,
      hand: null,
      storey,
      wall: wallAt(Math.max(0, at)),
      course: afterCourse,
      length: height,
      whole: false,
      slope: null,
    })),
  );
  const strips = result.strips.flatMap(({ afterCourse, runs }) =>
    runs.flatMap(({ from, pieces: lengths }, run) =>
      lengths.map((length, index): PieceOrder => ({
        id: `${storey}.${walls[0]!.wall.wall.mark}.s${afterCourse}.${run + 1}.${index + 1}`,
        sku: `${range.stripPrefix ?? ''}${core.code}`,
        kind: 'strip',
        core: core.code,
        hand: null,
        storey,
        wall: wallAt(Math.max(0, from)),
        course: afterCourse,
        length,
        whole: false,
        slope: null,
      })),
    ),
  );
  return [...pieces, ...closures, ...strips];
}

function laidStorey(storey: Storey, { plan, lines }: StoreyResult, cuts: ReadonlyMap<string, CutPlace>, order: ReadonlyMap<string, number>, range: FormRange, gables: DrawnGables): LaidStorey {
  const context = runContext(plan, range, gables);
  const walls = lines.flatMap((line) => laidWalls(line, cuts, context)).sort((a, b) => order.get(a.mark)! - order.get(b.mark)!);
  const junctions: Junction[] = laidJunctions(plan, walls, range);
  return { id: storey.id, grade: storey.grade, storeyAbove: storey.storeyAbove, onFooting: storey.on === null, walls, junctions };
}

/** Findings are told in the order of the schedule's walls, those of no wall first. */
const rowOf = (found: Finding, rows: ReadonlyMap<string, number>): number => (found.wall === null ? -1 : (rows.get(found.wall) ?? -1));

/** What the schedule asks for and the straight-wall take-off does not lay: a person decides, nothing is left out in silence. */
function notLaid(schedule: Schedule, range: FormRange): Finding[] {
  const arcs = schedule.walls
    .filter((wall) => wall.arc !== null)
    .map((wall) => finding('outside-method', { storey: wall.storey, wall: wall.mark, numbers: { feature: 'arc', radiusMm: toMm(wall.arc!.radius) }, source: 'take-off' }));
  const storeyOf = new Map(schedule.walls.map((wall) => [wall.mark, wall.storey]));
  const features = schedule.features.filter(({ kind }) => kind !== 'gable').map((feature) =>
    finding('outside-method', { storey: storeyOf.get(feature.wall) ?? null, wall: feature.wall, numbers: { feature: feature.kind }, source: 'take-off' }),
  );
  const grids = [...range.cores.values()].flatMap(({ code, family }) => {
    const wall = family === 'flat' ? undefined : schedule.walls.find((candidate) => candidate.core === code);
    return wall ? [finding('outside-method', { storey: wall.storey, wall: wall.mark, numbers: { feature: 'concrete of a grid core', core: code }, source: 'take-off' })] : [];
  });
  return [...arcs, ...features, ...grids];
}

/**
 * Lays every straight wall of a schedule course by course and counts what it takes.
 *
 * @param schedule  canonical schedule, every reference checked
 * @param range     the supplier's forms; must have every core the schedule names
 * @returns the laid job with stations from the user's own `from`, units to buy with their lower bound, concrete, cut list, findings
 * @throws RangeError for a core the range does not have or a wall below one course (both are refused when the schedule is read)
 */
export function takeOff(schedule: Schedule, range: FormRange): Takeoff {
  const gables = gablesByMark(schedule);
  const openings = new Map<string, Opening[]>();
  for (const opening of schedule.openings) openings.set(opening.wall, [...(openings.get(opening.wall) ?? []), opening]);
  const storeys = schedule.storeys
    .map((storey) => ({ storey, walls: straightWallsOf(schedule, storey.id) }))
    .filter(({ walls }) => walls.length > 0)
    .map(({ storey, walls }) => {
      const plan = planStorey(storey, walls, range);
      return { storey, plan, lines: layStorey(plan, openings, range, gables) };
    });
  const order = orderUnits(storeys.flatMap(({ storey, lines }) => lines.flatMap((line) => piecesToOrder(line, storey.id, range))), range);
  const rows = new Map(schedule.walls.map((wall, index) => [wall.mark, index]));
  const laid = storeys.map((result) => laidStorey(result.storey, result, order.cutOf, rows, range, gables));
  const findings = storeys.flatMap(({ plan, lines }) => [
    ...planFindings(plan, schedule.walls.some((wall) => wall.storey === plan.storey.id && wall.arc !== null)),
    ...wallConflicts(plan),
    ...heightFindings(plan, range),
    ...lines.flatMap((line) => [...lineFindings(line, plan, range), ...gableFindings(line, plan, range)]),
  ]);
  return {
    laid: { storeys: laid },
    units: order.units,
    cuts: order.cuts,
    bondBreaks: storeys.flatMap(({ storey, lines }) =>
      lines.flatMap((result) => [
        ...bondBreaks(result, storey.id, range),
        ...result.gables.flatMap(({ line, under, courses }) => bondBreaks({ line, courses: [under, ...courses] }, storey.id, range, 1)),
      ]),
    ),
    concrete: laid.map((storey) => orderOf(storey.id, storey.walls.reduce((sum, wall) => sum + wall.concreteNm3, 0n), range)),
    findings: [...findings, ...notLaid(schedule, range)].sort((a, b) => rowOf(a, rows) - rowOf(b, rows)),
  };
}
