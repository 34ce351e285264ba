import type { Opening, Schedule, Storey, Wall } from '../../src/domain/schedule/schedule.js';
import { inches } from '../../src/domain/quantity/length.js';
import { seededRandom, type SeededRandom } from '../support/seeded-random.js';

/**
 * An estate of houses, each drawn anew: what the bench takes off.
 *
 * A house is a loop of four, six or eight walls (rectangle, L, T, U) or has a 45° bay (eight walls), 16 to 50 ft a side on a grid
 * of 2 in, with none to two partitions that end on its walls in tees. Outer walls are of 6 or 8 in, partitions of 4 or 6 in, storeys 8, 9 or
 * 10 ft high. Every wall has none to three openings: doors, windows and now and then a garage door, at stations of 2 in, clear of corner
 * legs and of tees. A storey is a street of twenty houses. No house is a copy of another; what repeats is only what a module repeats.
 */
export interface HouseSize {
  readonly walls: number;
  readonly schedule: Schedule;
}

type Point = readonly [x: number, y: number];
interface Outline {
  readonly points: readonly Point[];
  readonly core: string;
  readonly open: boolean;
}

interface House {
  readonly height: number;
  readonly walls: readonly Wall[];
  readonly openings: readonly Opening[];
}

const PLACE = { sheet: null, row: null, pointer: '' };
const HOUSES_A_STREET = 20;
/** Houses stand this far apart [in]. */
const PLOT = 1_200;
const GRID = 2;
/** From a corner, a tee or another opening [in]: clear of the legs. */
const CLEAR = 46;

const sizer = (random: SeededRandom) => (low: number, high: number): number => random.whole(low / GRID, high / GRID) * GRID;
type Sizer = ReturnType<typeof sizer>;

const SHAPES: readonly ((size: Sizer) => readonly Point[])[] = [
  (size) => {
    const [w, d] = [size(240, 600), size(240, 480)];
    return [[0, 0], [w, 0], [w, d], [0, d]];
  },
  (size) => {
    const [w, d, nw, nd] = [size(360, 600), size(360, 560), size(140, 200), size(140, 200)];
    return [[0, 0], [w, 0], [w, d - nd], [w - nw, d - nd], [w - nw, d], [0, d]];
  },
  (size) => {
    const [a, b, c, stem, bar] = [size(120, 200), size(140, 220), size(120, 200), size(120, 240), size(160, 240)];
    return [[a, 0], [a + b, 0], [a + b, stem], [a + b + c, stem], [a + b + c, stem + bar], [0, stem + bar], [0, stem], [a, stem]];
  },
  (size) => {
    const [a, b, c, d, deep] = [size(130, 200), size(140, 240), size(130, 200), size(300, 420), size(120, 160)];
    return [[0, 0], [a + b + c, 0], [a + b + c, d], [a + b, d], [a + b, d - deep], [a, d - deep], [a, d], [0, d]];
  },
  (size) => {
    const [a, out, b, c, d] = [size(120, 200), size(66, 90), size(100, 200), size(120, 200), size(240, 360)];
    return [[0, 0], [a, 0], [a + out, -out], [a + out + b, -out], [a + 2 * out + b, 0], [a + 2 * out + b + c, 0], [a + 2 * out + b + c, d], [0, d]];
  },
];

/** Partitions from the lowest wall straight up into the house, drawn to the middle of the walls they end on. */
function partitions(points: readonly Point[], size: Sizer, random: SeededRandom): Outline[] {
  if (points[0]![1] !== 0 || points[1]![1] !== 0) return [];
  const [left, right] = [points[0]![0], points[1]![0]];
  const top = points.find(([x, y], index) => {
    const next = points[(index + 1) % points.length]!;
    return y === next[1] && y > 200 && x >= right && next[0] <= left;
  })?.[1];
  if (top === undefined) return [];
  const count = Math.min(random.whole(0, 2), Math.floor((right - left - 160) / 160));
  return Array.from({ length: Math.max(0, count) }, (_, index): Outline => {
    const x = left + size(80 + (index * (right - left - 160)) / count, ((index + 1) * (right - left - 160)) / count);
    return { points: [[x, 6], [x, top - 6]], core: random.pick(['4', '6']), open: true };
  });
}

const OPENINGS = [
  { width: [36, 42], sill: 0, height: [82, 84] },
  { width: [24, 48], sill: 36, height: [36, 48] },
  { width: [36, 72], sill: 32, height: [44, 56] },
  { width: [48, 96], sill: 24, height: [56, 64] },
  { width: [96, 120], sill: 0, height: [84, 84] },
] as const;

function openingsIn(wall: Wall, run: number, tees: readonly number[], size: Sizer, random: SeededRandom, first: number): Opening[] {
  const found: Opening[] = [];
  const most = random.whole(0, 3);
  for (let at = size(CLEAR, 110); found.length < most; at += size(CLEAR, 110)) {
    const kind = OPENINGS[random.whole(0, random.chance(0.05) ? 4 : 3)]!;
    const width = size(kind.width[0], kind.width[1]);
    if (at + width > run - CLEAR) break;
    if (tees.every((tee) => tee < at - CLEAR || tee > at + width + CLEAR)) {
      found.push({
        mark: `O${first + found.length}`, wall: wall.mark, at: inches(at), sill: inches(kind.sill), width: inches(width), height: inches(size(kind.height[0], kind.height[1])),
        lining: random.chance(0.2) ? 'end-closure' : 'buck', measured: 'concrete', place: PLACE,
      });
    }
    at += width;
  }
  return found;
}

function house(seed: number, storey: string, height: number): House {
  const random = seededRandom(seed * 104_729 + 7);
  const size = sizer(random);
  const points = random.pick(SHAPES)(size);
  const core = random.pick(['6', '6', '8']);
  const inner = partitions(points, size, random);
  const outlines: Outline[] = [{ points, core, open: false }, ...inner];
  const walls: Wall[] = [];
  const openings: Opening[] = [];
  const [x, y] = [(seed % HOUSES_A_STREET) * PLOT, Math.floor(seed / HOUSES_A_STREET) * PLOT];
  for (const outline of outlines) {
    outline.points.forEach((from, index) => {
      if (outline.open && index === outline.points.length - 1) return;
      const to = outline.points[(index + 1) % outline.points.length]!;
      const run = Math.hypot(to[0] - from[0], to[1] - from[1]);
      const wall: Wall = {
        mark: `H${seed}-${walls.length + 1}`, storey, core: outline.core, from: { x: inches(x + from[0]), y: inches(y + from[1]) }, to: { x: inches(x + to[0]), y: inches(y + to[1]) },
        length: inches(run), dimensionsTo: 'foam-face', height: inches(height), base: 0, arc: null, start: null, end: null, place: PLACE,
      };
      walls.push(wall);
      const level = !outline.open && from[1] === to[1];
      const tees = level ? inner.map(({ points: [at] }) => Math.abs(at![0] - from[0])) : [];
      openings.push(...openingsIn(wall, run, tees, size, random, openings.length + 1).map((opening) => ({ ...opening, mark: `H${seed}-${opening.mark}` })));
    });
  }
  return { height, walls, openings };
}

const streetOf = (n: number): Storey => ({
  id: `S${n + 1}`, height: inches([96, 108, 120][n % 3]!), grade: 'above', storeyAbove: false, closed: true, on: null,
});

const scheduleOf = (storeys: readonly Storey[], houses: readonly House[]): Schedule => ({
  format: 'wallcourse/schedule@1', name: 'estate', units: 'in', dimensionsTo: 'foam-face', range: 'HERON-16', storeys,
  walls: houses.flatMap(({ walls }) => walls), openings: houses.flatMap(({ openings }) => openings), features: [], site: null, pour: null, unknown: [],
});

function* housesFrom(first: number): Generator<{ readonly street: Storey; readonly house: House }> {
  for (let seed = first; ; seed++) {
    const street = streetOf(Math.floor((seed - first) / HOUSES_A_STREET));
    yield { street, house: house(seed, street.id, street.height / inches(1)) };
  }
}

/** One job of at least so many walls: whole houses, a storey to every street of twenty. */
export function estate(walls: number, first = 0): Schedule {
  const streets = new Map<string, Storey>();
  const houses: House[] = [];
  let count = 0;
  for (const { street, house: next } of housesFrom(first)) {
    streets.set(street.id, street);
    houses.push(next);
    count += next.walls.length;
    if (count >= walls) break;
  }
  return scheduleOf([...streets.values()], houses);
}

/** At least so many walls as one job a house, made as they are asked for. */
export function* houseByHouse(walls: number, first = 0): Generator<Schedule> {
  let count = 0;
  for (const { street, house: next } of housesFrom(first)) {
    yield scheduleOf([street], [next]);
    count += next.walls.length;
    if (count >= walls) return;
  }
}
