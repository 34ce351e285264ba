import type { Core } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { AxisArc } from './arc-axis.js';
import type { AxisWall } from './axes.js';
import type { EndJoint, StoreyPlan } from './storey-plan.js';
import type { Tee } from './tees.js';
import type { WallStack } from './storey-stacks.js';

/** Straight-on walls of one core, height and base: one run of forms whatever their marks. Stations run in walking direction. */
export interface Line {
  readonly walls: readonly { readonly wall: AxisWall; readonly from: Nm }[];
  readonly length: Nm;
  readonly core: Core;
  readonly thickness: Nm;
  /** The curve of a line that is one radius wall. */
  readonly arc: AxisArc | null;
  readonly base: Nm;
  readonly stack: WallStack;
  readonly start: EndJoint;
  readonly end: EndJoint;
  /** Branches on this line with their stations along it. */
  readonly tees: readonly { readonly tee: Tee; readonly at: Nm }[];
}

/** A curve is a run of its own: its chords end where the straight forms begin. */
const alike = (a: AxisWall, b: AxisWall): boolean =>
  !a.arc && !b.arc && a.core.code === b.core.code && a.wall.height === b.wall.height && a.wall.base === b.wall.base && a.offset === b.offset;

/** Splits each chain into lines, in walking order; a loop begins where a line begins. */
export function linesOf(plan: StoreyPlan): Line[][] {
  return plan.plan.chains.map((chain) => {
    const goesOn = (wall: number): boolean => {
      const joint = plan.joints[wall]!.end;
      return joint.kind === 'straight' && alike(plan.walls[wall]!, plan.walls[joint.partner]!);
    };
    const breakAt = chain.closed ? chain.walls.findLastIndex((wall) => !goesOn(wall)) : -1;
    const order = breakAt >= 0 ? [...chain.walls.slice(breakAt + 1), ...chain.walls.slice(0, breakAt + 1)] : [...chain.walls];
    const groups: number[][] = [];
    let open: number[] | null = null;
    for (const wall of order) {
      if (open) open.push(wall);
      else groups.push((open = [wall]));
      if (!goesOn(wall)) open = null;
    }
    return groups.map((group) => lineOfWalls(group, plan));
  });
}

/** Walls straight on, in walking order, as one line. */
export function lineOfWalls(group: readonly number[], plan: StoreyPlan): Line {
  let length: Nm = 0;
  const walls = group.map((index) => {
    const wall = plan.walls[index]!;
    const from = length;
    length += Math.max(0, wall.length);
    return { wall, from };
  });
  const first = walls[0]!.wall;
  const last = walls.at(-1)!.wall;
  const offsets = new Map(walls.map(({ wall, from }) => [wall.index, from]));
  const tees = plan.tees
    .filter((tee) => offsets.has(tee.through))
    .map((tee) => ({ tee, at: offsets.get(tee.through)! + tee.station }))
    .sort((a, b) => a.at - b.at);
  return {
    walls,
    length,
    core: first.core,
    thickness: first.thickness,
    arc: first.arc,
    base: first.wall.base,
    stack: plan.stacks[first.index]!,
    start: plan.joints[first.index]!.start,
    end: plan.joints[last.index]!.end,
    tees,
  };
}
