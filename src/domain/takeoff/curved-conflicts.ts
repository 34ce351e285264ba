import { finding, type Finding } from '../evidence/finding.js';
import { meetings } from '../geometry/tracks.js';
import { distance } from '../geometry/vector.js';
import { stripsOverlap } from '../geometry/strips-overlap.js';
import type { Strip } from '../geometry/near-pairs.js';
import { toMm } from '../quantity/length.js';
import { MEETING_REACH } from '../schedule/line-normalisation.js';
import { facetsOf } from './arc-axis.js';
import { inFrameOf, trackOf, userStation, type AxisWall } from './axes.js';

/** Half of what walls may share without standing in each other: facets inside an arc by less than this miss no overlap that counts. */
const FACET_REACH = MEETING_REACH / 2;

/** Station along `a` where the axis of `b` passes through it, clear of both walls' ends; null where it does not pass through both. */
function crossingStation(a: AxisWall, b: AxisWall): number | null {
  const inside = (at: number, wall: AxisWall, other: AxisWall): boolean =>
    at > other.thickness / 2 + MEETING_REACH && at < wall.length - other.thickness / 2 - MEETING_REACH;
  const stations = meetings(trackOf(a, 0), trackOf(b, 0))
    .map((point) => ({ onA: inFrameOf(a, point).along, onB: inFrameOf(b, point).along }))
    .filter(({ onA, onB }) => inside(onA, a, b) && inside(onB, b, a))
    .map(({ onA }) => onA)
    .sort((one, two) => one - two);
  return stations[0] ?? null;
}

/** Length along which two curves about one centre lie in each other; 0 where they do not. */
function sharedLength(a: AxisWall, b: AxisWall): number {
  if (!a.arc || !b.arc || distance(a.arc.centre, b.arc.centre) > MEETING_REACH) return 0;
  if (Math.abs(a.arc.radius - b.arc.radius) >= (a.thickness + b.thickness) / 2 - MEETING_REACH) return 0;
  const halves = [a, b].map(({ arc, length }) => length / arc!.radius / 2) as [number, number];
  const [one, other] = [a, b].map(({ arc }, index) => arc!.nodeFrom + arc!.turn * halves[index]!) as [number, number];
  const apart = Math.abs(Math.atan2(Math.sin(one - other), Math.cos(one - other)));
  // Two long curves may share ground on both sides of the circle.
  const angles = [apart, 2 * Math.PI - apart].map((between) => Math.min(2 * halves[0], 2 * halves[1], halves[0] + halves[1] - between));
  return a.arc.radius * angles.reduce((sum, angle) => sum + Math.max(0, angle), 0);
}

/** The body of a wall as straight strips: one, or those of the facets of its curve. */
function stripsOf(wall: AxisWall): Strip[] {
  const reach = wall.thickness / 2;
  if (!wall.arc) return [{ from: wall.from, to: wall.to, reach }];
  const points = facetsOf(wall.arc, wall.length, FACET_REACH);
  return points.slice(1).map((to, index) => ({ from: points[index]!, to, reach }));
}

/**
 * Conflicts of two walls of which one is a curve at least. Crossings are meetings of the axes themselves; whether the bodies share
 * ground is tried on facets that stand off the arc by no more than half a millimetre.
 *
 * @param known the walls' lines meet: they share ground at their joint
 */
export function curvedConflict(a: AxisWall, b: AxisWall, known: boolean, storey: string): Finding[] {
  const usable = (wall: AxisWall): boolean => wall.length > 0 && (wall.arc === null || wall.arc.radius > 0);
  if (!usable(a) || !usable(b)) return [];
  const walls = [a.wall.mark, b.wall.mark];
  const rounded = (nm: number): number => Math.round(toMm(nm) * 1e6) / 1e6;
  const shared = sharedLength(a, b);
  if (shared > MEETING_REACH) return [finding('wall-overlap', { storey, walls, numbers: { sharedMm: rounded(shared), core: a.core.code } })];
  const at = crossingStation(a, b);
  if (at !== null) {
    return [finding('walls-cross', { storey, walls, atMm: rounded(userStation(a, at)), numbers: { core: a.core.code, otherCore: b.core.code } })];
  }
  const overlap = !known && stripsOf(a).some((one) => stripsOf(b).some((other) => stripsOverlap(one, other, MEETING_REACH)));
  return overlap ? [finding('wall-overlap', { storey, walls, numbers: { core: a.core.code } })] : [];
}
