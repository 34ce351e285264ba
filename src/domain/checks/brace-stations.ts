import { braceStretches, type BraceReason, type BraceStretch } from './brace-stretches.js';
import { placeOnLine, type BraceLine } from './brace-lines.js';
import type { LaidWall } from '../takeoff/laid.js';
import type { Nm } from '../quantity/length.js';

export interface BraceStation {
  /** Axis station, from the node of the user's own `from`; along the arc of a radius wall. */
  readonly at: Nm;
  readonly reason: BraceReason;
  /** Length of wall that the brace is made for: the spacing, or more where an opening beside it is wider. */
  readonly width: Nm;
}

/** Common practice of a range: furthest apart, and furthest from what a stretch ends at. */
export interface BraceRules {
  readonly braceSpacing: Nm;
  readonly braceFromCorner: Nm;
}

/** A brace and the wall that it stands in. */
export interface PlacedStation extends BraceStation {
  readonly wall: LaidWall;
}

/**
 * Where the braces of a line of walls stand: in each stretch of length L one more than L over the spacing rounded up, at equal distances, the
 * outer two at a jamb itself or within `braceFromCorner` of any other end. Each belongs to the wall it stands in, at the station of that wall.
 *
 * @returns   in the order of the line
 * @source statement of the project's decisions 13, 20 and 30; spacing and distance are common practice
 */
export function braceStations(line: BraceLine, rules: BraceRules): readonly PlacedStation[] {
  const curved = line.walls[0].wall.arc !== null;
  const stations = braceStretches(line).flatMap((stretch) => stationsOf(stretch, rules, curved));
  return stations.map(({ at, reason }, index) => {
    const before = index === 0 ? at - line.first : (at - (stations[index - 1] as Placed).at) / 2;
    const after = index === stations.length - 1 ? line.last - at : ((stations[index + 1] as Placed).at - at) / 2;
    return { ...placeOnLine(line, at), reason, width: Math.max(rules.braceSpacing, Math.ceil(before + after)) };
  });
}

type Placed = Pick<BraceStation, 'at' | 'reason'>;

function stationsOf({ from, to }: BraceStretch, rules: BraceRules, curved: boolean): readonly Placed[] {
  const length = to.at - from.at;
  const gaps = Math.ceil(length / rules.braceSpacing);
  const [near, far] = setBacks({ from, to }, rules);
  const [start, run] = [from.at + near, length - near - far];
  const between: BraceReason = curved ? 'radius-wall' : 'between';
  return Array.from({ length: gaps + 1 }, (_, index): Placed => ({
    at: start + Math.floor((run * index) / gaps),
    reason: index === 0 ? from.reason : index === gaps ? to.reason : between,
  }));
}

/**
 * How far inside its ends the outer braces stand. Half of what is allowed, so that it holds from the axis' node and from the outer face alike;
 * further where a branch stands in the way; in short stretches no more than half the length in all.
 */
function setBacks({ from, to }: BraceStretch, { braceFromCorner, braceSpacing }: BraceRules): readonly [near: Nm, far: Nm] {
  const asked = [from, to].map(({ reason, clear }) =>
    reason === 'opening' ? 0 : Math.min(Math.max(braceFromCorner / 2, clear), braceFromCorner, braceSpacing / 2),
  ) as [number, number];
  const share = Math.min(1, (to.at - from.at) / 2 / (asked[0] + asked[1] || 1));
  return [Math.floor(asked[0] * share), Math.floor(asked[1] * share)];
}
