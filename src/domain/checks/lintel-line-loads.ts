import { inchesOf } from './strength-units.js';
import { lbPerFt, lintelLoad, wallWeight, type LintelLoad } from './lintel-loads.js';
import { topOfWall, coresOfWall } from '../takeoff/index.js';
import type { ConcreteOver } from './lintel-over-opening.js';
import type { LaidJob, LaidOpening, LaidWall } from '../takeoff/laid.js';
import type { Schedule, Storey } from '../schedule/schedule.js';

export const loadStated = ({ deadKnPerM, liveKnPerM, snowKnPerM }: Storey): boolean => [deadKnPerM, liveKnPerM, snowKnPerM].some((each) => each !== undefined);

/** Walls of the storeys above that stand over a stretch of a wall; all that such a wall carries is taken to stand over it too. */
function wallsAbove(laid: LaidJob, { carries }: LaidWall, from: number, to: number): readonly LaidWall[] {
  return carries.filter((each) => each.from < to && each.to > from).flatMap(({ storey, wall }): readonly LaidWall[] => {
    const upper = laid.storeys.find(({ id }) => id === storey)?.walls.find(({ mark }) => mark === wall);
    return upper === undefined ? [] : [upper, ...wallsAbove(laid, upper, 0, upper.length)];
  });
}

/** What a lintel of a job carries, and whether every storey that bears on it states its floors and roof. */
export interface LineLoads {
  readonly load: LintelLoad;
  readonly stated: 'floors and roof' | 'wall above only' | 'in part';
  readonly storeysAbove: number;
}

/**
 * The factored load over an opening: wall above at its full height (no arch is counted on), the storey's own line loads, and each wall
 * carried from the storeys above with its weight and its storey's line loads. Openings in those walls are not taken off: on the safe side.
 */
export function lineLoads(schedule: Schedule, laid: LaidJob, wall: LaidWall, opening: LaidOpening, over: ConcreteOver): LineLoads {
  const upper = wallsAbove(laid, wall, opening.from, opening.to);
  const ids = [wall.storey, ...upper.map(({ storey }) => storey)];
  const storeys = ids.flatMap((id) => schedule.storeys.find((each) => each.id === id) ?? []);
  const sum = (key: 'deadKnPerM' | 'liveKnPerM' | 'snowKnPerM'): number => lbPerFt(storeys.reduce((total, storey) => total + (storey[key] ?? 0), 0));
  const carried = upper.reduce((total, each) => total + wallWeight(Math.max(...coresOfWall(each).map(({ width }) => inchesOf(width))), inchesOf(topOfWall(each))), 0);
  const dead = sum('deadKnPerM') + carried;
  const load = lintelLoad({ dead, live: sum('liveKnPerM'), snow: sum('snowKnPerM') }, inchesOf(over.wide.width), inchesOf(over.greatest), 'wall above');
  const stated = storeys.filter(loadStated).length;
  return { load, stated: stated === 0 ? 'wall above only' : stated < storeys.length ? 'in part' : 'floors and roof', storeysAbove: new Set(upper.map(({ storey }) => storey)).size };
}
