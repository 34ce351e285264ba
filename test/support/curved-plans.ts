import { inches } from '../../src/domain/quantity/length.js';
import type { Schedule, Wall } from '../../src/domain/schedule/schedule.js';
import { scheduleOf, type OpeningInput, type WallInput } from './small-schedules.js';

/** A wall in inches, straight or on an arc. */
export interface CurvedWallInput extends WallInput {
  readonly arc?: { readonly radius: number; readonly turns: 'left' | 'right' };
}

/** The minor arc's length, in the unit of its chord and radius. */
export const minorArc = (chord: number, radius: number): number => 2 * radius * Math.asin(Math.min(1, chord / (2 * radius)));

const curved = (wall: Wall, { arc, from, to }: CurvedWallInput): Wall =>
  arc
    ? { ...wall, arc: { radius: inches(arc.radius), turns: arc.turns }, length: inches(minorArc(Math.hypot(to[0] - from[0], to[1] - from[1]), arc.radius)) }
    : wall;

/** A canonical schedule in inches, walls straight or on arcs. */
export function curvedSchedule(walls: readonly CurvedWallInput[], options: { openings?: readonly OpeningInput[]; height?: number; closed?: boolean } = {}): Schedule {
  const { closed = false, ...rest } = options;
  const schedule = scheduleOf(walls, { ...rest, storey: { closed } });
  return { ...schedule, walls: schedule.walls.map((wall, index) => curved(wall, walls[index]!)) };
}
