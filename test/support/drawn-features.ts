import { inches } from '../../src/domain/quantity/length.js';
import type { Feature, LengthUnit, Schedule, Wall } from '../../src/domain/schedule/schedule.js';
import { ledge, rectangle, taper } from './features.js';
import { scheduleOf } from './small-schedules.js';
import type { OpeningInput, WallInput } from './small-schedules.js';
import { seededRandom } from './seeded-random.js';

const place = { sheet: null, row: null, pointer: '' };

/** In inches: a gable, a change of the core up a wall. */
export const gable = (wall: string, rise: number, peakAt: number): Feature => ({
  kind: 'gable', wall, rise: inches(rise), peakAt: inches(peakAt), place,
});
export const coreChange = (wall: string, at: number, core: string, flush: 'outside' | 'inside' | 'centre' = 'outside'): Feature => ({
  kind: 'core-change', wall, at: inches(at), core, flush, place,
});

interface ArcInput {
  readonly radius: number;
  readonly turns: 'left' | 'right';
}

export interface FeaturedJob {
  readonly walls: readonly WallInput[];
  readonly features?: readonly Feature[];
  readonly openings?: readonly OpeningInput[];
  readonly arcs?: Readonly<Record<string, ArcInput>>;
  readonly height?: number;
  readonly units?: LengthUnit;
}

/** One storey on a footing with features; an arc makes a wall of its mark a radius wall. */
export function featuredSchedule({ walls, features = [], openings = [], arcs = {}, height = 96, units = 'in' }: FeaturedJob): Schedule {
  const schedule = scheduleOf(walls, { openings, height });
  const bent = (wall: Wall): Wall => {
    const arc = arcs[wall.mark];
    if (arc === undefined || wall.length === null) return wall;
    const radius = inches(arc.radius);
    return { ...wall, arc: { radius, turns: arc.turns }, length: Math.round(2 * radius * Math.asin(wall.length / 2 / radius)) };
  };
  return { ...schedule, units, features, walls: schedule.walls.map(bent) };
}

const RING = rectangle(480, 336);
const all = (feature: (mark: string) => Feature): Feature[] => ['A', 'B', 'C', 'D'].map(feature);
const opening = (mark: string, wall: string, at: number, sill: number, width: number, height: number): OpeningInput => ({
  mark, wall, at, sill, width, height,
});
const lengths: Readonly<Record<string, number>> = { A: 480, B: 336, C: 480, D: 336 };

/** Jobs that show one feature each, and a few that show several. Inches. */
export const FEATURED_JOBS: Readonly<Record<string, FeaturedJob>> = {
  'free-gable': { walls: [{ mark: 'A', from: [0, 0], to: [240, 0] }], features: [gable('A', 60, 120)] },
  'steep-gable': { walls: [{ mark: 'A', from: [0, 0], to: [180, 0] }], features: [gable('A', 130, 60)] },
  'gable-ring': {
    walls: RING,
    features: [gable('B', 112, 168), gable('D', 112, 120)],
    openings: [
      opening('D1', 'A', 60, 0, 36, 84), opening('W1', 'B', 60, 36, 48, 44), opening('W2', 'B', 144, 72, 48, 72),
      opening('W3', 'D', 108, 120, 24, 36),
    ],
  },
  'lean-to': {
    walls: RING.map((wall) => (wall.mark === 'C' ? { ...wall, height: 144 } : wall)),
    features: [gable('B', 48, 336), gable('D', 48, 0)],
    openings: [opening('W1', 'B', 200, 48, 48, 64)],
  },
  'ledge-all-round': {
    walls: RING,
    features: all((mark) => ledge(mark, 64, 0, lengths[mark] as number)),
    openings: [opening('D1', 'A', 60, 0, 36, 84), opening('W1', 'A', 240, 56, 48, 32), opening('W2', 'C', 240, 36, 48, 24)],
  },
  'ledge-part': {
    walls: [...RING, { mark: 'P', from: [160, 11], to: [160, 325] }],
    features: [ledge('A', 48, 200, 480), ledge('B', 48, 0, 160), ledge('C', 80, 60, 300, 'inside'), ledge('D', 70, 60, 200)],
  },
  taper: { walls: [{ mark: 'A', from: [0, 0], to: [240, 0] }], features: [taper('A', 'both')], openings: [opening('W1', 'A', 60, 40, 36, 44)] },
  'taper-ring': { walls: RING, features: [taper('A'), taper('B'), taper('C')], openings: [opening('D1', 'A', 60, 0, 36, 84)] },
  'core-change': { walls: [{ mark: 'S', from: [0, 0], to: [240, 0], core: '10' }], features: [coreChange('S', 64, '6')] },
  'core-change-ring': {
    walls: [...rectangle(480, 336, '10'), { mark: 'P', from: [200, 15], to: [200, 200], core: '6' }],
    features: all((mark) => coreChange(mark, 64, '8', 'centre')),
    openings: [opening('W1', 'A', 60, 48, 48, 32)],
  },
  'core-change-alone': { walls: rectangle(240, 240, '10'), features: [coreChange('A', 64, '8')] },
  'radius-free': {
    walls: [{ mark: 'R', from: [0, 0], to: [240, 240] }],
    arcs: { R: { radius: 240, turns: 'left' } },
    openings: [opening('W1', 'R', 150, 36, 48, 48)],
  },
  'radius-tight': { walls: [{ mark: 'R', from: [0, 0], to: [40, 40] }], arcs: { R: { radius: 40, turns: 'right' } } },
  bay: {
    walls: [
      { mark: 'A', from: [0, 0], to: [150, 0] }, { mark: 'B', from: [150, 0], to: [390, 0] }, { mark: 'C', from: [390, 0], to: [540, 0] },
      { mark: 'D', from: [540, 0], to: [540, 300] }, { mark: 'E', from: [540, 300], to: [0, 300] }, { mark: 'F', from: [0, 300], to: [0, 0] },
    ],
    arcs: { B: { radius: 150, turns: 'left' } },
    openings: [opening('W1', 'B', 130, 36, 40, 48), opening('D1', 'E', 120, 0, 36, 84)],
  },
  'round-end': {
    walls: [
      { mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [240, 300] }, { mark: 'C', from: [240, 300], to: [0, 300] },
      { mark: 'D', from: [0, 300], to: [0, 0] },
    ],
    arcs: { B: { radius: 150, turns: 'left' } },
    openings: [opening('W1', 'B', 210, 36, 48, 48)],
  },
  'arc-tee': {
    walls: [{ mark: 'A', from: [0, 0], to: [360, 0] }, { mark: 'R', from: [160, 5.5], to: [60, 150] }],
    arcs: { R: { radius: 160, turns: 'left' } },
  },
  'metric-house': {
    walls: rectangle(9600 / 25.4, 7200 / 25.4),
    features: [gable('B', 2400 / 25.4, 3600 / 25.4), ledge('A', 64, 0, 9600 / 25.4), taper('C')],
    openings: [opening('W1', 'B', 3000 / 25.4, 36, 1200 / 25.4, 72), opening('D1', 'A', 1500 / 25.4, 0, 900 / 25.4, 50)],
    units: 'mm',
  },
};

const CORES = ['6', '8'] as const;

/** A random house with features, the same for the same seed: what may stand together on a wall and no more. */
export function randomFeatured(seed: number): FeaturedJob {
  const random = seededRandom(seed * 6_151 + 3);
  const metric = random.chance(0.3);
  const size = (low: number, high: number): number => (metric ? Math.round((random.whole(low, high) * 25.4) / 10) / 2.54 : random.whole(low, high));
  const [width, depth, core] = [size(300, 560), size(240, 420), random.pick(CORES)];
  const height = random.pick([80, 96, 112]);
  const sides: Readonly<Record<string, number>> = { A: width, B: depth, C: width, D: depth };
  const sided = rectangle(width, depth, core);
  const bowed = random.chance(0.3);
  const walls = sided.filter(({ mark }) => !(bowed && mark === 'C'));
  if (bowed) walls.push({ mark: 'C', core, from: [width, depth], to: [0, depth] });
  const features: Feature[] = [];
  const openings: OpeningInput[] = [];
  const changed = core === '8' && !bowed && random.chance(0.3);
  for (const mark of bowed ? ['A', 'B', 'D'] : ['A', 'B', 'C', 'D']) {
    const side = sides[mark] as number;
    if (changed) features.push(coreChange(mark, 64, '6', random.pick(['outside', 'inside', 'centre'])));
    else if (random.chance(0.35)) features.push(gable(mark, size(30, 120), random.pick([0, side, size(90, 200)])));
    else if (random.chance(0.4)) features.push(taper(mark, random.pick(['one', 'both'])));
    if (!changed && random.chance(0.5)) {
      const [from, to] = random.chance(0.5) ? [0, side] : [size(0, 60), side - size(0, 60)];
      features.push(ledge(mark, random.pick([32, 48, 64, 70]), from, to, random.pick(['outside', 'inside'])));
    }
    if (random.chance(0.7)) openings.push(opening(`W${mark}`, mark, size(60, 150), random.pick([0, 24, 36]), size(24, 60), size(24, 44)));
  }
  const arcs: Record<string, ArcInput> = bowed ? { C: { radius: width * random.pick([0.55, 0.8, 1.5]), turns: random.pick(['left', 'right'] as const) } } : {};
  return { walls, features, openings, arcs, height, units: metric ? 'mm' : 'in' };
}
