import { add, cross, radians, scale, turnDegrees, type Vector } from '../geometry/vector.js';
import { forEachNearPair } from '../geometry/near-pairs.js';
import { meantLength } from '../quantity/length.js';
import { endKey, MEETING_REACH, STRAIGHT_BELOW_DEG, type EndName, type NormalPlan, type WallEnd } from '../schedule/line-normalisation.js';
import { axisEnd, directionAt, headingAt, inFrameOf, walkEnd, withBacks, type AxisWall } from './axes.js';
import { curvedLanding, reachOf } from './curved-tees.js';
import type { Landing, Tee } from './tee.js';

export type { Tee } from './tee.js';

function outward(wall: AxisWall, end: EndName): Vector {
  const heading = headingAt(wall, end);
  return end === 'end' ? heading : scale(heading, -1);
}

/** How far a branch's end is from running along a through wall [deg]. */
const apartFromLine = (branch: AxisWall, end: EndName, through: AxisWall): number => {
  const beside = directionAt(through, inFrameOf(through, axisEnd(branch, end)).along);
  const turn = Math.abs(turnDegrees(headingAt(branch, end), beside));
  return Math.min(turn, 180 - turn);
};

/** This near to 90° a branch's drawn end and its axis lie alike against a through wall [deg]. */
const NEARLY_SQUARE_DEG = 89;

/**
 * Whether a branch's end lies in the form footprint of a wall it is not parallel to: the end of its axis, and on the skew, where the two lie
 * at different depths, the end as drawn too (decision 8).
 */
function lands(branch: AxisWall, end: EndName, through: AxisWall): boolean {
  const apart = apartFromLine(branch, end, through);
  if (apart <= STRAIGHT_BELOW_DEG) return false;
  const margin = through.thickness / 2 + MEETING_REACH;
  const reach = (back: number): number => (back === 0 ? MEETING_REACH : margin);
  const within = (point: Vector): boolean => {
    const { along, across } = inFrameOf(through, point);
    return Math.abs(across) <= margin && along >= -reach(through.back.start) && along <= through.length + reach(through.back.end);
  };
  if (within(axisEnd(branch, end))) return true;
  const drawn = (end === 'start') === branch.reversed ? branch.wall.to : branch.wall.from;
  return apart < NEARLY_SQUARE_DEG && !branch.arc && !through.arc && within(drawn);
}

function landingOf(branch: AxisWall, end: EndName, through: AxisWall, toleranceDeg: number, crossing: boolean): { landing: Landing; back: number } | null {
  if (branch.arc || through.arc) return curvedLanding(branch, end, through, toleranceDeg, crossing);
  const tip = axisEnd(branch, end);
  const out = outward(branch, end);
  const { across } = inFrameOf(through, tip);
  const beyond = -across / cross(through.forward, out);
  const node = add(tip, scale(out, beyond));
  const inward = scale(out, -1);
  const angle = Math.abs(turnDegrees(through.forward, inward));
  const sine = Math.sin(radians(angle));
  const square = Math.abs(angle - 90) <= toleranceDeg;
  const landing: Landing = {
    branch: branch.index,
    branchEnd: end,
    through: through.index,
    node,
    angle,
    square,
    side: cross(through.forward, inward) > 0 ? 'left' : 'right',
    formTrim: square ? through.thickness / 2 : Math.round(through.thickness / 2 / sine),
    coreTrim: square ? through.core.width / 2 : Math.round(through.core.width / 2 / sine),
    curvedOver: null,
    crossing,
  };
  return { landing, back: -beyond };
}

/**
 * Ends that meet inside the body of a third wall, with that wall: nothing turns or runs on there, each stops on it (decision 8, crossing).
 */
export function endsInsideWalls(plan: NormalPlan, walls: readonly AxisWall[]): Map<string, number> {
  const nodes = plan.nodes.filter((node) => node.kind === 'pair');
  const points = nodes.map(({ ends }) => {
    const [{ wall, end }] = ends as [WallEnd];
    return walkEnd(walls[wall]!.reversed, end) === 'start' ? walls[wall]!.from : walls[wall]!.to;
  });
  const inside = new Map<string, number>();
  const strips = [...points.map((point) => ({ from: point, to: point, reach: 0 })), ...walls.map((wall) => ({ from: wall.from, to: wall.to, reach: reachOf(wall, wall.thickness / 2) }))];
  forEachNearPair(strips, (first, second) => {
    const node = nodes[first];
    const wall = walls[second - nodes.length];
    if (!node || !wall || node.ends.some((end) => end.wall === wall.index)) return;
    const { along, across } = inFrameOf(wall, points[first]!);
    const deep = Math.abs(across) < wall.thickness / 2 - MEETING_REACH && along > MEETING_REACH && along < wall.length - MEETING_REACH;
    if (deep) node.ends.forEach((end) => inside.set(endKey(end), wall.index));
  });
  return inside;
}

/** Of two that run on into each other the straight one, where one of them is a curve: the order of the rows decides nothing. */
const throughOf = (plan: NormalPlan, { a, b }: NonNullable<NormalPlan['nodes'][number]['pair']>): number =>
  plan.walls[a.wall]!.arc && !plan.walls[b.wall]!.arc ? b.wall : a.wall;

/** Ends that stop at a node where others go through, with the wall they stop on. */
function branchesAtNodes(plan: NormalPlan): { end: WallEnd; through: number; crossing: boolean }[] {
  return plan.nodes.flatMap((node) =>
    node.pair ? node.branches.map((end) => ({ end, through: throughOf(plan, node.pair!), crossing: node.kind === 'crossing' })) : [],
  );
}

/** Lone ends that lie in the footprint of another wall: of several the squarest, then the first drawn. */
function branchesOnSides(plan: NormalPlan, walls: readonly AxisWall[], inside: ReadonlyMap<string, number>): { end: WallEnd; through: number; crossing: boolean }[] {
  const lone = plan.nodes.flatMap((node) => (node.kind === 'free' ? [node.ends[0]!] : []));
  const near = new Map<number, Set<number>>();
  forEachNearPair(
    walls.map((wall) => ({ from: wall.from, to: wall.to, reach: reachOf(wall, wall.thickness + MEETING_REACH) })),
    (first, second) => {
      for (const [wall, other] of [[first, second], [second, first]] as const) {
        const known = near.get(wall);
        if (known) known.add(other);
        else near.set(wall, new Set([other]));
      }
    },
  );
  return lone.flatMap((end) => {
    const branch = walls[end.wall]!;
    const name = walkEnd(branch.reversed, end.end);
    const known = inside.get(endKey(end));
    if (known !== undefined) return [{ end, through: known, crossing: false }];
    const through = [...(near.get(end.wall) ?? [])]
      .filter((other) => lands(branch, name, walls[other]!))
      .sort((a, b) => apartFromLine(branch, name, walls[b]!) - apartFromLine(branch, name, walls[a]!) || a - b)[0];
    return through === undefined ? [] : [{ end, through, crossing: false }];
  });
}

/**
 * Finds every tee and brings the branches' nodes to the through walls' axes.
 *
 * @param inside through walls already known by end (`endsInsideWalls`)
 * @source statement of the project's decisions 8 and 9
 */
export function findTees(plan: NormalPlan, walls: readonly AxisWall[], toleranceDeg: number, inside: ReadonlyMap<string, number>): { tees: Tee[]; walls: AxisWall[] } {
  const landings: Landing[] = [];
  const moved = [...walls];
  for (const { end, through, crossing } of [...branchesAtNodes(plan), ...branchesOnSides(plan, walls, inside)]) {
    const branch = moved[end.wall]!;
    const name = walkEnd(branch.reversed, end.end);
    if (apartFromLine(branch, name, walls[through]!) <= STRAIGHT_BELOW_DEG) continue;
    const found = landingOf(branch, name, walls[through]!, toleranceDeg, crossing);
    if (!found) continue;
    const { landing, back } = found;
    landings.push(landing);
    moved[end.wall] = withBacks(branch, { ...branch.back, [name]: back });
  }
  const tees = landings.map(({ node, ...tee }): Tee => ({ ...tee, station: meantLength(inFrameOf(moved[tee.through]!, node).along) }));
  return { tees, walls: moved };
}
