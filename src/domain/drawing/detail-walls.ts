import { add, dot, scale, subtract } from '../geometry/vector.js';
import type { Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { directionOf, planWalls } from './plan-wall.js';
import type { PlanWall } from './plan-wall.js';

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
  const along = directionOf(wall);
  const atStart = wall.startJunction === junction.id;
  const length = Math.min(reach, wall.length);
  return atStart
    ? { ...wall, length, axisTo: add(wall.axisFrom, scale(along, length)), endJunction: '', openings: [] }
    : { ...wall, length, axisFrom: add(wall.axisTo, scale(along, -length)), startJunction: '', openings: [] };
}

function throughStub(wall: LaidWall, at: Vector, reach: Nm): LaidWall {
  const along = directionOf(wall);
  const station = dot(subtract(at, wall.axisFrom), along);
  const [from, to] = [Math.max(0, station - reach), Math.min(wall.length, station + reach)];
  return {
    ...wall,
    length: Math.round(to - from),
    axisFrom: add(wall.axisFrom, scale(along, from)),
    axisTo: add(wall.axisFrom, scale(along, to)),
    startJunction: '',
    endJunction: '',
    openings: [],
  };
}

/** Unit vector from the junction into a wall; along it where the junction stands in its middle. */
export function intoWall(wall: LaidWall, junction: Junction): Vector {
  const along = directionOf(wall);
  return wall.endJunction === junction.id ? scale(along, -1) : along;
}
