import { radians } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { EndName } from '../schedule/line-normalisation.js';
import { inFrameOf, type AxisWall } from './axes.js';
import { nodeSetBack } from './corners.js';
import { curvedCut } from './end-cuts.js';
import { heightAt, stretchAbove, type Gable } from './gables.js';
import type { LaidOpening } from './laid.js';
import type { RunContext } from './runs.js';
import { neighbourOf } from './storey-plan.js';

/** Where the two faces of the core end, along the axis in walking direction. */
interface FaceEnds {
  readonly left: number;
  readonly right: number;
}

/**
 * Where the core's faces end above the stack: built into a neighbour that stands there, the mitre; against one that is not built in, its
 * core; at a neighbour that ends with the stack, the mitre below (decision 22); above a lower one, the closure of a free end (decision 7).
 *
 * @param builtIn whether the wall's courses above the stack are built into the neighbour's
 */
function faceEnd(wall: AxisWall, name: EndName, builtIn: boolean, context: RunContext): FaceEnds {
  const { plan, range } = context;
  const joint = plan.joints[wall.index]![name];
  const node = name === 'start' ? 0 : wall.length;
  const outwards = name === 'start' ? -1 : 1;
  const at = (left: number, right = left): FaceEnds => ({ left: node + outwards * left, right: node + outwards * right });
  const half = wall.core.width / 2;
  const free = at(wall.back[name] - range.closure.thickness);
  const neighbour = neighbourOf(joint);
  if (neighbour === null) return joint.kind === 'free' ? free : at(0);
  const top = wall.wall.base + plan.stacks[wall.index]!.stack.height;
  if (!context.standsAt(neighbour, top - 1)) return free;
  if (joint.kind === 'tee') {
    const { tee } = joint;
    const skew = tee.square ? 0 : half / Math.tan(radians(tee.angle));
    const leftLonger = (tee.side === 'left') === (name === 'start');
    return at(-tee.coreTrim + (leftLonger ? skew : -skew), -tee.coreTrim + (leftLonger ? -skew : skew));
  }
  if (joint.kind !== 'corner') return at(0);
  const cut = curvedCut(wall, name, plan);
  if (cut) return { left: inFrameOf(wall, cut.left).along, right: inFrameOf(wall, cut.right).along };
  const other = plan.walls[neighbour]!.core.width / 2;
  if (!builtIn && context.standsAt(neighbour, top)) {
    const turn = radians(joint.turn);
    const [reach, skew] = [other / Math.abs(Math.sin(turn)), half / Math.tan(turn)];
    return at(-reach + skew, -reach - skew);
  }
  const mitre = Math.sign(joint.turn) * nodeSetBack(half, other, Math.abs(joint.turn));
  return at(-mitre, mitre);
}

const sorted = (points: readonly number[], low: number, high: number): number[] =>
  [low, ...[...new Set(points)].filter((point) => point > low && point < high).sort((a, b) => a - b), high];

/** ∫ f over [low, high], exact for a quadratic between the breaks (Simpson's rule). */
function integral(f: (x: number) => number, breaks: readonly number[]): number {
  return breaks.slice(1).reduce((sum, high, index) => {
    const low = breaks[index]!;
    return sum + ((high - low) / 6) * (f(low) + 4 * f((low + high) / 2) + f(high));
  }, 0);
}

/** Area under the slope from the foot of the dimension line to a station [nm²]. */
function areaTo(gable: Gable, at: number): number {
  const { foot, peak, end, rise } = gable;
  const reached = Math.min(Math.max(at, foot), end);
  if (reached <= peak) return (heightAt(gable, reached) * (reached - foot)) / 2;
  return (rise * (end - foot)) / 2 - (heightAt(gable, reached) * (end - reached)) / 2;
}

/** Area of a hole's part above the stack and under the slope [nm²]. */
function holeArea(gable: Gable, hole: Pick<LaidOpening, 'from' | 'to' | 'sill' | 'head'>, top: Nm): number {
  const low = Math.max(0, hole.sill - top);
  const high = Math.max(low, hole.head - top);
  if (high === low) return 0;
  const { foot, peak, end, rise } = gable;
  const reaches = [low, high].flatMap((height) => [foot + ((peak - foot) * height) / rise, end - ((end - peak) * height) / rise]);
  const taken = (at: number): number => Math.min(high, Math.max(low, heightAt(gable, at))) - low;
  return integral(taken, sorted([foot, peak, end, ...reaches], hole.from, hole.to));
}

/** Area of the footprint under a slope, of one side: A(end) − A(start) averaged over the core's thickness [nm²]. */
function footprintUnder(gable: Gable, start: FaceEnds, end: FaceEnds): number {
  const upTo = ({ left, right }: FaceEnds): number => {
    if (left === right) return areaTo(gable, left);
    const share = (at: number): number => (at - left) / (right - left);
    const station = (part: number): number => left + (right - left) * part;
    return integral((part) => areaTo(gable, station(part)), sorted([gable.foot, gable.peak, gable.end].map(share), 0, 1));
  };
  return Math.max(0, upTo(end) - upTo(start));
}

/** The part of a slope above a height. */
function partAbove(gable: Gable, height: Nm): Gable {
  const { from, to } = stretchAbove(gable, height);
  return { rise: gable.rise - height, foot: from, peak: gable.peak, end: to };
}

/**
 * Face areas of a gable, of one side, whose product with the core is its concrete: the mitred footprint under the slope, and what the
 * openings take of it.
 *
 * V = ∫ over the core's thickness of (A(end) − A(start)), A the area under the slope up to a station: piecewise quadratic along a
 * mitre, so Simpson's rule between its breaks is exact. What stands above the courses that are built into a neighbour ends against it.
 *
 * @param holes in walking direction
 * @returns gross and of openings, rounded once to a whole nm²
 * @source statement of the project's decisions 7 and 22 (geometry)
 */
export function gableFaces(
  gable: Gable,
  wall: AxisWall,
  holes: readonly Pick<LaidOpening, 'from' | 'to' | 'sill' | 'head'>[],
  context: RunContext,
): { readonly faceNm2: bigint; readonly openingNm2: bigint } {
  const top = context.plan.stacks[wall.index]!.stack.height;
  const ends = (builtIn: boolean): { start: FaceEnds; end: FaceEnds } => ({
    start: faceEnd(wall, 'start', builtIn, context),
    end: faceEnd(wall, 'end', builtIn, context),
  });
  const builtTo = Math.max(...(['start', 'end'] as const).map((name) => context.topAt(wall.index, name))) - wall.wall.base - top;
  const [joined, apart] = [ends(true), ends(false)];
  const above = builtTo < gable.rise ? partAbove(gable, builtTo) : null;
  const below = builtTo === 0 ? 0 : footprintUnder(gable, joined.start, joined.end) - (above ? footprintUnder(above, joined.start, joined.end) : 0);
  const gross = below + (above ? footprintUnder(above, apart.start, apart.end) : 0);
  const { start, end } = builtTo > 0 ? joined : apart;
  const axis = { from: (start.left + start.right) / 2, to: (end.left + end.right) / 2 };
  const openings = holes.reduce((sum, hole) => {
    const [from, to] = [Math.max(hole.from, axis.from), Math.min(hole.to, axis.to)];
    return to > from ? sum + holeArea(gable, { ...hole, from, to }, top) : sum;
  }, 0);
  return { faceNm2: BigInt(Math.round(gross)), openingNm2: BigInt(Math.round(Math.min(gross, openings))) };
}
