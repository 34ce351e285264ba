import { finding, type Finding } from '../evidence/finding.js';
import { toMm, type Nm } from '../quantity/length.js';
import type { Core, FormRange } from '../range/range.js';
import type { Feature, Schedule, Storey, Wall } from '../schedule/schedule.js';
import { dimensionOffset } from './axes.js';
import { NO_UNITS, type CourseUnits } from './course-units.js';
import type { LaidCoreChange } from './laid.js';
import { planStorey, type StoreyPlan } from './storey-plan.js';
import type { WallStack } from './storey-stacks.js';

type CoreChangeFeature = Extract<Feature, { kind: 'core-change' }>;

/** Part of a storey's height in which no wall changes its core: what stands in it is planned by itself. */
export interface Level {
  /** Elevations above the storey's bottom; the last level has no top. */
  readonly from: Nm;
  readonly to: Nm;
  /** Its stacks hold the layers of this level alone; `stack` is the whole wall's. */
  readonly plan: StoreyPlan;
  /** Ledges and taper tops in its courses; none until they are planned. */
  readonly units: CourseUnits;
}

export interface StoreyLevels {
  readonly levels: readonly Level[];
  /** Core changes by the wall's place in the storey, lowest first. */
  readonly changes: ReadonlyMap<number, readonly LaidCoreChange[]>;
  readonly findings: readonly Finding[];
}

/** Core changes of a schedule by the wall's mark, lowest first. */
export function coreChangesByMark(schedule: Schedule): ReadonlyMap<string, readonly CoreChangeFeature[]> {
  const found = new Map<string, CoreChangeFeature[]>();
  for (const feature of schedule.features) {
    if (feature.kind === 'core-change') found.set(feature.wall, [...(found.get(feature.wall) ?? []), feature].sort((a, b) => a.at - b.at));
  }
  return found;
}

/** The bed joint of a course nearest to a height, the lower of two; never the wall's own foot. */
function nearestBed(at: Nm, { layers }: WallStack): { readonly course: number; readonly bottom: Nm } | null {
  const beds = layers.filter(({ kind, bottom }) => kind === 'course' && bottom > 0);
  return beds.reduce<(typeof beds)[number] | null>((best, bed) => (best && Math.abs(best.bottom - at) <= Math.abs(bed.bottom - at) ? best : bed), null);
}

/**
 * Distance of the dimension line from the axis of the upper core, to the right: the face that stays flush is the same for both.
 *
 * @source statement of the project's decision 24 (geometry)
 */
export function upperOffset(offset: number, lower: Nm, upper: Nm, flush: LaidCoreChange['flush']): number {
  if (flush === 'centre') return offset;
  return offset + ((flush === 'outside' ? 1 : -1) * (upper - lower)) / 2;
}

/**
 * Bare concrete beside the upper form's panel: the face's set-back less the panel, not below 0.
 *
 * @source statement of the project's decision 24
 */
export function seatWidths(lower: Nm, upper: Nm, flush: LaidCoreChange['flush'], panel: Nm): { readonly outside: Nm; readonly inside: Nm } {
  const back = lower - upper;
  const seat = (setBack: Nm): Nm => Math.max(0, setBack - panel);
  if (flush === 'centre') return { outside: seat(back / 2), inside: seat(back / 2) };
  return flush === 'outside' ? { outside: 0, inside: seat(back) } : { outside: seat(back), inside: 0 };
}

interface PlannedChange {
  readonly laid: LaidCoreChange;
  readonly elevation: Nm;
  readonly offset: number;
  readonly finding: Finding;
}

function changesOf(wall: Wall, features: readonly CoreChangeFeature[], stack: WallStack, range: FormRange): PlannedChange[] {
  let core: Core = range.cores.get(wall.core)!;
  let offset = dimensionOffset(wall, core, core.width + 2 * range.panel);
  const footOffset = offset;
  return features.flatMap((feature): PlannedChange[] => {
    const bed = nearestBed(feature.at, stack);
    const upper = range.cores.get(feature.core);
    if (!bed || !upper) return [];
    offset = upperOffset(offset, core.width, upper.width, feature.flush);
    const seat = seatWidths(core.width, upper.width, feature.flush, range.panel);
    const offBed = Math.abs(bed.bottom - feature.at) > range.parameters.stackTolerance;
    const numbers = {
      core: core.code,
      otherCore: upper.code,
      flush: feature.flush,
      askedMm: toMm(feature.at),
      bedMm: toMm(bed.bottom),
      seatOutsideMm: toMm(seat.outside),
      seatInsideMm: toMm(seat.inside),
    };
    const severity = offBed || upper.width > core.width ? 'hold' : 'advise';
    const found = finding('core-change', { storey: wall.storey, wall: wall.mark, course: bed.course, severity, numbers });
    const laid = { course: bed.course, at: bed.bottom, core: upper, flush: feature.flush, seatOutside: seat.outside, seatInside: seat.inside, axisShift: Math.round(offset - footOffset) };
    core = upper;
    return [{ laid, elevation: wall.base + bed.bottom, offset, finding: found }];
  });
}

/** The walls as they stand at an elevation: each with the core it has there, and how far its dimension line then lies from the axis. */
function wallsAt(elevation: Nm, walls: readonly Wall[], changes: ReadonlyMap<number, readonly PlannedChange[]>): { walls: Wall[]; offsets: Map<number, number> } {
  const offsets = new Map<number, number>();
  const standing = walls.map((wall, index): Wall => {
    const change = changes.get(index)?.findLast((candidate) => candidate.elevation <= elevation);
    if (!change) return wall;
    offsets.set(index, change.offset);
    return { ...wall, core: change.laid.core.code };
  });
  return { walls: standing, offsets };
}

/**
 * Plans a storey once for each stretch of its height in which no core changes. Junctions, corners and tees are found in each for the
 * cores that stand there; the stacks are those of the whole walls.
 *
 * A change is laid at the course line nearest to the height asked for; off a course line, and to a wider core, a person decides.
 *
 * @source statement of the project's decisions 7 and 24
 */
export function planLevels(storey: Storey, walls: readonly Wall[], features: ReadonlyMap<string, readonly CoreChangeFeature[]>, range: FormRange): StoreyLevels {
  const foot = planStorey(storey, walls, range);
  const planned = new Map(
    walls.flatMap((wall, index) => {
      const own = features.get(wall.mark);
      return own ? [[index, changesOf(wall, own, foot.stacks[index]!, range)] as const] : [];
    }),
  );
  if (planned.size === 0) return { levels: [{ from: 0, to: Infinity, plan: foot, units: NO_UNITS }], changes: new Map(), findings: [] };
  const edges = [...new Set([...planned.values()].flat().map(({ elevation }) => elevation))].sort((a, b) => a - b);
  const levels = [0, ...edges].map((from, index): Level => {
    const to = edges[index] ?? Infinity;
    const standing = wallsAt(from, walls, planned);
    const plan = index === 0 ? foot : planStorey(storey, standing.walls, range, standing.offsets);
    const stacks = foot.stacks.map((stack, wall): WallStack => {
      const { base } = walls[wall]!;
      const within = (bottom: Nm): boolean => base + bottom < to && (index === 0 || base + bottom >= from);
      return { ...stack, layers: stack.layers.filter(({ bottom }) => within(bottom)) };
    });
    return { from: index === 0 ? -Infinity : from, to, plan: { ...plan, stacks }, units: NO_UNITS };
  });
  const all = [...planned.values()].flat();
  return {
    levels,
    changes: new Map([...planned].map(([wall, changes]) => [wall, changes.map(({ laid }) => laid)])),
    findings: all.map((change) => change.finding),
  };
}
