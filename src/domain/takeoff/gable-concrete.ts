import { radians } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { AxisWall } from './axes.js';
import { nodeSetBack } from './corners.js';
import type { Gable } from './gables.js';
import { heightAt } from './gables.js';
import type { LaidOpening } from './laid.js';
import type { EndJoint, StoreyPlan } from './storey-plan.js';

/** Where the two faces of the core end, along the axis in walking direction. */
interface FaceEnds {
  readonly left: number;
  readonly right: number;
}

/** How far past the node the core's faces end: the mitre of a corner, the closure of a free end, the through wall's core at a tee. */
function faceEnd(wall: AxisWall, name: 'start' | 'end', joint: EndJoint, plan: StoreyPlan, closure: Nm): FaceEnds {
  const node = name === 'start' ? 0 : wall.length;
  const outwards = name === 'start' ? -1 : 1;
  const at = (left: number, right = left): FaceEnds => ({ left: node + outwards * left, right: node + outwards * right });
  const half = wall.core.width / 2;
  if (joint.kind === 'free') return at(wall.back[name] - closure);
  if (joint.kind === 'tee') {
    const { tee } = joint;
    const skew = tee.square ? 0 : half / Math.tan(radians(tee.angle));
    const leftLonger = (tee.side === 'left') === (name === 'start');
    return at(-tee.coreTrim + (leftLonger ? skew : -skew), -tee.coreTrim + (leftLonger ? -skew : skew));
  }
  if (joint.kind !== 'corner') return at(0);
  const mitre = Math.sign(joint.turn) * nodeSetBack(half, plan.walls[joint.partner]!.core.width / 2, Math.abs(joint.turn));
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

/**
 * Face areas of a gable, of one side, whose product with the core is its concrete: the mitred footprint under the slope, and what the
 * openings take of it.
 *
 * V = ∫ over the core's thickness of (A(end) − A(start)), A the area under the slope up to a station: piecewise quadratic along a
 * mitre, so Simpson's rule between its breaks is exact.
 *
 * @returns gross and of openings, rounded once to a whole nm²
 * @source statement of the project's decision 22 (geometry)
 */
export function gableFaces(
  gable: Gable,
  wall: AxisWall,
  joints: Readonly<Record<'start' | 'end', EndJoint>>,
  holes: readonly Pick<LaidOpening, 'from' | 'to' | 'sill' | 'head'>[],
  top: Nm,
  plan: StoreyPlan,
  closure: Nm,
): { readonly faceNm2: bigint; readonly openingNm2: bigint } {
  const start = faceEnd(wall, 'start', joints.start, plan, closure);
  const end = faceEnd(wall, 'end', joints.end, plan, closure);
  const upTo = ({ left, right }: FaceEnds): number => {
    if (left === right) return areaTo(gable, left);
    const share = (at: number): number => (at - left) / (right - left);
    const station = (part: number): number => left + (right - left) * part;
    return integral((part) => areaTo(gable, station(part)), sorted([gable.foot, gable.peak, gable.end].map(share), 0, 1));
  };
  const gross = Math.max(0, upTo(end) - upTo(start));
  const axis = { from: (start.left + start.right) / 2, to: (end.left + end.right) / 2 };
  const openings = holes.reduce((sum, hole) => {
    const [from, to] = [Math.max(hole.from, axis.from), Math.min(hole.to, axis.to)];
    return to > from ? sum + holeArea(gable, { ...hole, from, to }, top) : sum;
  }, 0);
  return { faceNm2: BigInt(Math.round(gross)), openingNm2: BigInt(Math.round(Math.min(gross, openings))) };
}
