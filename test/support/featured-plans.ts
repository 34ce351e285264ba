import type { Feature, Schedule } from '../../src/domain/schedule/schedule.js';
import { slowStacks, slowCourses } from '../oracles/slow-stack.js';
import { HERON } from '../oracles/heron-figures.js';
import { canonicalSchedule } from './canonical-schedule.js';
import { randomPlan, type Plan } from './plans.js';
import type { ScheduleDocument, WallRow } from './schedule-document.js';
import { seededRandom, type SeededRandom } from './seeded-random.js';

/** A ledge or taper top as drawn, in the document's own units. */
export type FeatureRow =
  | { readonly kind: 'ledge'; readonly wall: string; readonly at: number; readonly from: number; readonly to: number; readonly face: 'outside' | 'inside' }
  | { readonly kind: 'taper-top'; readonly wall: string; readonly faces: 'one' | 'both' };

export interface FeaturedPlan {
  readonly plan: Plan;
  readonly features: readonly FeatureRow[];
}

const PER_INCH = { in: 1, ft: 1 / 12, mm: 25.4, m: 0.0254 } as const;
const place = { sheet: null, row: null, pointer: '' };
/** Longer than any corner leg of the demo range. */
const CLEAR_OF_LEGS = 44;

export const runOf = ({ from, to }: WallRow): number => Math.hypot(Number(to![0]) - Number(from![0]), Number(to![1]) - Number(from![1]));

/** A random plan with ledges from end to end or clear of the legs, and tapers, on some of its walls; most on cores that have the units. */
export function featuredPlan(seed: number): FeaturedPlan {
  const random = seededRandom(seed * 31 + 5);
  const bare = randomPlan(seed);
  const core = random.chance(0.85) ? random.pick(['6', '8']) : null;
  const walls = bare.document.walls.map((wall) => ({ ...wall, core: core ?? wall.core }));
  const plan: Plan = { ...bare, document: { ...bare.document, walls } };
  const everywhere = random.chance(0.4);
  const face = random.pick(['outside', 'outside', 'inside'] as const);
  const tapered = random.chance(0.5);
  const common = { share: random.next(), faces: random.pick(['one', 'both'] as const) };
  const features = walls.flatMap((wall): FeatureRow[] => [
    ...(everywhere || random.chance(0.4) ? [ledgeOn(wall, plan.document, everywhere, face, common.share, random)] : []),
    ...(tapered && random.chance(0.7) ? [{ kind: 'taper-top' as const, wall: wall.mark, faces: random.chance(0.8) ? common.faces : random.pick(['one', 'both'] as const) }] : []),
  ]);
  return { plan, features };
}

function ledgeOn(wall: WallRow, document: ScheduleDocument, everywhere: boolean, face: 'outside' | 'inside', share: number, random: SeededRandom): FeatureRow {
  const unit = PER_INCH[document.units];
  const height = Number(wall.height ?? document.storeys.find(({ id }) => id === wall.storey)!.height) / unit;
  const courses = slowCourses(slowStacks(height, HERON)[0]!, HERON);
  const course = courses[Math.floor((everywhere ? share : random.next()) * courses.length)]!;
  const run = runOf(wall);
  const clear = CLEAR_OF_LEGS * unit;
  const part = !everywhere && random.chance(0.5) && run > 2 * clear + 40 * unit;
  const from = part ? clear + Math.floor((random.next() * (run - 2 * clear)) / 3) : 0;
  const to = part ? Math.ceil(from + 16 * unit + random.next() * (run - clear - from - 16 * unit)) : run;
  return { kind: 'ledge', wall: wall.mark, at: course.top * unit, from, to: part ? Math.min(to, Math.floor(run - clear)) : run, face: everywhere ? face : random.pick(['outside', 'inside'] as const) };
}

export function featuredSchedule({ plan, features }: FeaturedPlan): Schedule {
  const schedule = canonicalSchedule(plan.document);
  const nm = (value: number): number => Math.round((value / PER_INCH[plan.document.units]) * 25_400_000);
  const rows = features.map((row): Feature => {
    if (row.kind === 'taper-top') return { ...row, place };
    const { length } = schedule.walls.find(({ mark }) => mark === row.wall)!;
    return { ...row, at: nm(row.at), from: Math.max(0, nm(row.from)), to: Math.min(length, nm(row.to)), place };
  });
  return { ...schedule, features: rows };
}

/** The features of a plan whose drawing was changed: on a wall drawn the other way they are told from its other end. */
export function changed({ plan, features }: FeaturedPlan, document: ScheduleDocument, turned: (wall: WallRow, before: WallRow) => boolean): FeaturedPlan {
  const rows = features.map((row): FeatureRow => {
    const before = plan.document.walls.find(({ mark }) => mark === row.wall)!;
    const after = document.walls.find(({ mark }) => mark === row.wall)!;
    const run = runOf(before);
    return row.kind === 'ledge' && turned(after, before) ? { ...row, from: run - row.to, to: run - row.from } : row;
  });
  return { plan: { ...plan, document }, features: rows };
}
