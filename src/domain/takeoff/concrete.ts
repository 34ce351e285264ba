import { gridCoreThickness } from '../engineering/irc-2018/grid-core-thickness.js';
import type { Core, FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { EndName } from '../schedule/line-normalisation.js';
import { userStation, type AxisWall } from './axes.js';
import { areaBeyond, curvedCut } from './end-cuts.js';
import { gableFaces } from './gable-concrete.js';
import type { LaidOpening } from './laid.js';
import type { RunContext } from './runs.js';
import { facingEnd, neighbourOf } from './storey-plan.js';
import type { StoreyConcrete } from './takeoff.js';

/** Volumes [nm³] and face areas [nm²] of one wall. */
export interface WallConcrete {
  readonly concreteNm3: bigint;
  readonly faceNm2: bigint;
  readonly openingNm2: bigint;
}

/** How far the concrete ends short of the axis node at one end and elevation; negative where it passes the node. */
function concreteTrim(wall: AxisWall, end: EndName, elevation: Nm, context: RunContext): Nm {
  const joint = context.plan.joints[wall.index]![end];
  const free = -wall.back[end] + context.range.closure.thickness;
  if (joint.kind === 'free') return free;
  if (joint.kind === 'unsettled') return 0;
  if (!context.standsAt(neighbourOf(joint)!, elevation, facingEnd(joint, end))) return free;
  return joint.kind === 'tee' ? joint.tee.coreTrim : 0;
}

/** What a cut along a curve, or of a curve, adds to the footprint beyond the axis station where it ends; nothing elsewhere [nm²]. */
function curvedAreaBeyond(wall: AxisWall, end: EndName, elevation: Nm, station: Nm, context: RunContext): number {
  const neighbour = neighbourOf(context.plan.joints[wall.index]![end]);
  if (neighbour === null || !context.standsAt(neighbour, elevation)) return 0;
  const cut = curvedCut(wall, end, context.plan);
  return cut ? areaBeyond(wall, end, station, cut) : 0;
}

/** Elevations above the wall's base at which what stands beside it changes. */
function bandsOf(wall: AxisWall, height: Nm, context: RunContext): { bottom: Nm; top: Nm }[] {
  const { plan } = context;
  const joints = plan.joints[wall.index]!;
  const [low, high] = [Math.max(0, context.from - wall.wall.base), Math.min(height, context.to - wall.wall.base)];
  if (high <= low) return [];
  const edges = new Set<Nm>([low, high]);
  for (const end of ['start', 'end'] as const) {
    const neighbour = neighbourOf(joints[end]);
    if (neighbour === null) continue;
    const base = plan.walls[neighbour]!.wall.base - wall.wall.base;
    for (const edge of [base, context.topAt(neighbour, facingEnd(joints[end], end)) - wall.wall.base]) if (edge > low && edge < high) edges.add(edge);
  }
  const sorted = [...edges].sort((a, b) => a - b);
  return sorted.slice(1).map((top, index) => ({ bottom: sorted[index]!, top }));
}

/**
 * Concrete behind a face: the width of a flat core, what a grid core of that nominal width holds evened out. A grid core the table does not
 * list counts full, and is a hold.
 *
 * @source statement of the project's decision 5; grid cores irc-2018 Table R608.3
 */
export function concreteDepth({ family, width }: Core): Nm {
  return family === 'flat' ? width : (gridCoreThickness(family, width) ?? width);
}

const overlap = (from: Nm, to: Nm, low: Nm, high: Nm): bigint => BigInt(Math.max(0, Math.min(to, high) - Math.max(from, low)));

/**
 * Exact concrete of a wall: mitred footprint by height, band by band, less the openings.
 *
 * A mitre gives one face what it takes from the other, so a wall between two corners has axis length × core. A free end is closed
 * inside the form and loses the closure's thickness; a branch begins at the through wall's core. A radius wall is a true arc, cut
 * where its core faces meet those of its neighbour. An opening takes only what is there.
 * Webs and bars are not deducted. A grid core holds less than its width (`concreteDepth`).
 *
 * @param openings in the user's own direction, as they are laid
 *
 * @source statement of the project's decisions 5, 7, 10 and 21
 */
export function wallConcrete(wall: AxisWall, openings: readonly LaidOpening[], context: RunContext): WallConcrete {
  const holes = openings.map((hole) => (wall.reversed ? { ...hole, from: userStation(wall, hole.to), to: userStation(wall, hole.from) } : hole));
  const { height } = context.plan.stacks[wall.index]!.stack;
  let faceNm2 = 0n;
  let openingNm2 = 0n;
  let curvedNm3 = 0n;
  for (const { bottom, top } of bandsOf(wall, height, context)) {
    const elevation = wall.wall.base + bottom;
    const from = concreteTrim(wall, 'start', elevation, context);
    const to = wall.length - concreteTrim(wall, 'end', elevation, context);
    if (to <= from) continue;
    faceNm2 += BigInt(to - from) * BigInt(top - bottom);
    const beyond = curvedAreaBeyond(wall, 'start', elevation, from, context) + curvedAreaBeyond(wall, 'end', elevation, to, context);
    curvedNm3 += BigInt(Math.round(beyond)) * BigInt(top - bottom);
    for (const hole of holes) openingNm2 += overlap(hole.from, hole.to, from, to) * overlap(hole.sill, hole.head, bottom, top);
  }
  const gable = context.gableOf(wall.index);
  if (gable) {
    const above = gableFaces(gable, wall, holes, context);
    faceNm2 += above.faceNm2;
    openingNm2 += above.openingNm2;
  }
  const width = BigInt(wall.core.width);
  const depth = BigInt(concreteDepth(wall.core));
  return { faceNm2: faceNm2 + curvedNm3 / width, openingNm2, concreteNm3: (faceNm2 - openingNm2) * depth + (curvedNm3 * depth) / width };
}

/** A cubic yard is 0.9144³ m³ exactly. */
const NM3_PER_YD3 = 764_554_857_984n * 10n ** 15n;

/** Volume in cubic yards [yd³]. */
export const cubicYards = (nm3: bigint): number => Number((nm3 * 1_000_000_000_000n) / NM3_PER_YD3) / 1e12;
/** Volume in cubic metres [m³]. */
export const cubicMetres = (nm3: bigint): number => Number(nm3 / 10n ** 12n) / 1e15;

/**
 * What to order for one storey's pour: overage and what stays in the pump are added, then rounded up to the plant's step.
 *
 * @source common practice, no source: parameters `concreteOverage`, `pumpLoss`, `orderStep`
 */
export function orderOf(storey: string, nm3: bigint, range: FormRange): StoreyConcrete {
  const { concreteOverage, pumpLossYd3, orderStepYd3 } = range.parameters;
  if (nm3 <= 0n) return { storey, nm3, orderYd3: 0 };
  const wanted = cubicYards(nm3) * (1 + concreteOverage) + pumpLossYd3;
  return { storey, nm3, orderYd3: Math.ceil(wanted / orderStepYd3 - 1e-9) * orderStepYd3 };
}
