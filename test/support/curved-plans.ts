import { inches } from '../../src/domain/quantity/length.js';
import type { Schedule, Wall } from '../../src/domain/schedule/schedule.js';
import { HERON } from '../oracles/heron-figures.js';
import { slowStacks } from '../oracles/slow-stack.js';
import { canonicalSchedule } from './canonical-schedule.js';
import { CURVED_KINDS, type CurvedChain, type CurvedDraft } from './curved-kinds.js';
import type { OpeningRow, ScheduleDocument, WallRow } from './schedule-document.js';
import { seededRandom, type SeededRandom } from './seeded-random.js';
import { scheduleOf, type OpeningInput, type WallInput } from './small-schedules.js';

/** A wall in inches, straight or on an arc. */
export interface CurvedWallInput extends WallInput {
  readonly arc?: { readonly radius: number; readonly turns: 'left' | 'right' };
}

/** The minor arc's length, in the unit of its chord and radius. */
export const minorArc = (chord: number, radius: number): number => 2 * radius * Math.asin(Math.min(1, chord / (2 * radius)));

const curved = (wall: Wall, { arc, from, to }: CurvedWallInput): Wall =>
  arc
    ? { ...wall, arc: { radius: inches(arc.radius), turns: arc.turns }, length: inches(minorArc(Math.hypot(to[0] - from[0], to[1] - from[1]), arc.radius)) }
    : wall;

/** A canonical schedule in inches, walls straight or on arcs. */
export function curvedSchedule(walls: readonly CurvedWallInput[], options: { openings?: readonly OpeningInput[]; height?: number; closed?: boolean } = {}): Schedule {
  const { closed = false, ...rest } = options;
  const schedule = scheduleOf(walls, { ...rest, storey: { closed } });
  return { ...schedule, walls: schedule.walls.map((wall, index) => curved(wall, walls[index]!)) };
}

/** A row with an arc, as a person writes it. */
export interface CurvedRow extends WallRow {
  readonly arc?: { readonly radius: number; readonly turns: 'left' | 'right' };
}

export interface CurvedDocument extends Omit<ScheduleDocument, 'walls'> {
  readonly walls: readonly CurvedRow[];
}

/** A random plan with curves, and what the drawing meant. Marks are those of the walls in the order of `chains`. */
export interface CurvedPlan {
  readonly seed: number;
  readonly kind: string;
  readonly document: CurvedDocument;
  readonly chains: readonly (CurvedChain & { readonly marks: readonly string[] })[];
}

const CORES = ['4', '6', '8', '10'];
/** Clear of every leg of the demo range, and of a closure. */
const CLEAR_OF_LEGS = 46;
/** Past the node of any corner of the demo range, on its dimension line. */
const CLEAR_OF_NODES = 16;
const NM_PER_INCH = 25_400_000;
export const PER_INCH = { in: 1, ft: 1 / 12, mm: 25.4, m: 0.0254 } as const;

/** A random plan: the same for the same seed and wishes. `tight`: openings as near to ends and one another as the wall allows. */
export function curvedPlan(seed: number, wishes: { kind?: string; tight?: boolean } = {}): CurvedPlan {
  const random = seededRandom(seed * 15_485_863 + 29);
  const metric = random.chance(0.3);
  const names = Object.keys(CURVED_KINDS);
  const kind = wishes.kind ?? names[seed % names.length]!;
  const perInch = metric ? PER_INCH.mm : 1;
  const grid = metric ? random.pick([1, 5, 10, 100]) : random.pick([1, 2, 12, 0.5, 0.25]);
  const size = (low: number, high: number): number => (random.whole(Math.ceil((low * perInch) / grid), Math.max(Math.ceil((low * perInch) / grid), Math.floor((high * perInch) / grid))) * grid) / perInch;
  const core = random.pick(CORES);
  const dimensionsTo = random.pick(['foam-face', 'foam-face', 'concrete-face', 'axis'] as const);
  const width = HERON.coreWidth[core]!;
  const offset = { 'foam-face': width / 2 + HERON.panel, 'concrete-face': width / 2, axis: 0 }[dimensionsTo];
  const height = randomHeight(random, metric, kind === 'lowBay');
  const low = random.whole(1, Math.floor(height / HERON.courseHeight) - 1) * HERON.courseHeight;
  const drawn = CURVED_KINDS[kind]!({ random, size, offset });
  let count = 0;
  const rows = drawn.map(({ walls, on }) => {
    const own = on ? random.pick(CORES) : core;
    return walls.map((wall) => rowOf(`W${(count += 1)}`, wall, own, { perInch, low }));
  });
  const chains = drawn.map((each, index) => ({ ...each, marks: rows[index]!.map(({ mark }) => mark) }));
  const throughs = new Set(drawn.flatMap(({ on }) => Object.values(on ?? {}).map((index) => `W${index + 1}`)));
  const walls = rows.flat();
  const openings = walls.filter(({ mark }) => !throughs.has(mark)).flatMap((row) => openingsOf(row, Number(row.height ?? height * perInch) / perInch, { random, perInch, grid, size, tight: wishes.tight ?? false }));
  return {
    seed, kind, chains,
    document: {
      format: 'wallcourse/schedule@1', name: `${kind} ${seed}`, units: metric ? 'mm' : 'in', dimensionsTo, range: 'HERON-16',
      storeys: [{ id: 'S1', height: height * perInch, grade: 'above', storeyAbove: false, closed: chains.some(({ closed }) => closed) }],
      walls, openings,
    },
  };
}

function rowOf(mark: string, { from, to, radius, turn, low }: CurvedDraft, core: string, { perInch, low: lowHeight }: { perInch: number; low: number }): CurvedRow {
  const arc = radius === undefined ? {} : { arc: { radius: radius * perInch, turns: turn === 1 ? ('left' as const) : ('right' as const) } };
  const height = low ? { height: lowHeight * perInch } : {};
  return { mark, storey: 'S1', core, from: [from[0] * perInch, from[1] * perInch], to: [to[0] * perInch, to[1] * perInch], ...height, ...arc };
}

/** A height some stack makes, with rips and strips; whole courses where a lower wall must meet the beds. */
function randomHeight(random: SeededRandom, metric: boolean, level: boolean): number {
  for (;;) {
    const wished = random.pick([96, 48, 64, 99, 102, 86, 108, random.whole(34, 130), random.whole(4 * 34, 4 * 130) / 4]);
    const height = metric ? (Math.round((wished * 25.4) / 10) * 10) / 25.4 : wished;
    const stack = slowStacks(height, HERON)[0];
    if (stack && !(level && stack.strips > 0)) return height;
  }
}

export const lengthOf = ({ from, to, arc }: CurvedRow): number => {
  const chord = Math.hypot(Number(to![0]) - Number(from![0]), Number(to![1]) - Number(from![1]));
  return arc ? (Math.abs(2 * arc.radius - chord) < 1e-6 ? Math.PI * arc.radius : minorArc(chord, arc.radius)) : chord;
};

interface OpeningDesk {
  readonly random: SeededRandom;
  readonly perInch: number;
  readonly grid: number;
  readonly size: (low: number, high: number) => number;
  readonly tight: boolean;
}

function openingsOf(row: CurvedRow, height: number, { random, perInch, size, tight }: OpeningDesk): OpeningRow[] {
  const openings: OpeningRow[] = [];
  const run = lengthOf(row) / perInch;
  // An opening that leaves nothing of a corner's leg stands in the corner itself.
  const nearest = tight ? (row.arc ? 0 : CLEAR_OF_NODES) : CLEAR_OF_LEGS;
  const margin = (): number => size(nearest, tight ? 50 : 110);
  if (height < 40 || random.chance(0.3)) return openings;
  for (let at = margin(); openings.length < 3; at += margin()) {
    const width = size(16, 84);
    if (at + width > run - nearest) break;
    const sill = random.chance(0.5) ? 0 : random.whole(8, Math.max(9, Math.min(48, height - 32)));
    const tall = random.whole(12, Math.max(13, Math.floor(height - sill - 8)));
    openings.push({
      mark: `${row.mark}O${openings.length + 1}`, wall: row.mark, at: at * perInch, sill: sill * perInch, width: width * perInch, height: tall * perInch,
      lining: random.chance(0.4) ? 'end-closure' : 'buck',
    });
    at += width;
  }
  return openings;
}

/** A document with arcs as the readers hand it on, made here without them. */
export function curvedCanonical(document: CurvedDocument): Schedule {
  const schedule = canonicalSchedule(document);
  return {
    ...schedule,
    walls: schedule.walls.map((wall, index): Wall => {
      const { arc } = document.walls[index]!;
      if (!arc) return wall;
      const radius = Math.round((arc.radius / PER_INCH[document.units]) * NM_PER_INCH);
      const chord = Math.hypot(wall.to.x - wall.from.x, wall.to.y - wall.from.y);
      // A half circle of rounded coordinates is one (decision 6: 2 µm).
      const length = Math.abs(2 * radius - chord) <= 2_000 ? Math.PI * radius : minorArc(chord, radius);
      return { ...wall, arc: { radius, turns: arc.turns }, length: Math.round(length) };
    }),
  };
}
