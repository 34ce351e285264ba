import type { LaidStorey, LaidWall } from '../takeoff/laid.js';

/**
 * The walls that have an outside: those of a closed ring of walls.
 *
 * A wall that ends on another wall is a partition; a wall in a chain with a loose end has two sides and no outside.
 *
 * @returns marks
 */
export function outsideWalls(storey: LaidStorey): ReadonlySet<string> {
  const branches = new Set(storey.junctions.flatMap(({ tee }) => (tee === null ? [] : [tee.branch])));
  const standing = new Map(storey.walls.filter(({ mark }) => !branches.has(mark)).map((wall) => [wall.mark, wall]));
  const atNode = new Map<string, Set<LaidWall>>();
  const wallsAt = (id: string): Set<LaidWall> => atNode.get(id) ?? new Set();
  for (const wall of standing.values())
    for (const id of endsOf(wall)) atNode.set(id, new Set([...wallsAt(id), wall]));
  const loose = [...standing.values()].filter((wall) => endsOf(wall).some((id) => wallsAt(id).size < 2));
  for (let wall = loose.pop(); wall !== undefined; wall = loose.pop()) {
    standing.delete(wall.mark);
    for (const id of endsOf(wall)) {
      wallsAt(id).delete(wall);
      if (wallsAt(id).size === 1) loose.push(...wallsAt(id));
    }
  }
  return new Set(standing.keys());
}

const endsOf = (wall: LaidWall): string[] => [wall.startJunction, wall.endJunction];
