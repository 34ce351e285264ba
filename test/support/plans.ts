import { HERON } from '../oracles/heron-figures.js';
import { slowStacks } from '../oracles/slow-stack.js';
import { SHAPES, type Outline, type Sizer } from './plan-shapes.js';
import type { OpeningRow, ScheduleDocument, StoreyRow, WallRow } from './schedule-document.js';
import { seededRandom, type SeededRandom } from './seeded-random.js';

/** A schedule with what the drawing meant: which walls go round together, so that changes that must not matter can be made. */
export interface Plan {
  readonly seed: number;
  readonly kind: string;
  readonly document: ScheduleDocument;
  readonly chains: readonly { readonly marks: readonly string[]; readonly closed: boolean }[];
}

export interface PlanWishes {
  readonly kind?: string;
  /** Openings may stand as near to corners, ends and one another as the wall allows; otherwise clear of legs and tees. */
  readonly tight?: boolean;
  readonly openings?: boolean;
}

export const PLAN_KINDS = [...Object.keys(SHAPES), 'partitions', 'threeEnds', 'garage', 'step', 'raised', 'straightStep', 'twoStoreys'] as const;
/** Kinds whose courses must meet those of a wall of another height or base. */
const LEVEL_KINDS: readonly string[] = ['garage', 'step', 'raised', 'straightStep'];

const CORES = ['4', '6', '8', '10'];
/** Clear of every corner leg of the demo range, and of the closure that a form runs into an opening. */
const CLEAR_OF_LEGS = 44;

interface Draft {
  readonly random: SeededRandom;
  /** Document units to the inch, and the step that dimensions are multiples of, in document units. */
  readonly perInch: number;
  readonly step: number;
  readonly walls: WallRow[];
  readonly openings: OpeningRow[];
  readonly chains: Plan['chains'][number][];
}

/** A random plan: the same for the same seed and wishes. Never a question a rule must ask, unless `tight`. */
export function randomPlan(seed: number, wishes: PlanWishes = {}): Plan {
  const random = seededRandom(seed * 7_919 + 13);
  const metric = random.chance(0.3);
  const kind = wishes.kind ?? random.pick(PLAN_KINDS);
  const draft: Draft = {
    random, perInch: metric ? 25.4 : 1, step: metric ? random.pick([1, 5, 10, 100]) : random.pick([1, 1, 2, 12, 0.5, 0.25, 1 / 64]),
    walls: [], openings: [], chains: [],
  };
  const height = randomHeight(draft, LEVEL_KINDS.includes(kind));
  const storeys: StoreyRow[] = [{ id: 'S1', height, grade: 'above', storeyAbove: kind === 'twoStoreys', closed: false }];
  const core = random.pick(CORES);
  if (kind === 'partitions') partitions(draft, core);
  else if (kind === 'garage') garage(draft, core, height);
  else if (kind === 'threeEnds') threeEnds(draft, core);
  else if (kind === 'step') step(draft, core, height);
  else if (kind === 'raised') raised(draft, core, height);
  else if (kind === 'straightStep') straightStep(draft, core, height);
  else if (kind === 'twoStoreys') storeys.push(twoStoreys(draft, core));
  else for (const outline of SHAPES[kind]!(sizer(draft), random)) addOutline(draft, outline, { storey: 'S1', core });
  if (wishes.openings ?? true) addOpenings(draft, storeys, wishes.tight ?? false);
  const dimensionsTo = random.pick(['foam-face', 'foam-face', 'concrete-face', 'axis'] as const);
  return {
    seed, kind, chains: draft.chains,
    document: {
      format: 'wallcourse/schedule@1', name: `${kind} ${seed}`, units: metric ? 'mm' : 'in', dimensionsTo, range: 'HERON-16',
      storeys, walls: draft.walls, openings: draft.openings,
    },
  };
}

/** Inches on the drawing's own grid, as inches: outlines are thought out in inches and written in document units. */
function sizer({ random, perInch, step: grid }: Draft): Sizer {
  return (low, high) => (random.whole(Math.ceil((low * perInch) / grid), Math.floor((high * perInch) / grid)) * grid) / perInch;
}

const written = (draft: Draft, inches: number): number => {
  const value = inches * draft.perInch;
  const onGrid = Math.round(value / draft.step) * draft.step;
  return Math.abs(value - onGrid) < 1e-6 ? onGrid : value;
};

/** A height some stack makes; without strips where a lower wall must meet its bed joints. */
function randomHeight(draft: Draft, level = false): number {
  for (;;) {
    const inches = draft.random.pick([96, 96, 108, 120, 100, draft.random.whole(48, 140), draft.random.whole(4 * 48, 4 * 140) / 4]);
    const height = draft.perInch === 1 ? inches : Math.round((inches * draft.perInch) / 10) * 10;
    const stack = slowStacks(height / draft.perInch, HERON)[0];
    if (stack && !(level && stack.strips > 0)) return height;
  }
}

function addOutline(draft: Draft, { points, open }: Outline, wall: Pick<WallRow, 'storey' | 'core' | 'height' | 'base'>): readonly string[] {
  const last = open ? points.length - 1 : points.length;
  const marks: string[] = [];
  for (let index = 0; index < last; index++) {
    const mark = `W${draft.walls.length + 1}`;
    const [from, to] = [points[index]!, points[(index + 1) % points.length]!];
    draft.walls.push({
      mark, ...wall, from: [written(draft, from[0]), written(draft, from[1])], to: [written(draft, to[0]), written(draft, to[1])],
    });
    marks.push(mark);
  }
  draft.chains.push({ marks, closed: !open });
  return marks;
}

/** A house with one to three square partitions, each of its own core, drawn to the inside, through the wall, or ending free. */
function partitions(draft: Draft, core: string): void {
  const { random } = draft;
  const size = sizer(draft);
  const [width, depth] = [size(420, 600), size(240, 420)];
  addOutline(draft, { points: [[0, 0], [width, 0], [width, depth], [0, depth]] }, { storey: 'S1', core });
  const count = random.whole(1, 3);
  for (let index = 0; index < count; index++) {
    const x = size(70 + (index * (width - 140)) / count, 10 + ((index + 1) * (width - 140)) / count);
    const into = random.pick([0, 3, 6]);
    const top = random.chance(0.6) ? depth - into : depth - size(80, 120);
    const points = [[x, into], [x, top]] as const;
    addOutline(draft, { points: random.chance(0.5) ? points : [points[1], points[0]], open: true }, { storey: 'S1', core: random.pick(CORES) });
  }
}

/** A lower garage of three walls standing against a house. */
function garage(draft: Draft, core: string, height: number): void {
  const size = sizer(draft);
  const [width, depth] = [size(420, 600), size(300, 480)];
  addOutline(draft, { points: [[0, 0], [width, 0], [width, depth], [0, depth]] }, { storey: 'S1', core });
  const [low, high, out] = [size(60, 80), size(200, 230), size(160, 280)];
  const points = [[width - 3, low], [width + out, low], [width + out, high], [width - 3, high]] as const;
  addOutline(draft, { points, open: true }, { storey: 'S1', core: draft.random.pick(CORES), height: lowerHeight(draft, height) });
}

/** Whole courses of the demo range, below the storey's own height. */
function lowerHeight(draft: Draft, height: number): number {
  const courses = Math.floor(height / draft.perInch / HERON.courseHeight);
  return draft.random.whole(Math.max(1, courses - 3), Math.max(1, courses - 1)) * HERON.courseHeight * draft.perInch;
}

/** One wall of a rectangle is lower than the rest: at its corners the others go on free above it. */
function step(draft: Draft, core: string, height: number): void {
  const size = sizer(draft);
  const [width, depth] = [size(200, 500), size(200, 500)];
  addOutline(draft, { points: [[0, 0], [width, 0], [width, depth], [0, depth]] }, { storey: 'S1', core });
  const index = draft.random.whole(0, 3);
  draft.walls[index] = { ...draft.walls[index]!, height: lowerHeight(draft, height) };
}

/** One wall of a rectangle stands on a stepped footing, whole courses up: its neighbours go on free below it. */
function raised(draft: Draft, core: string, height: number): void {
  step(draft, core, height);
  const courses = Math.floor(height / draft.perInch / HERON.courseHeight);
  const base = draft.random.whole(1, Math.max(1, courses - 2)) * HERON.courseHeight * draft.perInch;
  draft.walls.forEach((wall, index) => {
    if (wall.height !== undefined) draft.walls[index] = { ...wall, base, height: height - base };
  });
}

/** A wall that goes straight on lower, and round a corner from there. */
function straightStep(draft: Draft, core: string, height: number): void {
  const size = sizer(draft);
  const [first, second, third] = [size(120, 300), size(120, 300), size(120, 240)];
  addOutline(draft, { points: [[0, 0], [first, 0], [first + second, 0], [first + second, third]], open: true }, { storey: 'S1', core });
  const lower = lowerHeight(draft, height);
  for (const index of [1, 2]) draft.walls[index] = { ...draft.walls[index]!, height: lower };
}

/** A partition drawn to a point where its through wall is drawn in two: three ends meet. */
function threeEnds(draft: Draft, core: string): void {
  const size = sizer(draft);
  const [width, depth] = [size(300, 560), size(200, 400)];
  const x = size(100, width - 100);
  addOutline(draft, { points: [[0, 0], [x, 0], [width, 0], [width, depth], [0, depth]] }, { storey: 'S1', core });
  addOutline(draft, { points: [[x, 0], [x, size(90, depth - 40)]], open: true }, { storey: 'S1', core: draft.random.pick(CORES) });
}

function twoStoreys(draft: Draft, core: string): StoreyRow {
  const shape = draft.random.pick(['rectangle', 'lShape', 'bay'] as const);
  for (const outline of SHAPES[shape]!(sizer(draft), draft.random)) {
    addOutline(draft, outline, { storey: 'S1', core });
    addOutline(draft, outline, { storey: 'S2', core: draft.random.chance(0.5) ? core : '6' });
  }
  return { id: 'S2', height: randomHeight(draft), grade: 'above', storeyAbove: false, closed: false, on: 'S1' };
}

function addOpenings(draft: Draft, storeys: readonly StoreyRow[], tight: boolean): void {
  const { random, perInch } = draft;
  const size = sizer(draft);
  const margin = (): number => (tight ? size(0, 60) : size(CLEAR_OF_LEGS, 120));
  for (const wall of draft.walls) {
    const run = Math.hypot(Number(wall.to![0]) - Number(wall.from![0]), Number(wall.to![1]) - Number(wall.from![1])) / perInch;
    const height = Number(wall.height ?? storeys.find(({ id }) => id === wall.storey)!.height) / perInch;
    if (height < 40 || random.chance(0.35)) continue;
    const tees = teeStations(draft, wall);
    for (let at = margin(); ; at += margin()) {
      const width = size(16, 84);
      if (at + width > run - (tight ? 0 : CLEAR_OF_LEGS) || draft.openings.length > 40) break;
      const door = random.chance(0.4);
      const sill = door ? 0 : size(8, Math.max(9, Math.min(48, height - 32)));
      const tall = size(12, Math.max(13, height - sill - (tight && random.chance(0.1) ? 0 : 8)));
      const lining = random.chance(0.3) ? 'end-closure' : 'buck';
      const clear = tees.every((station) => station < at - 40 || station > at + width + 40);
      if (clear) {
        draft.openings.push({
          mark: `O${draft.openings.length + 1}`, wall: wall.mark, at: written(draft, at), sill: written(draft, sill),
          width: written(draft, width), height: written(draft, tall), lining,
        });
      }
      at += width;
    }
  }
}

/** Where the ends of other walls come near this one's line, in inches from its own start. */
function teeStations({ walls, perInch }: Draft, wall: WallRow): number[] {
  const [x, y] = wall.from!.map(Number) as [number, number];
  const [dx, dy] = [Number(wall.to![0]) - x, Number(wall.to![1]) - y];
  const run = Math.hypot(dx, dy);
  return walls.filter((each) => each !== wall && each.storey === wall.storey).flatMap((each) => [each.from!, each.to!]).flatMap((end) => {
    const [ex, ey] = [Number(end[0]) - x, Number(end[1]) - y];
    const across = Math.abs((dx * ey - dy * ex) / run) / perInch;
    return across < 16 ? [(dx * ex + dy * ey) / run / perInch] : [];
  });
}
