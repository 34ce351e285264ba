import type { Outline, Sizer } from './plan-shapes.js';
import type { SeededRandom } from './seeded-random.js';

/** An outline some of whose sides are arcs, by the index of the point they leave [in]. */
export interface ArcOutline extends Outline {
  readonly arcs?: Readonly<Record<number, { readonly radius: number; readonly turns: 'left' | 'right' }>>;
}

type ArcShape = (size: Sizer, random: SeededRandom) => readonly ArcOutline[];

const degrees = (value: number): number => (value * Math.PI) / 180;

/** Where an arc ends that leaves the origin along the x axis. */
function swept(radius: number, sweep: number, turns: 'left' | 'right'): [number, number] {
  const y = radius * (1 - Math.cos(sweep));
  return [radius * Math.sin(sweep), turns === 'left' ? y : -y];
}

const turnsOf = (random: SeededRandom): 'left' | 'right' => random.pick(['left', 'right'] as const);

/** One radius wall that ends free. */
const arcFree: ArcShape = (size, random) => {
  const turns = turnsOf(random);
  const radius = size(120, 300);
  return [{ points: [[0, 0], swept(radius, degrees(random.pick([30, 60, 90, 137, 180])), turns)], open: true, arcs: { 0: { radius, turns } } }];
};

/** A straight run into a radius wall and straight on along its last tangent. */
const arcTangent: ArcShape = (size, random) => {
  const turns = turnsOf(random);
  const [before, after, radius, sweep] = [size(60, 120), size(60, 120), size(130, 260), degrees(random.pick([30, 45, 90, 120]))];
  const [x, y] = swept(radius, sweep, turns);
  const way = turns === 'left' ? sweep : -sweep;
  const end: [number, number] = [before + x, y];
  return [{ points: [[0, 0], [before, 0], end, [end[0] + after * Math.cos(way), end[1] + after * Math.sin(way)]], open: true, arcs: { 1: { radius, turns } } }];
};

/** Two straights and two half circles, closed. */
const stadium: ArcShape = (size) => {
  const [run, radius] = [size(80, 140), size(130, 200)];
  const arc = { radius, turns: 'left' as const };
  return [{ points: [[0, 0], [run, 0], [run, 2 * radius], [0, 2 * radius]], arcs: { 1: arc, 3: arc } }];
};

/** A house one side of which is bowed out or in, meeting its neighbours at corners. */
const bowedSide: ArcShape = (size, random) => {
  const [width, depth] = [size(160, 260), size(160, 220)];
  return [{ points: [[0, 0], [width, 0], [width, depth], [0, depth]], arcs: { 1: { radius: depth * random.pick([0.75, 1, 1.6]), turns: turnsOf(random) } } }];
};

/** Two arcs that meet in points. */
const lens: ArcShape = (size) => {
  const width = size(240, 320);
  return [{ points: [[0, 0], [width, 0]], arcs: { 0: { radius: width * 0.7, turns: 'left' }, 1: { radius: width * 0.9, turns: 'left' } } }];
};

/** An arc standing on the side of a straight wall at one end, free at the other. */
const arcTee: ArcShape = (size, random) => {
  const [width, x, radius, turns] = [size(240, 320), size(110, 130), size(150, 240), turnsOf(random)];
  const [dx, dy] = swept(radius, degrees(random.pick([40, 60])), turns);
  // Turned a quarter to the left, so that it leaves the wall square.
  return [{ points: [[0, 0], [width, 0]], open: true }, { points: [[x, 3], [x - dy, 3 + dx]], open: true, arcs: { 0: { radius, turns } } }];
};

export const ARC_SHAPES: Readonly<Record<string, ArcShape>> = { arcFree, arcTangent, stadium, bowedSide, lens, arcTee };
