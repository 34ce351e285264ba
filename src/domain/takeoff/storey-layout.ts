import { stockPieces, stockPiecesWithin } from '../cutting/index.js';
import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { Opening } from '../schedule/schedule.js';
import type { BondMemory } from './bond.js';
import { layGables, type GableCourses } from './gable-courses.js';
import { bondsUpright, gableLayers, gableOnAxis, isUpright, type gablesByMark } from './gables.js';
import type { EndName } from '../schedule/line-normalisation.js';
import type { Layer } from './stack.js';
import { compareLengths, layLine, type LaidLine } from './line-layout.js';
import { coursePieces, type CoursePieces } from './line-pieces.js';
import { linesOf, type Line } from './lines.js';
import { openingsOf, type LineOpening } from './openings.js';
import { alreadyLaid, countedJoints } from './laid-below.js';
import type { Level } from './levels.js';
import { layRadius, radiusPieces, radiusStrips } from './radius-walls.js';
import { courseRuns, type CourseRun, type RunContext } from './runs.js';
import { stripsOf, type LineStrip } from './strips.js';

/** One line laid: its courses, strips and openings, all in walking direction. */
export interface LineResult {
  readonly line: Line;
  readonly laid: LaidLine;
  readonly openings: readonly LineOpening[];
  readonly courses: readonly CoursePieces[];
  readonly strips: readonly LineStrip[];
  readonly gables: readonly GableCourses[];
  /** Counted joints of the course of a level below that this line stands on, along the line. */
  readonly below: readonly Nm[];
  readonly arrivingFirst: boolean;
}

/** Gables by mark, as the schedule draws them. */
export type DrawnGables = ReturnType<typeof gablesByMark>;

/** What was laid below a level: counted joints along each wall's dimension line, walking, and which legs came first. */
export interface Below {
  readonly joints: ReadonlyMap<number, readonly Nm[]>;
  readonly arrivingFirst: ReadonlyMap<number, boolean>;
}

export function runContext({ plan, from, to, units }: Level, range: FormRange, drawnGables: DrawnGables = new Map()): RunContext {
  const courses = plan.stacks.map(
    ({ layers }, wall) => new Map(layers.filter((layer) => layer.kind === 'course').map((layer) => [plan.walls[wall]!.wall.base + layer.bottom, layer])),
  );
  const gables = plan.walls.map((wall) => {
    const drawn = drawnGables.get(wall.wall.mark);
    const { stack, layers } = plan.stacks[wall.index]!;
    const top = layers.at(-1);
    return drawn && top && top.bottom + top.height === stack.height ? gableOnAxis(drawn, wall) : null;
  });
  const gableCourse = (wall: number, elevation: Nm, end: EndName): Layer | null => {
    const gable = gables[wall];
    if (!gable) return null;
    const { stack } = plan.stacks[wall]!;
    const above = elevation - plan.walls[wall]!.wall.base;
    const layer = gableLayers(gable.rise, stack, range).find(({ bottom }) => bottom === above);
    const least = plan.joints[wall]![end].kind === 'straight' ? 0 : range.formLength;
    const stands = layer && isUpright(gable, end) && bondsUpright(gable.end - gable.foot, gable.rise, layer.bottom - stack.height, least);
    return stands ? layer : null;
  };
  const topAt = (wall: number, end?: EndName): Nm => {
    const { stack } = plan.stacks[wall]!;
    const gable = gables[wall];
    const { base } = plan.walls[wall]!.wall;
    const built = gable && end ? gableLayers(gable.rise, stack, range).filter(({ bottom }) => gableCourse(wall, base + bottom, end)) : [];
    return base + stack.height + built.reduce((sum, { height }) => sum + height, 0);
  };
  return {
    plan,
    range,
    from,
    to,
    units,
    gableOf: (wall) => gables[wall] ?? null,
    courseAt: (wall, elevation, end) => courses[wall]!.get(elevation) ?? (end ? gableCourse(wall, elevation, end) : null),
    standsAt: (wall, elevation, end) => elevation >= plan.walls[wall]!.wall.base && elevation < topAt(wall, end),
    topAt,
  };
}

interface LaidChain {
  readonly arrivingFirst: boolean;
  readonly lines: readonly LaidLine[];
  readonly lengths: readonly Nm[];
}

/** Straight pieces of a chain by unit and core: how many there are of each length. */
type Demand = ReadonlyMap<string, ReadonlyMap<Nm, number>>;

function demandOf(chain: LaidChain, lines: readonly Line[], { range, units }: RunContext): Demand {
  const demand = new Map<string, Map<Nm, number>>();
  const plain = units.ledges.size === 0 && units.tapers.size === 0;
  const ask = (key: string): ((length: Nm) => void) => {
    const counts = demand.get(key) ?? new Map<Nm, number>();
    demand.set(key, counts);
    return (length) => counts.set(length, (counts.get(length) ?? 0) + 1);
  };
  chain.lines.forEach((laid, index) => {
    const core = lines[index]!.core.code;
    if (plain) {
      const add = ask(`straight ${core}`);
      for (const length of laid.lengths) add(length < 0 ? range.formLength : length);
      return;
    }
    laid.runs.forEach(({ segments, ripped }, course) => {
      for (const { from, to, over } of laid.pieces[course]!) {
        const unit = segments.find((segment) => segment.from <= from && segment.to >= to)?.unit ?? 'straight';
        ask(`${unit} ${core}`)(ripped ? range.formLength : to - from + over);
      }
    });
  });
  return demand;
}

/** By how many forms one demand buys more than another, each cut for itself alone; only its sign is told. */
function moreForms(first: Demand, second: Demand, { formLength: stock, parameters: { formKerf: kerf } }: FormRange): number {
  const within = (demand: Demand): { least: number; most: number } => {
    let [least, most] = [0, 0];
    for (const lengths of demand.values()) {
      const bounds = stockPiecesWithin({ stock, kerf }, lengths);
      least += bounds.least;
      most += bounds.most;
    }
    return { least, most };
  };
  const [a, b] = [within(first), within(second)];
  if (a.least > b.most) return 1;
  if (a.most < b.least) return -1;
  const exact = (demand: Demand, { least, most }: { least: number; most: number }): number => {
    if (least === most) return least;
    return [...demand.values()].reduce((sum, lengths) => sum + stockPieces({ stock, kerf }, lengths), 0);
  };
  return Math.sign(exact(first, a) - exact(second, b));
}

const breaksOf = (chain: LaidChain): number => chain.lines.reduce((sum, laid) => sum + laid.cost[0] + laid.cost[1], 0);
const cutsOf = (chain: LaidChain): number => chain.lines.reduce((sum, laid) => sum + laid.cost[3], 0);

/**
 * Lays a chain with the long legs first on the arriving walls, and first on the leaving ones, and takes the one that buys fewer
 * forms; then fewer broken bonds, cuts and pieces; arriving first where they are alike (decision 3).
 */
function layChain(lines: readonly Line[], openings: readonly (readonly LineOpening[])[], context: RunContext, memory: BondMemory, below: Below): LaidChain {
  const lay = (arrivingFirst: boolean): LaidChain => {
    const laid = lines.map((line, index) =>
      line.arc ? layRadius(line, openings[index]!, context) : layOver(jointsUnder(line, below), courseRuns(line, openings[index]!, arrivingFirst, context), line.length, context.range, memory),
    );
    return { arrivingFirst, lines: laid, lengths: laid.flatMap(({ lengths }) => lengths).sort((a, b) => b - a) };
  };
  const known = lines.flatMap(({ walls }) => walls.flatMap(({ wall }) => below.arrivingFirst.get(wall.index) ?? []))[0];
  if (known !== undefined) return lay(known);
  const arriving = lay(true);
  if (!lines.some((line) => line.start.kind === 'corner' || line.end.kind === 'corner')) return arriving;
  const leaving = lay(false);
  const same = compareLengths(arriving.lengths, leaving.lengths) === 0;
  const difference =
    (same ? 0 : moreForms(demandOf(arriving, lines, context), demandOf(leaving, lines, context), context.range)) ||
    breaksOf(arriving) - breaksOf(leaving) ||
    cutsOf(arriving) - cutsOf(leaving) ||
    compareLengths(arriving.lengths, leaving.lengths);
  return difference <= 0 ? arriving : leaving;
}

export const NOTHING_BELOW: Below = { joints: new Map(), arrivingFirst: new Map() };

/** Joints of the course below, brought from the walls' dimension lines to this line. */
function jointsUnder({ walls }: Line, below: Below): Nm[] {
  return walls.flatMap(({ wall, from }) => (below.joints.get(wall.index) ?? []).map((at) => from + at - wall.back.start));
}

/** Lays courses over joints that already stand. */
function layOver(joints: readonly Nm[], runs: readonly CourseRun[], length: Nm, range: FormRange, memory: BondMemory): LaidLine {
  if (joints.length === 0) return layLine(runs, length, range, memory);
  const laid = layLine([alreadyLaid(joints), ...runs], length, range, memory);
  return { ...laid, runs: laid.runs.slice(1), pieces: laid.pieces.slice(1) };
}

/** What the next level finds: the highest course laid so far on every wall. */
export function laidSoFar(results: readonly LineResult[], before: Below): Below {
  const joints = new Map(before.joints);
  const arrivingFirst = new Map(before.arrivingFirst);
  for (const { line, courses, arrivingFirst: first } of results) {
    const top = courses.at(-1);
    line.walls.forEach(({ wall, from }, index) => {
      const to = line.walls[index + 1]?.from ?? Infinity;
      const own = countedJoints(top?.joints ?? []).filter((at) => (index === 0 || at > from) && at <= to);
      joints.set(wall.index, own.map((at) => at - from + wall.back.start));
      arrivingFirst.set(wall.index, first);
    });
  }
  return { joints, arrivingFirst };
}

/**
 * Lays every line of a storey, or of one level of it over what was laid below.
 *
 * @param memory of lines laid before with this range
 */
export function layStorey(level: Level, openings: ReadonlyMap<string, readonly Opening[]>, range: FormRange, gables: DrawnGables = new Map(), below: Below = NOTHING_BELOW, memory: BondMemory = new Map()): LineResult[] {
  const { plan } = level;
  const context = runContext(level, range, gables);
  return linesOf(plan).flatMap((chained) => {
    const lines = chained.filter((line) => line.stack.layers.length > 0);
    const own = lines.map((line) => openingsOf(line, openings, range, (wall) => context.gableOf(wall)?.rise ?? 0));
    const chain = layChain(lines, own, context, memory, below);
    return chain.lines.map((laid, index): LineResult => {
      const line = lines[index]!;
      const courses = line.arc ? radiusPieces(line, laid, own[index]!, plan, range) : coursePieces(line, laid, own[index]!, plan, range);
      return {
        line,
        laid,
        openings: own[index]!,
        courses,
        strips: line.arc ? radiusStrips(line, laid, stripsOf(line, own[index]!, context, range), range) : stripsOf(line, own[index]!, context, range),
        gables: layGables(line, courses.at(-1)!, own[index]!, chain.arrivingFirst, context, memory),
        below: jointsUnder(line, below),
        arrivingFirst: chain.arrivingFirst,
      };
    });
  });
}
