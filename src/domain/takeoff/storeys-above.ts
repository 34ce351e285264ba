import { cross, direction, dot, subtract, turnDegrees, type Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import { MEETING_REACH, STRAIGHT_BELOW_DEG } from '../schedule/line-normalisation.js';
import type { Storey } from '../schedule/schedule.js';
import { coreOfCourse } from './course-core.js';
import type { LaidCarried, LaidStorey, LaidWall } from './laid.js';

const forward = ({ axisFrom, axisTo }: LaidWall): Vector => direction(subtract(axisTo, axisFrom));

/** How far a wall's axis lies towards the inside of another it runs along; null where it does not stand on it. */
function standsOn(lower: LaidWall, upper: LaidWall, lowerWidth: Nm, upperWidth: Nm): { readonly from: number; readonly to: number; readonly inwards: number } | null {
  const ahead = forward(lower);
  const turn = Math.abs(turnDegrees(ahead, forward(upper)));
  if (Math.min(turn, 180 - turn) > STRAIGHT_BELOW_DEG) return null;
  const ends = [upper.axisFrom, upper.axisTo].map((point) => subtract(point, lower.axisFrom));
  const across = (cross(ahead, ends[0]!) + cross(ahead, ends[1]!)) / 2;
  if (Math.abs(across) >= (lowerWidth + upperWidth) / 2 - MEETING_REACH) return null;
  const along = ends.map((end) => dot(end, ahead)).sort((a, b) => a - b) as [number, number];
  const from = Math.max(0, along[0]);
  const to = Math.min(lower.length, along[1]);
  return to - from <= MEETING_REACH ? null : { from, to, inwards: lower.outside === 'right' ? across : -across };
}

/** What a taper top adds to the seat on each side: a one-sided one to the side that is set back more. */
function taperGain(lower: LaidWall, setBack: { readonly outside: number; readonly inside: number }): { readonly outside: Nm; readonly inside: Nm } {
  const gain = lower.taper?.seatGain ?? 0;
  if (lower.taper?.faces === 'both') return { outside: gain / 2, inside: gain / 2 };
  return setBack.inside >= setBack.outside ? { outside: 0, inside: gain } : { outside: gain, inside: 0 };
}

function carriedBy(lower: LaidWall, storey: LaidStorey, panel: Nm): LaidCarried[] {
  const below = coreOfCourse(lower, lower.stack.courses);
  return storey.walls.flatMap((upper): LaidCarried[] => {
    if (lower.arc || upper.arc) return [];
    const found = standsOn(lower, upper, below.width + 2 * panel, upper.thickness);
    if (!found) return [];
    const narrower = (below.width - upper.core.width) / 2;
    const setBack = { outside: narrower + found.inwards, inside: narrower - found.inwards };
    const gain = taperGain(lower, setBack);
    const seat = (side: 'outside' | 'inside'): Nm => (setBack[side] <= MEETING_REACH ? 0 : Math.max(0, Math.round(setBack[side] + gain[side] - panel)));
    return [{ storey: storey.id, wall: upper.mark, from: Math.round(found.from), to: Math.round(found.to), core: upper.core.code, seatOutside: seat('outside'), seatInside: seat('inside') }];
  });
}

/**
 * Walls of the storey above, on the walls they stand on: where connectors must stay clean, where dowels rise, and what concrete is left
 * bare beside a narrower upper wall.
 *
 * @source statement of the project's decision 24 (seats); straight walls only, a curve carries none here
 */
export function withStoreysAbove(laid: readonly LaidStorey[], storeys: readonly Storey[], { panel }: Pick<FormRange, 'panel'>): LaidStorey[] {
  const byId = new Map(laid.map((storey) => [storey.id, storey]));
  return laid.map((storey): LaidStorey => {
    const above = storeys.flatMap(({ id, on }) => (on === storey.id ? (byId.get(id) ?? []) : []));
    if (above.length === 0) return storey;
    return { ...storey, walls: storey.walls.map((wall) => ({ ...wall, carries: above.flatMap((upper) => carriedBy(wall, upper, panel)) })) };
  });
}
