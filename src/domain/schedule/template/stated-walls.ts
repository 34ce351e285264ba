import type { PlanPoint, Wall } from '../schedule.js';
import { MEETING_DISTANCE } from '../schedule-limits.js';

/**
 * Whether a wall is written by its coordinates. All are, where every coordinate is a whole nanometre and declared corners meet; else
 * those that must have been drawn: an end without a declared joint, or an arc.
 */
export function statedWalls(walls: readonly Wall[]): (wall: Wall) => boolean {
  const byMark = new Map(walls.map((wall) => [wall.mark, wall]));
  const whole = walls.every(({ from, to }) => [from.x, from.y, to.x, to.y].every(Number.isInteger));
  const meets = (wall: Wall, end: 'start' | 'end'): boolean => {
    const joint = wall[end];
    if (joint?.joint !== 'corner') return true;
    const partner = byMark.get(joint.with.wall);
    return partner !== undefined && distance(endOf(wall, end), endOf(partner, joint.with.end)) < MEETING_DISTANCE;
  };
  const all = whole && walls.every((wall) => meets(wall, 'start') && meets(wall, 'end'));
  return (wall) => all || wall.arc !== null || wall.start === null || wall.end === null;
}

const endOf = ({ from, to }: Wall, end: 'start' | 'end'): PlanPoint => (end === 'start' ? from : to);
const distance = (a: PlanPoint, b: PlanPoint): number => Math.hypot(a.x - b.x, a.y - b.y);
