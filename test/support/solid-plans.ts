import type { Feature, Opening, Schedule, Wall } from '../../src/domain/schedule/schedule.js';
import { HERON } from '../oracles/heron-figures.js';
import { LEDGE, TAPER } from '../oracles/solid-ledges.js';
import { slowCourses, slowStacks } from '../oracles/slow-stack.js';
import { ARC_SHAPES, type ArcOutline } from './arc-shapes.js';
import { SHAPES, type Sizer } from './plan-shapes.js';
import { seededRandom, type SeededRandom } from './seeded-random.js';

/** A random schedule for a comparison of solids: few courses, short walls, every feature, drawn either way round. */
export interface SolidPlan {
  readonly seed: number;
  readonly kind: string;
  readonly schedule: Schedule;
}

/** A wall being drawn, in inches. */
interface Draft {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly arc?: { readonly radius: number; readonly turns: 'left' | 'right' };
  readonly core: string;
  readonly height: number;
  readonly base: number;
}

interface Desk {
  readonly random: SeededRandom;
  readonly size: Sizer;
  readonly height: number;
  readonly core: string;
}

const CORES = ['4', '6', '8', '10'];
const NM_PER_INCH = 25_400_000;
const PLACE = { sheet: null, row: null, pointer: '' };
const COURSE = HERON.courseHeight;
/** Farther than any core reaches into the other wall of a corner, or a branch's through wall into the branch [in]. */
const CLEAR_OF_ENDS = 30;

const KINDS: Readonly<Record<string, (desk: Desk) => Draft[]>> = {
  ...Object.fromEntries(Object.entries({ ...SHAPES, ...ARC_SHAPES }).map(([kind, shape]) => [
    kind, (desk: Desk) => shape(desk.size, desk.random).flatMap((outline) => outlined(desk, outline)),
  ])),
  partitions, threeEnds, garage, step, raised, straightStep, mixedCorner, mixedLine,
};
export const SOLID_KINDS = Object.keys(KINDS);
/** Kinds whose courses must meet those of a wall of another height or base. */
const LEVEL_KINDS = ['garage', 'step', 'raised', 'straightStep'];

/** Kinds of straight walls of one height: tapers stop at legs, which two cores have not; branches' ledges stop at the through wall. */
const TAPER_KINDS = [...Object.keys(SHAPES), 'partitions'];
const LEDGE_KINDS = [...TAPER_KINDS, 'mixedCorner', 'mixedLine'];

export function solidPlan(seed: number): SolidPlan {
  const random = seededRandom(seed * 104_729 + 7);
  const kind = SOLID_KINDS[seed % SOLID_KINDS.length]!;
  const metric = random.chance(0.3);
  const grid = metric ? random.pick([1, 5, 10]) * 1_000_000 : random.pick([NM_PER_INCH, NM_PER_INCH / 2, NM_PER_INCH / 4, NM_PER_INCH / 64]);
  const size: Sizer = (low, high) => (Math.round(((low + (high - low) * 0.3 * random.next()) * NM_PER_INCH) / grid) * grid) / NM_PER_INCH;
  const height = LEVEL_KINDS.includes(kind) ? random.pick([48, 64]) : random.pick([32, 35, 40, 42.5, 48, 48, 51, 64]);
  const drafts = KINDS[kind]!({ random, size, height, core: random.pick(CORES) });
  const dimensionsTo = kind === 'mixedLine' ? 'foam-face' : random.pick(['foam-face', 'foam-face', 'concrete-face', 'axis'] as const);
  const walls = drafts.map((draft, index) => wallOf(random.chance(0.3) ? turned(draft) : draft, index, dimensionsTo));
  const schedule: Schedule = {
    format: 'wallcourse/schedule@1', name: `${kind} ${seed}`, units: metric ? 'mm' : 'in', dimensionsTo, range: 'HERON-16',
    storeys: [{ id: 'S1', height: nm(height), grade: 'above', storeyAbove: false, closed: false, on: null }],
    walls, openings: [], features: [], site: null, pour: null, unknown: [],
  };
  const tapers = TAPER_KINDS.includes(kind) && random.chance(0.3) ? tapersOf(walls, random) : [];
  const shaped = tapers.length > 0 ? [] : walls.flatMap((wall, index) => featuresOf(wall, { kind, index, highest: height }, random));
  const ledges = LEDGE_KINDS.includes(kind) && random.chance(0.5) ? ledgesOf(kind === 'partitions' ? walls.slice(4) : walls, shaped, tapers.length > 0, random) : [];
  const features = [...tapers, ...shaped, ...ledges];
  return { seed, kind, schedule: { ...schedule, features, openings: walls.flatMap((wall) => openingsOf(wall, features, size, random)) } };
}

const nm = (inches: number): number => Math.round(inches * NM_PER_INCH);

function wallOf(draft: Draft, index: number, dimensionsTo: Wall['dimensionsTo']): Wall {
  const [from, to] = [draft.from, draft.to].map(([x, y]) => ({ x: nm(x), y: nm(y) })) as [Wall['from'], Wall['to']];
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radius = draft.arc ? Math.max(nm(draft.arc.radius), Math.ceil(chord / 2)) : 0;
  return {
    mark: `W${index + 1}`, storey: 'S1', core: draft.core, from, to, dimensionsTo, height: nm(draft.height), base: nm(draft.base),
    length: Math.round(draft.arc ? 2 * radius * Math.asin(Math.min(1, chord / 2 / radius)) : chord),
    arc: draft.arc ? { radius, turns: draft.arc.turns } : null, start: null, end: null, place: PLACE,
  };
}

function turned(draft: Draft): Draft {
  const arc = draft.arc && { radius: draft.arc.radius, turns: draft.arc.turns === 'left' ? ('right' as const) : ('left' as const) };
  return { ...draft, from: draft.to, to: draft.from, ...(arc && { arc }) };
}

function outlined({ height, core }: Desk, { points, open, arcs = {} }: ArcOutline, base = 0): Draft[] {
  const count = open ? points.length - 1 : points.length;
  return Array.from({ length: count }, (_, index) => ({
    from: points[index]!, to: points[(index + 1) % points.length]!, core, height, base, ...(arcs[index] && { arc: arcs[index] }),
  }));
}

const rectangleOf = (desk: Desk, low: number, high: number): Draft[] => {
  const [w, d] = [desk.size(low, high), desk.size(low, high)];
  return outlined(desk, { points: [[0, 0], [w, 0], [w, d], [0, d]] });
};

/** One to three partitions on the long sides of a house, square or on the skew, drawn to the face, into the wall or ending free. */
function partitions(desk: Desk): Draft[] {
  const { random, size } = desk;
  const house = rectangleOf(desk, 240, 320);
  const depth = house[1]!.to[1];
  const count = random.whole(1, 2);
  const inner = Array.from({ length: count }, (_, index): Draft => {
    const x = 70 + index * 80 + size(0, 20);
    const skew = random.chance(0.4) ? size(20, 60) * random.pick([1, -1]) : 0;
    const into = (): number => (skew === 0 ? random.pick([0, 3, 6]) : 3);
    const top = random.chance(0.6) ? depth - into() : depth - size(80, 100);
    return { from: [x, into()], to: [x + skew, top], core: random.pick(CORES), height: desk.height, base: 0 };
  });
  return [...house, ...inner];
}

function threeEnds(desk: Desk): Draft[] {
  const { size, random } = desk;
  const [w, d, x] = [size(240, 320), size(200, 240), size(100, 120)];
  const house = outlined(desk, { points: [[0, 0], [x, 0], [w, 0], [w, d], [0, d]] });
  return [...house, { from: [x, 0], to: [x, size(90, 100)], core: random.pick(CORES), height: desk.height, base: 0 }];
}

function garage(desk: Desk): Draft[] {
  const { size, random } = desk;
  const house = rectangleOf(desk, 240, 320);
  const w = house[0]!.to[0];
  const [low, high, out] = [size(50, 60), size(180, 190), size(120, 200)];
  const annex = { ...desk, core: random.pick(CORES), height: COURSE * random.whole(1, desk.height / COURSE - 1) };
  return [...house, ...outlined(annex, { points: [[w - 3, low], [w + out, low], [w + out, high], [w - 3, high]], open: true })];
}

function step(desk: Desk): Draft[] {
  const house = rectangleOf(desk, 110, 240);
  const lower = desk.random.whole(0, 3);
  return house.map((wall, index) => (index === lower ? { ...wall, height: COURSE * desk.random.whole(1, desk.height / COURSE - 1) } : wall));
}

function raised(desk: Desk): Draft[] {
  const house = rectangleOf(desk, 110, 240);
  const higher = desk.random.whole(0, 3);
  const base = COURSE * desk.random.whole(1, desk.height / COURSE - 1);
  return house.map((wall, index) => (index === higher ? { ...wall, base, height: wall.height - base } : wall));
}

function straightStep(desk: Desk): Draft[] {
  const [a, b, c] = [desk.size(110, 200), desk.size(110, 200), desk.size(110, 200)];
  const walls = outlined(desk, { points: [[0, 0], [a, 0], [a + b, 0], [a + b, c]], open: true });
  const height = COURSE * desk.random.whole(1, desk.height / COURSE - 1);
  return walls.map((wall, index) => (index > 0 ? { ...wall, height } : wall));
}

/** Two cores meeting at corners of any turn. */
function mixedCorner(desk: Desk): Draft[] {
  const turn = ((desk.random.pick([90, 90, 45, 60, 30, 75]) * Math.PI) / 180) * desk.random.pick([1, -1]);
  const [a, b] = [desk.size(110, 200), desk.size(110, 200)];
  const walls = outlined(desk, { points: [[0, 0], [a, 0], [a + b * Math.cos(turn), b * Math.sin(turn)]], open: true });
  return walls.map((wall, index) => ({ ...wall, core: index === 0 ? wall.core : desk.random.pick(CORES) }));
}

/** Two cores straight on, and a corner after them. */
function mixedLine(desk: Desk): Draft[] {
  const [a, b, c] = [desk.size(110, 200), desk.size(110, 200), desk.size(110, 200)];
  const walls = outlined(desk, { points: [[0, 0], [a, 0], [a + b, 0], [a + b, c]], open: true });
  const other = desk.random.pick(CORES);
  return walls.map((wall, index) => ({ ...wall, core: index === 0 ? wall.core : other }));
}

/**
 * A slope stands on no wall that ends against a higher one, whose free end would stand in it, nor on a wall that ends free above a
 * lower one or meets a curve in a corner.
 */
const sloped = (wall: Wall, kind: string, highest: number): boolean =>
  !wall.arc && !['step', 'straightStep', 'bowedSide'].includes(kind) && wall.base + wall.height === nm(highest);

/** Where a branch meets a through wall drawn in two, both halves keep their core; curves keep theirs. */
const widened = (wall: Wall, kind: string, index: number): boolean => !wall.arc && !(kind === 'threeEnds' && index < 2);

function featuresOf(wall: Wall, { kind, index, highest }: { kind: string; index: number; highest: number }, random: SeededRandom): Feature[] {
  const features: Feature[] = [];
  if (sloped(wall, kind, highest) && random.chance(0.3)) {
    const peakAt = Math.round(wall.length * random.pick([0, 0.25, 0.5, random.next(), 1]));
    features.push({ kind: 'gable', wall: wall.mark, rise: nm(random.whole(8, 60)), peakAt, place: PLACE });
  }
  const courses = slowCourses(slowStacks(wall.height / NM_PER_INCH, HERON)[0]!, HERON);
  const beds = courses.flatMap(({ bottom }, index) => (index > 0 && bottom === courses[index - 1]!.top ? [bottom] : []));
  if (widened(wall, kind, index) && beds.length > 0 && random.chance(0.3)) {
    const core = random.pick(CORES.filter((code) => code !== wall.core));
    features.push({ kind: 'core-change', wall: wall.mark, at: nm(random.pick(beds)), core, flush: random.pick(['outside', 'inside', 'centre'] as const), place: PLACE });
  }
  return features;
}

/**
 * The same taper along every wall, so that each corner is mitred, or tapers of their own on some walls, which stop at the legs of the
 * corner units; none where a top course is ripped or a core has no unit.
 */
function tapersOf(walls: readonly Wall[], random: SeededRandom): Feature[] {
  const same = random.chance(0.5) ? random.pick(['one', 'both'] as const) : null;
  return walls.flatMap(({ mark, core, height }): Feature[] => {
    const [faces, left] = [same ?? random.pick(['one', 'both'] as const), !same && random.chance(0.4)];
    const made = slowStacks(height / NM_PER_INCH, HERON)[0]!.ripped === 0 && TAPER.cores.includes(HERON.coreWidth[core]!);
    return made && !left ? [{ kind: 'taper-top', wall: mark, faces, place: PLACE }] : [];
  });
}

/** Ledges in one course and on one face of several walls: over a whole wall, up to one of its ends, or clear of both. */
function ledgesOf(walls: readonly Wall[], shaped: readonly Feature[], tapered: boolean, random: SeededRandom): Feature[] {
  const face = random.pick(['outside', 'outside', 'inside'] as const);
  const courses = slowCourses(slowStacks(walls[0]!.height / NM_PER_INCH, HERON)[0]!, HERON);
  // A tapered top course carries no ledge.
  const full = courses.filter(({ bottom, top }, index) => top - bottom === COURSE && (!tapered || index < courses.length - 1));
  const at = nm(random.pick(full).top);
  return walls.flatMap((wall): Feature[] => {
    const change = shaped.find((each) => each.kind === 'core-change' && each.wall === wall.mark);
    const core = change?.kind === 'core-change' && change.at < at ? change.core : wall.core;
    if (!LEDGE.cores.includes(HERON.coreWidth[core]!) || wall.length < nm(110) || random.chance(0.4)) return [];
    const [from, to] = [random.chance(0.6) ? 0 : nm(48 + random.whole(0, 3)), random.chance(0.6) ? wall.length : wall.length - nm(48 + random.whole(0, 3))];
    return [{ kind: 'ledge', wall: wall.mark, at, from, to, face, place: PLACE }];
  });
}

/** Openings anywhere along a wall but in the concrete of its corners, over one another's heads never; into a gable as far as they like. */
function openingsOf(wall: Wall, features: readonly Feature[], size: Sizer, random: SeededRandom): Opening[] {
  const openings: Opening[] = [];
  const gable = features.find((each) => each.kind === 'gable' && each.wall === wall.mark);
  const run = wall.length / NM_PER_INCH;
  const top = wall.height / NM_PER_INCH;
  for (let at = size(CLEAR_OF_ENDS, 90); random.chance(0.7); at += size(30, 90)) {
    const width = size(12, 60);
    if (at + width > run - CLEAR_OF_ENDS) break;
    const sill = random.chance(0.3) ? 0 : Math.floor(random.next() * (top - 12));
    const height = random.chance(0.15) ? top - sill : 4 + Math.floor(random.next() * (top - sill - 4));
    const above = gable && random.chance(0.4) ? random.whole(1, 12) : 0;
    openings.push({
      mark: `${wall.mark}O${openings.length + 1}`, wall: wall.mark, at: nm(at), sill: nm(sill), width: nm(width), height: nm(above ? top - sill + above : height),
      lining: random.chance(0.3) ? 'end-closure' : 'buck', measured: 'concrete', place: PLACE,
    });
    at += width;
  }
  return openings;
}
