import { DisjointSets } from '../geometry/clusters.js';
import { turnDegrees, type Vector } from '../geometry/vector.js';
import type { CornerUnit, FormRange } from '../range/range.js';
import { normaliseLines, type EndName, type NormalPlan, type PlanNode } from '../schedule/line-normalisation.js';
import type { Schedule, Storey, Wall } from '../schedule/schedule.js';
import { headingAt, inWalkingOrder, layAxes, walkEnd, type AxisWall } from './axes.js';
import { cornerUnitFor } from './corners.js';
import { storeyStacks, type WallStack } from './storey-stacks.js';
import { endsInsideWalls, findTees, type Tee } from './tees.js';

/** What stands at one end of a wall, in walking direction. */
export type EndJoint =
  | { readonly kind: 'free' }
  /** Ends meet and nothing settles how: forms run to the node, no closure. */
  | { readonly kind: 'unsettled' }
  | { readonly kind: 'tee'; readonly tee: Tee }
  | { readonly kind: 'straight'; readonly partner: number }
  | { readonly kind: 'corner'; readonly partner: number; readonly turn: number; readonly arriving: boolean; readonly unit: CornerUnit | null };

/** The wall that stands beside an end, null where none does or nothing settles which. */
export function neighbourOf(joint: EndJoint): number | null {
  if (joint.kind === 'free' || joint.kind === 'unsettled') return null;
  return joint.kind === 'tee' ? joint.tee.through : joint.partner;
}

/** Which end of the neighbour stands at an end, in walking direction; none of a through wall's. */
export function facingEnd(joint: EndJoint, end: EndName): EndName | undefined {
  return joint.kind === 'tee' ? undefined : end === 'start' ? 'end' : 'start';
}

/** A planned junction; `walls` arriving first at a corner, the through walls first and the branch last at a tee. */
export interface PlanJunction {
  readonly id: string;
  readonly kind: 'free-end' | 'straight' | 'corner' | 'tee' | 'crossing' | 'unsettled';
  readonly turn: number;
  readonly walls: readonly number[];
  readonly unit: CornerUnit | null;
  /** Why a corner has no unit. */
  readonly unmade: 'turn-acute' | 'turn-not-made' | 'core-change' | null;
  readonly tee: Tee | null;
  readonly at: Vector;
  readonly gap: number;
}

/** One storey brought to axes: walls in walking direction, joints at their ends, junctions in order, stacks. */
export interface StoreyPlan {
  readonly storey: Storey;
  readonly plan: NormalPlan;
  readonly walls: readonly AxisWall[];
  readonly stacks: readonly WallStack[];
  readonly joints: readonly Readonly<Record<EndName, EndJoint>>[];
  /** Junction index at each end, in walking direction. */
  readonly junctionAt: readonly Readonly<Record<EndName, number>>[];
  readonly junctions: readonly PlanJunction[];
  readonly tees: readonly Tee[];
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };

/** The unit of a corner: none where the cores differ or a curve arrives. */
function unitOf(first: AxisWall, second: AxisWall, turn: number, range: FormRange): Pick<PlanJunction, 'unit' | 'unmade'> {
  if (first.core.code !== second.core.code) return { unit: null, unmade: 'core-change' };
  if (first.arc || second.arc) return { unit: null, unmade: 'turn-not-made' };
  const unit = cornerUnitFor(turn, first.core.code, range);
  return typeof unit === 'string' ? { unit: null, unmade: unit } : { unit, unmade: null };
}

/** Walls that meet at any junction form one group and share their courses. */
function groupsOf(plan: NormalPlan, tees: readonly Tee[]): (wall: number) => number {
  const sets = new DisjointSets(plan.walls.length);
  for (const { ends } of plan.nodes) ends.forEach((end) => sets.join(ends[0]!.wall, end.wall));
  for (const tee of tees) sets.join(tee.branch, tee.through);
  return (wall) => sets.find(wall);
}

function nodePoint(node: PlanNode, walls: readonly AxisWall[]): Vector {
  const { wall, end } = node.ends[0]!;
  const first = walls[wall]!;
  return walkEnd(first.reversed, end) === 'start' ? first.from : first.to;
}

/**
 * Brings one storey's walls to axes and settles every junction.
 *
 * @param offsets of the dimension line from the axis, by wall, where a core other than the foot's stands there
 */
export function planStorey(storey: Storey, walls: readonly Wall[], range: FormRange, offsets: ReadonlyMap<number, number> = new Map()): StoreyPlan {
  const coreWidth = (core: string): number => range.cores.get(core)?.width ?? 0;
  const drawn = normaliseLines(walls, coreWidth);
  const apart = endsInsideWalls(drawn, layAxes(drawn, range, offsets));
  const plan = apart.size > 0 ? normaliseLines(walls, coreWidth, new Set(apart.keys())) : drawn;
  const { tees, walls: axes } = findTees(plan, layAxes(plan, range, offsets), range.parameters.turnToleranceDeg, apart);
  const group = groupsOf(plan, tees);
  const stacks = storeyStacks(walls.map(({ height, base }, index) => ({ height, base, group: group(index) })), range);
  const joints = walls.map((): Mutable<Record<EndName, EndJoint>> => ({ start: { kind: 'free' }, end: { kind: 'free' } }));
  const junctionAt = walls.map(() => ({ start: -1, end: -1 }));
  const junctions: PlanJunction[] = [];
  const add = (junction: Omit<PlanJunction, 'id'>): number => junctions.push({ ...junction, id: `${storey.id}-J${junctions.length + 1}` }) - 1;
  const plain = { turn: 0, unit: null, unmade: null, tee: null } as const;
  const teeAt = new Map(tees.map((tee) => [`${tee.branch}/${tee.branchEnd}`, tee]));

  for (const node of plan.nodes) {
    const at = nodePoint(node, axes);
    const common = { at, gap: node.gap };
    if (node.pair) {
      const [arriving, leaving] = inWalkingOrder(plan, node.pair.a, node.pair.b);
      const members = [arriving.wall, leaving.wall];
      const [first, second] = members.map((wall) => axes[wall]!) as [AxisWall, AxisWall];
      const turn = node.pair.straight ? 0 : turnDegrees(headingAt(first, 'end'), headingAt(second, 'start'));
      const unit = node.pair.straight ? { unit: null, unmade: null } : unitOf(first, second, turn, range);
      joints[arriving.wall]!.end = node.pair.straight
        ? { kind: 'straight', partner: leaving.wall }
        : { kind: 'corner', partner: leaving.wall, turn, arriving: true, unit: unit.unit };
      joints[leaving.wall]!.start = node.pair.straight
        ? { kind: 'straight', partner: arriving.wall }
        : { kind: 'corner', partner: arriving.wall, turn, arriving: false, unit: unit.unit };
      const kind = node.kind === 'pair' ? (node.pair.straight ? 'straight' : 'corner') : null;
      const index = kind ? add({ ...common, ...plain, kind, turn, walls: members, ...unit }) : add({ ...common, ...plain, kind: 'straight', walls: members });
      junctionAt[arriving.wall]!.end = index;
      junctionAt[leaving.wall]!.start = index;
    }
    if (!node.pair && node.ends.length > 1) {
      const index = add({ ...common, ...plain, kind: node.kind === 'crossing' ? 'crossing' : 'unsettled', walls: node.ends.map((end) => end.wall) });
      for (const end of node.ends) {
        const name = walkEnd(plan.reversed[end.wall]!, end.end);
        joints[end.wall]![name] = { kind: 'unsettled' };
        junctionAt[end.wall]![name] = index;
      }
      continue;
    }
    for (const end of node.pair ? node.branches : node.ends) {
      const name = walkEnd(plan.reversed[end.wall]!, end.end);
      const tee = teeAt.get(`${end.wall}/${name}`) ?? null;
      const kind = tee ? (tee.crossing ? 'crossing' : 'tee') : node.kind === 'free' ? 'free-end' : node.kind === 'crossing' ? 'crossing' : 'unsettled';
      joints[end.wall]![name] = tee ? { kind: 'tee', tee } : { kind: node.kind === 'free' ? 'free' : 'unsettled' };
      const own = name === 'start' ? axes[end.wall]!.from : axes[end.wall]!.to;
      const through = tee ? throughWalls(tee, joints, axes) : [];
      junctionAt[end.wall]![name] = add({ ...common, ...plain, kind, turn: tee ? tee.angle : 0, walls: [...through, end.wall], tee, at: own });
    }
  }
  return { storey, plan, walls: axes, stacks, joints, junctionAt, junctions, tees };
}

/** The through wall of a tee, and the one it runs on into where the tee stands at their joint. */
function throughWalls(tee: Tee, joints: readonly Record<EndName, EndJoint>[], walls: readonly AxisWall[]): number[] {
  const through = walls[tee.through]!;
  const nearEnd: EndName | null = tee.station >= through.length - 1 ? 'end' : tee.station <= 1 ? 'start' : null;
  const joint = nearEnd ? joints[tee.through]![nearEnd] : null;
  return joint?.kind === 'straight' ? [tee.through, joint.partner] : [tee.through];
}

export const wallsOf = (schedule: Schedule, storey: string): Wall[] => schedule.walls.filter((wall) => wall.storey === storey);
