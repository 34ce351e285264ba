import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Marks of a storey's walls that stand inside a closed ring of other walls: no soil and no wind stands against them.
 *
 * The walls of a ring are outside walls, those of a courtyard too. A curved wall counts by its chord.
 *
 * @source geometry: a point is inside where a ray from it leaves an odd number of rings
 */
export function wallsInside(storey: LaidStorey): ReadonlySet<string> {
  const rings = ringsOf(storey);
  const inRing = new Set(rings.flatMap(({ marks }) => marks));
  const inside = storey.walls.filter((wall) => !inRing.has(wall.mark) && rings.filter(({ corners }) => contains(corners, middle(wall))).length % 2 === 1);
  return new Set(inside.map(({ mark }) => mark));
}

interface Ring {
  readonly marks: readonly string[];
  readonly corners: readonly Point[];
}

function ringsOf(storey: LaidStorey): readonly Ring[] {
  const junctions = new Map(storey.junctions.map((junction) => [junction.id, junction]));
  const walls = new Map(storey.walls.map((wall) => [wall.mark, wall]));
  const seen = new Set<string>();
  return storey.walls.flatMap((first) => {
    if (seen.has(first.mark)) return [];
    const { closed, marks, corners } = walk(first, walls, junctions);
    for (const mark of marks) seen.add(mark);
    return closed ? [{ marks: [...marks], corners }] : [];
  });
}

interface Walked {
  readonly closed: boolean;
  readonly marks: ReadonlySet<string>;
  readonly corners: readonly Point[];
}

/** From a wall on through the walls that go on from it, back to itself or to where the line ends. */
function walk(first: LaidWall, walls: ReadonlyMap<string, LaidWall>, junctions: ReadonlyMap<string, Junction>): Walked {
  const marks = new Set<string>();
  const corners: Point[] = [];
  let [wall, atEnd] = [first, true];
  while (!marks.has(wall.mark)) {
    marks.add(wall.mark);
    corners.push(atEnd ? wall.axisTo : wall.axisFrom);
    const id = atEnd ? wall.endJunction : wall.startJunction;
    const next = goesOn(wall, junctions.get(id), walls);
    if (next === null) return { closed: false, marks, corners };
    atEnd = next.startJunction === id;
    wall = next;
  }
  return { closed: wall.mark === first.mark, marks, corners };
}

/** The one other wall that is no branch of a tee there. */
function goesOn(wall: LaidWall, junction: Junction | undefined, walls: ReadonlyMap<string, LaidWall>): LaidWall | null {
  const branch = junction?.tee?.branch;
  if (junction === undefined || branch === wall.mark) return null;
  const others = junction.walls.filter((mark) => mark !== wall.mark && mark !== branch);
  return others.length === 1 ? (walls.get(others[0] ?? '') ?? null) : null;
}

const middle = ({ axisFrom, axisTo }: LaidWall): Point => ({ x: (axisFrom.x + axisTo.x) / 2, y: (axisFrom.y + axisTo.y) / 2 });

function contains(corners: readonly Point[], { x, y }: Point): boolean {
  return corners.reduce((inside, from, index) => {
    const to = corners[(index + 1) % corners.length] ?? from;
    if (from.y > y === to.y > y) return inside;
    return x < from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y) ? !inside : inside;
  }, false);
}
