import { nearestMeeting, type Track } from '../geometry/tracks.js';
import { scale, turnDegrees } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { EndName } from '../schedule/line-normalisation.js';
import { sagitta } from './arc-axis.js';
import { axisEnd, directionAt, inFrameOf, trackOf, type AxisWall } from './axes.js';
import type { Landing } from './tee.js';

/** What stands within a wall's bounding box on either side of the straight line between its nodes. */
export const reachOf = (wall: AxisWall, half: number): number => half + (wall.arc && wall.arc.radius > 0 ? sagitta(wall.arc, wall.length) : 0);

/** The near side of a through wall, `half` off its axis: a foam face or a core face. */
export const nearFace = (through: AxisWall, side: 'left' | 'right', half: number): Track => trackOf(through, side === 'left' ? half : -half);

/**
 * Where a branch lands when it, the through wall, or both are curves: nodes and trims are meetings of lines and circles, the angle is
 * that between the tangents at the node.
 *
 * @returns null where the axes do not meet, or the branch's axis misses a face
 * @source geometry
 */
export function curvedLanding(branch: AxisWall, end: EndName, through: AxisWall, toleranceDeg: number, crossing: boolean): { landing: Landing; back: number } | null {
  const tip = axisEnd(branch, end);
  const node = nearestMeeting(trackOf(branch, 0), trackOf(through, 0), tip);
  if (!node) return null;
  const outwards = end === 'start' ? -1 : 1;
  const at = inFrameOf(branch, node).along;
  const inward = scale(directionAt(branch, at), -outwards);
  const station = inFrameOf(through, node).along;
  const turn = turnDegrees(directionAt(through, station), inward);
  const side = turn > 0 ? 'left' : 'right';
  const short = (half: number, across: number): number | null => {
    const point = nearestMeeting(trackOf(branch, across), nearFace(through, side, half), node);
    return point && outwards * (at - inFrameOf(branch, point).along);
  };
  const [formTrim, coreTrim] = [short(through.thickness / 2, 0), short(through.core.width / 2, 0)];
  if (formTrim === null || coreTrim === null) return null;
  const angle = Math.abs(turn);
  const landing: Landing = {
    branch: branch.index,
    branchEnd: end,
    through: through.index,
    node,
    angle,
    square: Math.abs(angle - 90) <= toleranceDeg,
    side,
    formTrim: Math.round(formTrim),
    coreTrim: Math.round(coreTrim),
    curvedOver: overOf(branch, formTrim, (across) => short(through.thickness / 2, across)),
    crossing,
  };
  return { landing, back: outwards * (inFrameOf(branch, tip).along - at) };
}

/** How much farther the longer foam face runs than the axis does; the piece counts at its longer face (decision 9). */
function overOf(branch: AxisWall, formTrim: number, short: (across: number) => number | null): Nm {
  const half = branch.thickness / 2;
  const past = [half, -half].map((across) => formTrim - (short(across) ?? formTrim));
  return Math.max(0, Math.ceil(Math.max(...past)));
}

