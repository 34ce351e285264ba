import { containsPoint, signedArea } from '../geometry/polygon.js';
import { DisjointSets, joinWithin } from '../geometry/clusters.js';
import { direction, distance, scale, subtract, turnDegrees, type Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import { arcLineOf } from './arc-line.js';
import type { Wall } from './schedule.js';

/** Ends closer than this meet. */
export const MEETING_REACH: Nm = 1_000_000;
/** Below this change of direction two walls run straight on [deg]. */
export const STRAIGHT_BELOW_DEG = 1;

export type EndName = 'start' | 'end';

/** One end of one wall, named as the user drew it. */
export interface WallEnd {
  readonly wall: number;
  readonly end: EndName;
}

export interface PlanNode {
  readonly ends: readonly WallEnd[];
  /** The two ends that go on into each other: a corner or straight on; null at a free end or where nothing decides. */
  readonly pair: { readonly a: WallEnd; readonly b: WallEnd; readonly straight: boolean } | null;
  /** Ends that stop here on the through wall of three or more. */
  readonly branches: readonly WallEnd[];
  readonly kind: 'free' | 'pair' | 'tee' | 'crossing' | 'unsettled';
  /** Largest distance between two ends that were declared to meet [nm]. */
  readonly gap: number;
}

/** Walls joined end to end through corners and straight joints, in walking order. */
export interface Chain {
  readonly walls: readonly number[];
  readonly closed: boolean;
}

/** One storey's walls with the direction each is walked in: the building on the left of every loop. */
export interface NormalPlan {
  readonly walls: readonly Wall[];
  readonly nodes: readonly PlanNode[];
  readonly chains: readonly Chain[];
  /** True where a wall is walked against the user's from→to. */
  readonly reversed: readonly boolean[];
  /** Node of each wall's ends, by the user's names. */
  readonly nodeOf: readonly Readonly<Record<EndName, number>>[];
  readonly loops: number;
}

const otherEnd = (end: EndName): EndName => (end === 'start' ? 'end' : 'start');
const pointOf = (wall: Wall, end: EndName): Vector => (end === 'start' ? wall.from : wall.to);

/** Direction from an end into its wall, along the tangent of a curve. */
function inward(walls: readonly Wall[], { wall, end }: WallEnd): Vector {
  const { from, to } = walls[wall]!;
  const arc = arcLineOf(walls[wall]!);
  const forward = direction(subtract(to, from));
  return end === 'start' ? (arc?.leaves ?? forward) : scale(arc?.arrives ?? forward, -1);
}

/** How far two ends are from running straight on [deg], 0 ≤ result ≤ 180. */
function bend(walls: readonly Wall[], a: WallEnd, b: WallEnd): number {
  return Math.abs(turnDegrees(scale(inward(walls, a), -1), inward(walls, b)));
}

function declaredPartner(walls: readonly Wall[], byMark: ReadonlyMap<string, number>, { wall, end }: WallEnd): WallEnd | null {
  const joint = walls[wall]![end];
  if (joint?.joint !== 'corner') return null;
  const partner = byMark.get(joint.with.wall);
  return partner === undefined ? null : { wall: partner, end: joint.with.end };
}

/** The key of one end in a set of ends. */
export const endKey = ({ wall, end }: WallEnd): string => `${wall}/${end}`;

/** Groups ends that meet: within 1 mm of each other, or declared to. Ends kept apart meet nobody. */
function meetingEnds(walls: readonly Wall[], apart: ReadonlySet<string>): WallEnd[][] {
  const ends = walls.flatMap((_, wall): WallEnd[] => [{ wall, end: 'start' }, { wall, end: 'end' }]);
  const sets = new DisjointSets(ends.length);
  joinWithin(sets, ends.map(({ wall, end }) => pointOf(walls[wall]!, end)), MEETING_REACH);
  const byMark = new Map(walls.map((wall, index) => [wall.mark, index]));
  ends.forEach((end, index) => {
    const partner = declaredPartner(walls, byMark, end);
    if (partner) sets.join(index, partner.wall * 2 + (partner.end === 'start' ? 0 : 1));
  });
  return sets.groups().flatMap((group) => {
    const members = group.map((index) => ends[index]!);
    return members.some((end) => apart.has(endKey(end))) ? members.map((end) => [end]) : [members];
  });
}

/**
 * What happens where ends meet. Three ends: the straightest pair within 1° goes through and the third is a branch. Four or more:
 * of the straight pairs the thicker core goes through, then the longer.
 */
function settle(walls: readonly Wall[], ends: readonly WallEnd[], coreWidth: (core: string) => Nm): PlanNode {
  const points = ends.map(({ wall, end }) => pointOf(walls[wall]!, end));
  const gap = Math.max(0, ...points.map((point) => distance(point, points[0]!)));
  const [a, b] = ends;
  if (!b) return { ends, pair: null, branches: [], kind: 'free', gap };
  if (ends.length === 2) {
    return { ends, pair: { a: a!, b, straight: bend(walls, a!, b) < STRAIGHT_BELOW_DEG }, branches: [], kind: 'pair', gap };
  }
  const width = (end: WallEnd): Nm => coreWidth(walls[end.wall]!.core);
  const pairs = ends
    .flatMap((first, index) => ends.slice(index + 1).map((second) => ({ first, second, bend: bend(walls, first, second) })))
    .filter((pair) => pair.bend <= STRAIGHT_BELOW_DEG);
  const weight = ({ first, second }: { first: WallEnd; second: WallEnd }): [Nm, Nm] => [
    Math.min(width(first), width(second)),
    walls[first.wall]!.length + walls[second.wall]!.length,
  ];
  pairs.sort((p, q) => {
    const [thickP, longP] = weight(p);
    const [thickQ, longQ] = weight(q);
    return ends.length === 3 ? p.bend - q.bend : thickQ - thickP || longQ - longP;
  });
  const through = pairs[0];
  if (!through) return { ends, pair: null, branches: [], kind: ends.length === 3 ? 'unsettled' : 'crossing', gap };
  const branches = ends.filter((end) => end !== through.first && end !== through.second);
  return { ends, pair: { a: through.first, b: through.second, straight: true }, branches, kind: ends.length === 3 ? 'tee' : 'crossing', gap };
}

interface Step {
  readonly wall: number;
  /** The end at which the walk enters the wall. */
  readonly enters: EndName;
}

type Partners = readonly Record<EndName, WallEnd | null>[];

/** Walks on from a wall until nothing follows or the walk comes back to where it began. */
function walkOn(first: Step, partners: Partners): { steps: Step[]; closed: boolean } {
  const steps = [first];
  for (let step = first; ; ) {
    const next = partners[step.wall]![otherEnd(step.enters)];
    if (!next) return { steps, closed: false };
    if (next.wall === first.wall) return { steps, closed: next.end === first.enters };
    step = { wall: next.wall, enters: next.end };
    steps.push(step);
  }
}

const turnedRound = (steps: readonly Step[]): Step[] => steps.map(({ wall, enters }) => ({ wall, enters: otherEnd(enters) })).reverse();

function walks(walls: readonly Wall[], partners: Partners): { steps: Step[]; closed: boolean }[] {
  const seen = new Set<number>();
  const found: { steps: Step[]; closed: boolean }[] = [];
  walls.forEach((_, wall) => {
    if (seen.has(wall)) return;
    const back = walkOn({ wall, enters: 'end' }, partners);
    const first = turnedRound(back.steps)[0]!;
    const walk = back.closed ? walkOn({ wall, enters: 'start' }, partners) : walkOn(first, partners);
    walk.steps.forEach((step) => seen.add(step.wall));
    found.push(walk);
  });
  return found;
}

/** The closed part of a walk: the whole of a loop, or the part of an open chain that comes back to itself at a tee. A curve adds points along it. */
function loopOf(walls: readonly Wall[], walk: { steps: Step[]; closed: boolean }, nodeOf: NormalPlan['nodeOf']): Vector[] | null {
  const corners = (steps: readonly Step[]): Vector[] =>
    steps.flatMap(({ wall, enters }) => {
      const between = arcLineOf(walls[wall]!)?.between ?? [];
      return [pointOf(walls[wall]!, enters), ...(enters === 'start' ? between : [...between].reverse())];
    });
  const encloses = (steps: readonly Step[]): boolean => corners(steps).length >= 3;
  if (walk.closed) return corners(walk.steps);
  const entries = walk.steps.map(({ wall, enters }) => nodeOf[wall]![enters]);
  const last = walk.steps.at(-1)!;
  const lastNode = nodeOf[last.wall]![otherEnd(last.enters)];
  const comesBack = entries.indexOf(lastNode);
  if (comesBack >= 0 && encloses(walk.steps.slice(comesBack))) return corners(walk.steps.slice(comesBack));
  const leaves = entries.lastIndexOf(entries[0]!);
  return leaves > 0 && encloses(walk.steps.slice(0, leaves)) ? corners(walk.steps.slice(0, leaves)) : null;
}

/**
 * Finds who meets whom and walks every chain with the building on its left.
 *
 * Loops at even nesting depth run counter-clockwise, inner courtyards clockwise; a loop drawn the other way is turned round. An
 * open chain follows its first row's wall.
 *
 * @param walls  walls of one storey
 * @param coreWidth  clear width of a core by its code [nm]
 * @param apart      ends (`endKey`) that meet inside another wall's body and so stop there, each for itself
 * @source statement of the project's decision 2
 */
export function normaliseLines(walls: readonly Wall[], coreWidth: (core: string) => Nm, apart: ReadonlySet<string> = new Set()): NormalPlan {
  const nodes = meetingEnds(walls, apart).map((ends) => settle(walls, ends, coreWidth));
  const nodeOf = walls.map(() => ({ start: -1, end: -1 }));
  nodes.forEach((node, index) => node.ends.forEach(({ wall, end }) => (nodeOf[wall]![end] = index)));
  const partners: Record<EndName, WallEnd | null>[] = walls.map(() => ({ start: null, end: null }));
  for (const { pair } of nodes) {
    if (!pair) continue;
    partners[pair.a.wall]![pair.a.end] = pair.b;
    partners[pair.b.wall]![pair.b.end] = pair.a;
  }
  const found = walks(walls, partners).map((walk) => ({ walk, loop: loopOf(walls, walk, nodeOf) }));
  const loops = found.flatMap(({ loop }) => (loop ? [loop] : []));
  const reversed: boolean[] = walls.map(() => false);
  const chains = found.map(({ walk, loop }): Chain => {
    const steps = walk.steps;
    const turnRound = loop
      ? signedArea(loop) > 0 !== (loops.filter((other) => other !== loop && containsPoint(other, loop[0]!)).length % 2 === 0)
      : steps.reduce((first, step) => (step.wall < first.wall ? step : first)).enters === 'end';
    const walked = turnRound ? turnedRound(steps) : steps;
    walked.forEach(({ wall, enters }) => (reversed[wall] = enters === 'end'));
    return { walls: walked.map((step) => step.wall), closed: walk.closed };
  });
  return { walls, nodes, chains, reversed, nodeOf, loops: loops.length };
}
