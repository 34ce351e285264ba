import type { Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { planWalls } from './plan-wall.js';
import type { PlanWall } from './plan-wall.js';
import { intoEnd, pointAt, stationAt } from './wall-curve.js';

/** The walls of a junction cut off a given way from it, in their true place; the other ends are square. */
export function stubs(junction: Junction, storey: LaidStorey, reach: (wall: LaidWall) => Nm): PlanWall[] {
  const walls = storey.walls
    .filter((wall) => junction.walls.includes(wall.mark))
    .map((wall) => stub(wall, junction, reach(wall)));
  return planWalls({ ...storey, walls, junctions: [junction] });
}

/** Stations of a stub run from its own `axisFrom`; `nodeAtStart` says on which end the junction lies. */
function stub(wall: LaidWall, junction: Junction, reach: Nm): LaidWall {
  if (junction.tee?.through === wall.mark && wall.startJunction !== junction.id && wall.endJunction !== junction.id)
    return throughStub(wall, junction.at, reach);
  const atStart = wall.startJunction === junction.id;
  const length = Math.min(reach, wall.length);
  const cut = { ...wall, length, openings: [] };
  return atStart
    ? { ...cut, axisTo: pointAt(wall, length, 0), endJunction: '' }
    : { ...cut, axisFrom: pointAt(wall, wall.length - length, 0), startJunction: '' };
}

function throughStub(wall: LaidWall, at: Vector, reach: Nm): LaidWall {
  const station = stationAt(wall, at);
  const [from, to] = [Math.max(0, station - reach), Math.min(wall.length, station + reach)];
  return {
    ...wall,
    length: Math.round(to - from),
    axisFrom: pointAt(wall, from, 0),
    axisTo: pointAt(wall, to, 0),
    startJunction: '',
    endJunction: '',
    openings: [],
  };
}

/** Unit vector from the junction into a wall; along it where the junction stands in its middle. */
export function intoWall(wall: LaidWall, junction: Junction): Vector {
  return intoEnd(wall, wall.endJunction === junction.id ? 'end' : 'start');
}
