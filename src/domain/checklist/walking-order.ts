import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';

/**
 * The walls of a storey in the order in which they are laid: along each line of walls from its beginning, straight on and round its corners;
 * a ring from the wall listed first. Lines follow one another in the order of the schedule.
 */
export function walkingOrder(storey: LaidStorey): readonly LaidWall[] {
  const after = new Map(storey.junctions.flatMap((junction) => stepOf(junction)));
  const before = new Map([...after].map(([from, to]) => [to, from]));
  const walls = new Map(storey.walls.map((wall) => [wall.mark, wall]));
  const walked = new Set<string>();
  for (const { mark } of storey.walls) {
    if (walked.has(mark)) continue;
    let next: string | undefined = beginningOf(mark, before);
    while (next !== undefined && !walked.has(next)) {
      walked.add(next);
      next = after.get(next);
    }
  }
  return [...walked].flatMap((mark) => walls.get(mark) ?? []);
}

/** From which wall the walk goes on to which; at a tee along the through wall, where it is drawn in two parts. */
function stepOf({ kind, walls }: Junction): readonly (readonly [string, string])[] {
  const [arriving, leaving] = walls;
  const goesOn = kind === 'straight' || kind === 'corner' || (kind === 'tee' && walls.length === 3);
  return goesOn && arriving !== undefined && leaving !== undefined ? [[arriving, leaving]] : [];
}

function beginningOf(mark: string, before: ReadonlyMap<string, string>): string {
  let first = mark;
  for (let earlier = before.get(first); earlier !== undefined; earlier = before.get(first)) {
    if (earlier === mark) return mark;
    first = earlier;
  }
  return first;
}
