import type { ScheduleDocument } from '../support/schedule-document.js';
import { HERON, type Figures } from './heron-figures.js';
import { cross, dot, keyOf, length, minus, slowLines, unit, type End, type Point, type SlowJoint, type SlowLines, type SlowWall } from './slow-lines.js';
import { slowCourses, slowStacks, type SlowCourse, type SlowStack } from './slow-stack.js';
import { unionArea, type Corner } from './union-area.js';

export interface SlowTakeoff {
  readonly walls: readonly SlowWallAnswer[];
  /** Corner units laid, both hands and both halves together, by kind and core: `corner 6`. */
  readonly corners: ReadonlyMap<string, number>;
  /** End closures laid, by core. */
  readonly closures: ReadonlyMap<string, number>;
  /** Straight forms laid end to end, by storey, core and bottom of the course [in]. */
  readonly laid: readonly { readonly storey: string; readonly core: string; readonly bottom: number; readonly length: number }[];
  /** Fewest straight forms there could be, by core. */
  readonly leastForms: ReadonlyMap<string, number>;
  /** Lines of straight-on walls that cannot be laid on the module between two corners. */
  readonly seams: readonly (readonly string[])[];
  /** Concrete [in³], the two ways. */
  readonly concreteByLengths: number;
  readonly concreteByUnion: number;
  /** Concrete by storey, by union [in³]. */
  readonly concreteOf: ReadonlyMap<string, number>;
  /** Corners whose turn no unit makes. */
  readonly notMade: readonly number[];
}

export interface SlowWallAnswer {
  readonly mark: string;
  /** Node to node [in]. */
  readonly axis: number;
  readonly stack: SlowStack;
  readonly alternatives: readonly SlowStack[];
}

/** A wall with its nodes on the axis and its courses above the storey's bottom. */
interface Stood extends SlowWall {
  readonly nodes: Readonly<Record<End, Point>>;
  readonly stacks: readonly SlowStack[];
  readonly courses: readonly SlowCourse[];
}

/**
 * A whole take-off the slow and obvious way, from the settled decisions alone and in inches: straight walls, corners of any
 * turn the range makes, free ends, square tees, openings, garage steps. It knows totals, not where each piece lies.
 */
export function slowTakeoff(document: ScheduleDocument, figures: Figures = HERON): SlowTakeoff {
  const lines = slowLines(document, figures);
  const walls = lines.walls.map((wall) => stand(wall, lines, figures));
  const site: Site = { walls, byMark: new Map(walls.map((wall) => [wall.mark, wall])), jointOf: lines.jointOf, figures };
  const laid = laidLengths(site);
  return {
    walls: walls.map(({ mark, nodes, stacks }) => ({ mark, axis: length(minus(nodes.to, nodes.from)), stack: stacks[0]!, alternatives: stacks.slice(1) })),
    ...cornerUnits(site),
    closures: closures(site),
    laid,
    leastForms: leastForms(laid, figures),
    seams: seams(site),
    ...concrete(site),
  };
}

interface Site {
  readonly walls: readonly Stood[];
  readonly byMark: ReadonlyMap<string, Stood>;
  readonly jointOf: ReadonlyMap<string, SlowJoint>;
  readonly figures: Figures;
}

/** A hundredth of a nanometre, in inches: sums of lengths that are equal may differ by the rounding of a double. */
const EXACT = 1e-9;
const ENDS = ['from', 'to'] as const;
const left = ([x, y]: Point): Point => [-y, x];
const shift = (point: Point, way: Point, by: number): Point => [point[0] + way[0] * by, point[1] + way[1] * by];

/** Where two lines, each a point and a way, meet. */
function meeting(a: Point, wayA: Point, b: Point, wayB: Point): Point {
  return shift(a, wayA, cross(minus(b, a), wayB) / cross(wayA, wayB));
}

function stand(wall: SlowWall, { walls, jointOf }: SlowLines, figures: Figures): Stood {
  const byMark = new Map(walls.map((each) => [each.mark, each]));
  const axisPoint = (each: SlowWall, end: End): Point => shift(each[end], left(unit(each)), each.offset);
  const node = (end: End): Point => {
    const joint = jointOf.get(keyOf({ wall: wall.mark, end }))!;
    if (joint.kind === 'free' || joint.kind === 'straight') return axisPoint(wall, end);
    const across = byMark.get(joint.kind === 'tee' ? joint.through[0]! : joint.other.wall)!;
    return meeting(axisPoint(wall, end), unit(wall), axisPoint(across, 'from'), unit(across));
  };
  const stacks = slowStacks(wall.height, figures);
  if (stacks.length === 0) throw new Error(`no stack for ${wall.mark}, ${wall.height} in`);
  const courses = slowCourses(stacks[0]!, figures).map(({ bottom, top }) => ({ bottom: bottom + wall.base, top: top + wall.base }));
  return { ...wall, nodes: { from: node('from'), to: node('to') }, stacks, courses };
}

/** The joint as it is at a height: above or below the other wall an end stands free. */
function jointAt(site: Site, wall: Stood, end: End, z: number): SlowJoint {
  const joint = site.jointOf.get(keyOf({ wall: wall.mark, end }))!;
  if (joint.kind === 'free') return joint;
  const others = joint.kind === 'tee' ? joint.through : [joint.other.wall];
  return others.some((mark) => standsAt(site.byMark.get(mark)!, z)) ? joint : { kind: 'free' };
}

const standsAt = (wall: Stood, z: number): boolean => z > wall.base && z < wall.base + wall.stacks[0]!.height;
const middle = ({ bottom, top }: SlowCourse): number => (bottom + top) / 2;

/** How far the declared end lies beyond the node along the axis, outward positive: where a free end of a step stops. */
function beyondNode(wall: Stood, end: End): number {
  const along = dot(unit(wall), minus(wall[end], wall.nodes[end]));
  return end === 'to' ? along : -along;
}

function unitFor(turn: number, core: string, figures: Figures): { kind: string; legs: readonly [number, number] } | null {
  const near = (target: number): boolean => Math.abs(Math.abs(turn) - target) <= figures.turnTolerance;
  if (near(90)) return { kind: 'corner', legs: figures.square[core]! };
  if (near(45)) return { kind: 'corner-pair', legs: figures.pair[core]! };
  const [least, most] = figures.hingedTurns;
  if (Math.abs(turn) >= least - figures.turnTolerance && Math.abs(turn) <= most + figures.turnTolerance) {
    return { kind: 'corner-hinged', legs: figures.hinged[core]! };
  }
  return null;
}

/** Every corner once, from the wall that arrives. */
function cornersOf({ walls, jointOf }: Site): { wall: Stood; turn: number; other: string }[] {
  return walls.flatMap((wall) => {
    const joint = jointOf.get(keyOf({ wall: wall.mark, end: 'to' }))!;
    return joint.kind === 'corner' ? [{ wall, turn: joint.turn, other: joint.other.wall }] : [];
  });
}

function cornerUnits(site: Site): { corners: Map<string, number>; notMade: number[] } {
  const corners = new Map<string, number>();
  const notMade: number[] = [];
  for (const { wall, turn, other: next } of cornersOf(site)) {
    const made = unitFor(turn, wall.coreCode, site.figures);
    if (!made) {
      notMade.push(turn);
      continue;
    }
    const shared = wall.courses.filter((course) => standsAt(site.byMark.get(next)!, middle(course)));
    add(corners, `${made.kind} ${wall.coreCode}`, shared.length);
  }
  return { corners, notMade };
}

function add(counts: Map<string, number>, key: string, more: number): void {
  if (more !== 0) counts.set(key, (counts.get(key) ?? 0) + more);
}

/** decisions.md 10: a free end is closed over its whole height, so also where a strip lies between two courses. */
function stripsBetween(courses: readonly SlowCourse[]): SlowCourse[] {
  return courses.slice(1).flatMap(({ bottom }, below) => (bottom - courses[below]!.top > EXACT ? [{ bottom: courses[below]!.top, top: bottom }] : []));
}

function closures(site: Site): Map<string, number> {
  const counts = new Map<string, number>();
  for (const wall of site.walls) {
    for (const course of [...wall.courses, ...stripsBetween(wall.courses)]) {
      for (const end of ENDS) if (jointAt(site, wall, end, middle(course)).kind === 'free') add(counts, wall.coreCode, 1);
      for (const opening of wall.openings) {
        const [sill, head] = [wall.base + opening.sill, wall.base + opening.sill + opening.height];
        if (opening.lining === 'end-closure' && sill < course.top - EXACT && head > course.bottom + EXACT) add(counts, wall.coreCode, 2);
      }
    }
  }
  return counts;
}

const interrupts = (wall: Stood, opening: Stood['openings'][number], course: SlowCourse): boolean =>
  wall.base + opening.sill <= course.bottom + EXACT && wall.base + opening.sill + opening.height >= course.top - EXACT;

/** decisions.md 3: axis taken by the two legs of a corner together is long + short − T·tan(|turn|/2), whichever lies where. */
function laidLengths(site: Site): SlowTakeoff['laid'] {
  const sums = new Map<string, { storey: string; core: string; bottom: number; length: number }>();
  const lay = (wall: Stood, course: SlowCourse, by: number): void => {
    const key = `${wall.storey} ${wall.coreCode} ${course.bottom.toFixed(4)}`;
    const sum = sums.get(key) ?? { storey: wall.storey, core: wall.coreCode, bottom: course.bottom, length: 0 };
    sums.set(key, { ...sum, length: sum.length + by });
  };
  for (const wall of site.walls) {
    for (const course of wall.courses) {
      let straight = length(minus(wall.nodes.to, wall.nodes.from));
      for (const end of ENDS) {
        const joint = jointAt(site, wall, end, middle(course));
        if (joint.kind === 'free') straight += beyondNode(wall, end);
        if (joint.kind === 'tee') straight -= site.byMark.get(joint.through[0]!)!.thickness / 2;
        if (joint.kind === 'corner') {
          const legs = unitFor(joint.turn, wall.coreCode, site.figures)?.legs ?? [0, 0];
          straight -= (legs[0] + legs[1]) / 2 - (wall.thickness / 2) * Math.tan((Math.abs(joint.turn) * Math.PI) / 360);
        }
      }
      for (const opening of wall.openings.filter((each) => interrupts(wall, each, course))) {
        straight -= opening.width - (opening.lining === 'end-closure' ? 2 * site.figures.closure : 0);
      }
      lay(wall, course, straight);
    }
  }
  return [...sums.values()];
}

/** Offcuts serve the same storey: whole forms by storey and core, from the material alone. */
function leastForms(laid: SlowTakeoff['laid'], figures: Figures): Map<string, number> {
  const counts = new Map<string, number>();
  const keys = new Set(laid.map(({ storey, core }) => `${storey}\n${core}`));
  for (const key of keys) {
    const [storey, core] = key.split('\n') as [string, string];
    const total = laid.filter((each) => each.storey === storey && each.core === core).reduce((sum, each) => sum + each.length, 0);
    add(counts, core, Math.ceil(total / figures.formLength - 1e-7));
  }
  return counts;
}

/** Lines of straight-on walls of one core, height and base. */
function seams(site: Site): string[][] {
  const found: string[][] = [];
  const done = new Set<string>();
  for (const first of site.walls) {
    if (done.has(first.mark)) continue;
    const line = [first];
    const follow = (end: End): SlowJoint => {
      for (let wall = first; ; ) {
        const joint = site.jointOf.get(keyOf({ wall: wall.mark, end }))!;
        const next = joint.kind === 'straight' ? site.byMark.get(joint.other.wall)! : null;
        if (!next || next.coreCode !== wall.coreCode || next.height !== wall.height || next.base !== wall.base) return joint;
        if (end === 'to') line.push(next);
        else line.unshift(next);
        wall = next;
      }
    };
    const last = follow('to');
    const start = follow('from');
    for (const wall of line) done.add(wall.mark);
    if (last.kind !== 'corner' || start.kind !== 'corner') continue;
    const whole = line[0]!.courses.some((course) =>
      jointAt(site, line[0]!, 'from', middle(course)).kind === 'corner' && jointAt(site, line.at(-1)!, 'to', middle(course)).kind === 'corner' &&
      !line.some((wall) => wall.openings.some((opening) => interrupts(wall, opening, course))));
    if (whole && offModule(line, [start.turn, last.turn], site.figures)) found.push(line.map(({ mark }) => mark));
  }
  return found;
}

function offModule(line: readonly Stood[], turns: readonly number[], figures: Figures): boolean {
  let run = line.reduce((sum, wall) => sum + length(minus(wall.nodes.to, wall.nodes.from)), 0);
  for (const turn of turns) {
    const legs = unitFor(turn, line[0]!.coreCode, figures)?.legs ?? [0, 0];
    run -= legs[0] - (line[0]!.thickness / 2) * Math.tan((Math.abs(turn) * Math.PI) / 360);
  }
  const over = run - Math.floor(run / figures.cutModule) * figures.cutModule;
  return Math.min(over, figures.cutModule - over) > 0.002 / 25.4;
}

/** The concrete of every slab of height in which the same walls stand. */
function concrete(site: Site): Pick<SlowTakeoff, 'concreteByLengths' | 'concreteByUnion' | 'concreteOf'> {
  let concreteByLengths = 0;
  const concreteOf = new Map<string, number>();
  for (const storey of new Set(site.walls.map((wall) => wall.storey))) {
    const walls = site.walls.filter((wall) => wall.storey === storey);
    const levels = [...new Set(walls.flatMap((wall) => [wall.base, wall.base + wall.stacks[0]!.height]))].sort((a, b) => a - b);
    const holes = walls.reduce((sum, wall) => sum + wall.openings.reduce((area, { width, height }) => area + width * height, 0) * wall.core, 0);
    let solid = 0;
    for (let index = 1; index < levels.length; index++) {
      const [low, high] = [levels[index - 1]!, levels[index]!];
      const here = walls.filter((wall) => standsAt(wall, (low + high) / 2));
      concreteByLengths += (high - low) * here.reduce((sum, wall) => sum + lengthAt(site, wall, (low + high) / 2) * wall.core, 0);
      solid += (high - low) * unionArea(here.map((wall) => footprint(site, wall, (low + high) / 2)));
    }
    concreteByLengths -= holes;
    concreteOf.set(storey, solid - holes);
  }
  return { concreteByLengths, concreteOf, concreteByUnion: [...concreteOf.values()].reduce((sum, volume) => sum + volume, 0) };
}

/** decisions.md 5, 9, 10: axis length, less a closure at a free end, less half the through core at a tee. */
function lengthAt(site: Site, wall: Stood, z: number): number {
  return ENDS.reduce((sum, end) => {
    const joint = jointAt(site, wall, end, z);
    if (joint.kind === 'free') return sum + beyondNode(wall, end) - site.figures.closure;
    return joint.kind === 'tee' ? sum - site.byMark.get(joint.through[0]!)!.core / 2 : sum;
  }, length(minus(wall.nodes.to, wall.nodes.from)));
}

/** The core on the plan: mitred at corners, square elsewhere, run on to the through wall's axis at a tee. */
function footprint(site: Site, wall: Stood, z: number): readonly Corner[] {
  const face = (each: Stood, side: 1 | -1): Point => shift(each.nodes.from, left(unit(each)), (side * each.core) / 2);
  const corner = (end: End, side: 1 | -1): Point => {
    const joint = jointAt(site, wall, end, z);
    if (joint.kind === 'corner') {
      const next = site.byMark.get(joint.other.wall)!;
      return meeting(face(wall, side), unit(wall), face(next, side), unit(next));
    }
    const beyond = joint.kind === 'free' ? beyondNode(wall, end) - site.figures.closure : 0;
    const at = shift(wall.nodes[end], unit(wall), end === 'to' ? beyond : -beyond);
    return shift(at, left(unit(wall)), (side * wall.core) / 2);
  };
  return [corner('from', -1), corner('to', -1), corner('to', 1), corner('from', 1)];
}

