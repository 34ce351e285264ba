import { areaWithin, nearestMeeting, type Track } from '../geometry/tracks.js';
import { add, leftNormal, scale, type Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { EndName } from '../schedule/line-normalisation.js';
import { arcPoint } from './arc-axis.js';
import { trackOf, type AxisWall } from './axes.js';
import { nearFace } from './curved-tees.js';
import type { StoreyPlan } from './storey-plan.js';

/** Where the concrete of a wall ends at a joint with a curve: points on its two core faces, and what runs between them. */
export interface EndCut {
  readonly left: Vector;
  readonly right: Vector;
  /** A circle where a branch stands against a curve; straight otherwise. */
  readonly edge: Track | null;
}

/** A corner: from the meeting of the core faces on the left to that on the right; null where they do not meet. */
export function cornerCut(arriving: AxisWall, leaving: AxisWall): EndCut | null {
  const node = arriving.to;
  const meeting = (side: 1 | -1): Vector | null =>
    nearestMeeting(trackOf(arriving, (side * arriving.core.width) / 2), trackOf(leaving, (side * leaving.core.width) / 2), node);
  const [left, right] = [meeting(1), meeting(-1)];
  return left && right && { left, right, edge: null };
}

/** A branch: along the near core face of the wall it stands on. */
function teeCut(branch: AxisWall, end: EndName, through: AxisWall, side: 'left' | 'right'): EndCut | null {
  const face = nearFace(through, side, through.core.width / 2);
  const node = end === 'start' ? branch.from : branch.to;
  const meeting = (across: number): Vector | null => nearestMeeting(trackOf(branch, across), face, node);
  const [left, right] = [meeting(branch.core.width / 2), meeting(-branch.core.width / 2)];
  return left && right && { left, right, edge: face.kind === 'circle' ? face : null };
}

/** The cut at a wall's end where it or what it meets is a curve; null where it is square or an ordinary mitre. */
export function curvedCut(wall: AxisWall, end: EndName, plan: StoreyPlan): EndCut | null {
  const joint = plan.joints[wall.index]![end];
  if (joint.kind === 'corner') {
    const partner = plan.walls[joint.partner]!;
    if (!wall.arc && !partner.arc) return null;
    return joint.arriving ? cornerCut(wall, partner) : cornerCut(partner, wall);
  }
  if (joint.kind !== 'tee' || joint.tee.curvedOver === null) return null;
  return teeCut(wall, end, plan.walls[joint.tee.through]!, joint.tee.side);
}

/** The point of a wall at a station, `across` to the left of its axis. */
function pointAt(wall: AxisWall, along: number, across: number): Vector {
  if (wall.arc) return arcPoint(wall.arc, along, across);
  return add(wall.from, add(scale(wall.forward, along), scale(leftNormal(wall.forward), across)));
}

/**
 * Footprint of the core between a cut across the axis at a station and the true cut of that end, positive where the wall goes on
 * beyond the station [nm², not rounded].
 *
 * @source geometry: Green's theorem over core faces that are lines or circles
 */
export function areaBeyond(wall: AxisWall, end: EndName, station: Nm, cut: EndCut): number {
  const half = wall.core.width / 2;
  const [leftFace, rightFace] = [trackOf(wall, half), trackOf(wall, -half)];
  const area = areaWithin([
    { from: pointAt(wall, station, -half), on: rightFace },
    { from: cut.right, on: cut.edge },
    { from: cut.left, on: leftFace },
    { from: pointAt(wall, station, half), on: null },
  ]);
  return end === 'end' ? area : -area;
}
