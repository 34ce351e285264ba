import { finding, type Finding } from '../evidence/finding.js';
import { gridCoreThickness } from '../engineering/irc-2018/grid-core-thickness.js';
import { toMm, type Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import type { Opening, Schedule, Storey } from '../schedule/schedule.js';
import { walkEnd } from './axes.js';
import type { BondMemory } from './bond.js';
import { bondBreaks } from './bond-breaks.js';
import { orderOf } from './concrete.js';
import { alreadyLaid } from './laid-below.js';
import type { LaidCoreChange, LaidStorey } from './laid.js';
import { laidJunctions } from './laid-junctions.js';
import { mergedLevels } from './laid-levels.js';
import { laidWalls } from './laid-walls.js';
import { coreChangesByMark, planLevels, type Level } from './levels.js';
import { heightFindings, lineFindings } from './line-findings.js';
import { UNSETTLED_SKU, type CoursePiece, type CoursePieces } from './line-pieces.js';
import { slopeShape, type SlopeShape } from './slope-cutting.js';
import { planFindings } from './plan-findings.js';
import { gableFindings } from './gable-findings.js';
import { gablesByMark } from './gables.js';
import { radiusFindings } from './radius-findings.js';
import { laidSoFar, layStorey, NOTHING_BELOW, runContext, type DrawnGables, type LineResult } from './storey-layout.js';
import { wallsOf } from './storey-plan.js';
import type { BondBreak, Takeoff } from './takeoff.js';
import { planUnits, unitFindings } from './unit-findings.js';
import { orderUnits, type CutPlace, type PieceOrder } from './units.js';
import { withStoreysAbove } from './storeys-above.js';
import { wallConflicts } from './wall-conflicts.js';

interface LevelResult {
  readonly level: Level;
  readonly lines: readonly LineResult[];
  /** Of ledges and taper tops, before anything is laid. */
  readonly planned: readonly Finding[];
}

interface StoreyResult {
  readonly storey: Storey;
  /** Bottom up; one where no core changes up a wall. */
  readonly levels: readonly LevelResult[];
  readonly changes: ReadonlyMap<string, readonly LaidCoreChange[]>;
  readonly findings: readonly Finding[];
}

const linesOf = ({ levels }: StoreyResult): LineResult[] => levels.flatMap(({ lines }) => lines);

/** Lays a storey level by level, each over what stands below it. */
function layLevels(storey: Storey, schedule: Schedule, openings: ReadonlyMap<string, readonly Opening[]>, range: FormRange, gables: DrawnGables, memory: BondMemory): StoreyResult | null {
  const walls = wallsOf(schedule, storey.id);
  if (walls.length === 0) return null;
  const { levels, changes, findings } = planLevels(storey, walls, coreChangesByMark(schedule), range);
  let below = NOTHING_BELOW;
  const laid = levels.map((bare): LevelResult => {
    const { units, findings: planned } = planUnits(schedule.features, (mark) => gables.has(mark), bare.plan, levels.map(({ plan }) => plan), range);
    const level = { ...bare, units };
    const lines = layStorey(level, openings, range, gables, below, memory);
    below = laidSoFar(lines, below);
    return { level, lines, planned };
  });
  return { storey, levels: laid, changes: new Map([...changes].map(([wall, own]) => [walls[wall]!.mark, own])), findings };
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

function laidStorey({ storey, levels, changes }: StoreyResult, cuts: ReadonlyMap<string, CutPlace>, order: ReadonlyMap<string, number>, range: FormRange, gables: DrawnGables): LaidStorey {
  const laid = levels.map(({ level, lines }) => {
    const context = runContext(level, range, gables);
    const walls = lines.flatMap((line) => laidWalls(line, cuts, context));
    return { walls, junctions: laidJunctions(level.plan, walls, range) };
  });
  const { walls, junctions } = mergedLevels(laid, changes);
  walls.sort((a, b) => order.get(a.mark)! - order.get(b.mark)!);
  return { id: storey.id, grade: storey.grade, storeyAbove: storey.storeyAbove, onFooting: storey.on === null, walls, junctions };
}

/** Findings are told in the order of the schedule's walls, those of no wall first. */
const rowOf = (found: Finding, rows: ReadonlyMap<string, number>): number => (found.wall === null ? -1 : (rows.get(found.wall) ?? -1));

/** What the schedule asks for and the take-off does not lay: a person decides, nothing is left out in silence. */
function notLaid(schedule: Schedule, range: FormRange): Finding[] {
  return [...range.cores.values()].flatMap(({ code, family, width }) => {
    if (family === 'flat' || gridCoreThickness(family, width) !== null) return [];
    const changed = schedule.features.find((feature) => feature.kind === 'core-change' && feature.core === code);
    const wall = schedule.walls.find((candidate) => candidate.core === code || candidate.mark === changed?.wall);
    return wall ? [finding('outside-method', { storey: wall.storey, wall: wall.mark, numbers: { feature: 'concrete of a grid core', core: code }, source: 'take-off' })] : [];
  });
}

/** What to add to a station on a wall's axis in a level to have it on the axis of the wall's foot. */
function aboveFoot({ levels }: StoreyResult, level: Level, mark: string): Nm {
  if (levels.length === 1) return 0;
  const index = level.plan.walls.findIndex(({ wall }) => wall.mark === mark);
  const foot = levels.find((candidate) => candidate.level.plan.stacks[index]!.layers.length > 0)!.level;
  const startOffset = ({ plan }: Level): Nm => plan.walls[index]!.back[walkEnd(plan.walls[index]!.reversed, 'start')];
  return foot === level ? 0 : startOffset(level) - startOffset(foot);
}

/** Broken bonds of a line, of the gables on it, and of its first course over the level below. */
function lineBreaks(result: LineResult, storey: string, range: FormRange): BondBreak[] {
  const { line, courses, below } = result;
  const under: CoursePieces = { run: alreadyLaid(below), pieces: [], joints: below.map((at) => ({ at, kind: 'module' })) };
  return [
    ...bondBreaks({ line, courses: [under, ...courses] }, storey, range, 1),
    ...result.gables.flatMap((gable) => bondBreaks({ line: gable.line, courses: [gable.under, ...gable.courses] }, storey, range, 1)),
  ];
}

/** A finding that two levels share is told once, with the numbers of the lower one. */
const placeOf = ({ code, walls, course, numbers }: Finding): string => `${code}/${walls.join(' ')}/${course}/${numbers.opening ?? ''}/${numbers.beside ?? numbers.cornerAt ?? ''}`;

function storeyFindings(result: StoreyResult, range: FormRange): Finding[] {
  const { levels, findings } = result;
  const told = new Set<string>();
  const found = levels.flatMap(({ level, lines, planned }, index) => {
    const { plan } = level;
    const own = [...planFindings(plan), ...wallConflicts(plan), ...(index === 0 ? heightFindings(plan, range) : []), ...lines.flatMap((line) => [...lineFindings(line, plan, range), ...gableFindings(line, plan, range)])];
    const fresh = own.filter((each) => !told.has(placeOf(each)));
    own.forEach((each) => told.add(placeOf(each)));
    const units = [...planned, ...lines.flatMap((line) => unitFindings(line, plan, range))];
    return [...fresh, ...units].map((each) => (index === 0 || each.wall === null || each.atMm === null ? each : { ...each, atMm: each.atMm + toMm(aboveFoot(result, level, each.wall)) }));
  });
  const curves = radiusFindings(levels.flatMap(({ level, lines }) => lines.map((line) => ({ plan: level.plan, line }))), range);
  return [...found, ...curves, ...findings];
}

/**
 * Lays every wall of a schedule course by course and counts what it takes.
 *
 * @param schedule  canonical schedule, every reference checked
 * @param range     the supplier's forms; must have every core the schedule names
 * @param memory    of lines laid before with this range: jobs that share one are laid faster, and the same
 * @returns the laid job with stations from the user's own `from`, units to buy with their lower bound, concrete, cut list, findings
 * @throws RangeError for a core the range does not have or a wall below one course (both are refused when the schedule is read)
 */
export function takeOff(schedule: Schedule, range: FormRange, memory: BondMemory = new Map()): Takeoff {
  const gables = gablesByMark(schedule);
  const openings = new Map<string, Opening[]>();
  for (const opening of schedule.openings) openings.set(opening.wall, [...(openings.get(opening.wall) ?? []), opening]);
  const storeys = schedule.storeys
    .flatMap((storey) => layLevels(storey, schedule, openings, range, gables, memory) ?? []);
  const order = orderUnits(storeys.flatMap((result) => linesOf(result).flatMap((line) => piecesToOrder(line, result.storey.id, range))), range, schedule.offcuts);
  const rows = new Map(schedule.walls.map((wall, index) => [wall.mark, index]));
  const laid = withStoreysAbove(storeys.map((result) => laidStorey(result, order.cutOf, rows, range, gables)), schedule.storeys, range);
  const findings = storeys.flatMap((result) => storeyFindings(result, range));
  return {
    laid: { storeys: laid },
    units: order.units,
    cuts: order.cuts,
    bondBreaks: storeys.flatMap((result) => result.levels.flatMap(({ level, lines }) => lines.flatMap((line) => lineBreaks(line, result.storey.id, range)).map((found) => ({ ...found, at: found.at + aboveFoot(result, level, found.wall) })))),
    concrete: laid.map((storey) => orderOf(storey.id, storey.walls.reduce((sum, wall) => sum + wall.concreteNm3, 0n), range)),
    findings: [...findings, ...notLaid(schedule, range)].sort((a, b) => rowOf(a, rows) - rowOf(b, rows)),
  };
}
