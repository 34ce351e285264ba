import { cross, direction, dot, scale, subtract } from '../geometry/vector.js';
import type { Vector } from '../geometry/vector.js';
import type { LaidStorey, LaidWall } from '../takeoff/laid.js';

/**
 * The walls that have an outside: those of a closed ring of walls, and those of an annex that closes another ring against it.
 *
 * A wall between two rooms is a partition, whether or not it ends on another wall; a wall in a chain with a loose end has two sides and no outside.
 *
 * @returns marks
 */
export function outsideWalls(storey: LaidStorey): ReadonlySet<string> {
  return new Set([...ringWalls(storey), ...wallsAgainstTheOpen(storey)]);
}

/** Rings of walls none of which ends on another: courtyards too, whose open side lies within the building. */
function ringWalls(storey: LaidStorey): string[] {
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
  return [...standing.keys()];
}

const endsOf = (wall: LaidWall): string[] => [wall.startJunction, wall.endJunction];

/** A stretch of a wall's axis between two neighbouring junctions, walked one way, with what lies on its left. */
interface Side {
  readonly wall: LaidWall;
  readonly from: string;
  readonly to: string;
  readonly along: Vector;
  readonly start: Vector;
  readonly end: Vector;
  /** The left of the walk is the left of the wall's own start to end. */
  readonly isLeft: boolean;
}

/**
 * Walls of which some stretch has the open on the wall's outside and a closed room on its other side.
 *
 * Every stretch is walked both ways, each walk with its left hand on the walls: at a junction the walk turns to the next stretch. A round of walks
 * is the boundary of one room; one that goes clockwise is the boundary of the open round its group of walls.
 */
function wallsAgainstTheOpen(storey: LaidStorey): string[] {
  const sides = storey.walls.flatMap((wall) => sidesOf(wall, storey));
  const open = new Set(roundsOf(sides).filter((round) => signedArea(round) <= 0).flat());
  const keyOf = ({ wall, from, to }: Side): string => JSON.stringify([wall.mark, from, to]);
  const byKey = new Map(sides.map((side) => [keyOf(side), side]));
  return sides
    .filter((side) => open.has(side) && side.isLeft === (side.wall.outside === 'left'))
    .filter((side) => {
      const other = byKey.get(keyOf({ ...side, from: side.to, to: side.from }));
      return other !== undefined && !open.has(other);
    })
    .map(({ wall }) => wall.mark);
}

function sidesOf(wall: LaidWall, storey: LaidStorey): Side[] {
  const along = direction(subtract(wall.axisTo, wall.axisFrom));
  const between = storey.junctions
    .filter(({ id, walls }) => walls.includes(wall.mark) && !endsOf(wall).includes(id))
    .map(({ id, at }) => ({ id, at, station: dot(subtract(at, wall.axisFrom), along) }))
    .sort((a, b) => a.station - b.station);
  const nodes = [{ id: wall.startJunction, at: wall.axisFrom }, ...between, { id: wall.endJunction, at: wall.axisTo }];
  return nodes.slice(1).flatMap((to, i): Side[] => {
    const from = nodes[i] as (typeof nodes)[number];
    return [
      { wall, from: from.id, to: to.id, along, start: from.at, end: to.at, isLeft: true },
      { wall, from: to.id, to: from.id, along: scale(along, -1), start: to.at, end: from.at, isLeft: false },
    ];
  });
}

/** Each side once, in the rounds in which they follow one another. */
function roundsOf(sides: readonly Side[]): Side[][] {
  const leaving = new Map<string, Side[]>();
  for (const side of sides) leaving.set(side.from, [...(leaving.get(side.from) ?? []), side]);
  const walked = new Set<Side>();
  const rounds: Side[][] = [];
  for (const first of sides) {
    const round: Side[] = [];
    for (let side = first; !walked.has(side); side = nextOf(side, leaving.get(side.to) ?? [])) {
      walked.add(side);
      round.push(side);
    }
    if (round.length > 0) rounds.push(round);
  }
  return rounds;
}

/** The sharpest way to the left; straight back only where the walls end. */
function nextOf(side: Side, ways: readonly Side[]): Side {
  const turn = (way: Side): number => Math.atan2(cross(side.along, way.along), dot(side.along, way.along));
  const onward = ways.filter((way) => way.wall !== side.wall || way.to !== side.from);
  const choices = onward.length > 0 ? onward : ways;
  return choices.reduce((best, way) => (turn(way) > turn(best) ? way : best));
}

/** Twice the area a round goes about; counter-clockwise positive. The whole round of a tree of walls has none. */
function signedArea(round: readonly Side[]): number {
  const [first] = round;
  if (first === undefined) return 0;
  const twice = round.reduce((sum, { start, end }) => sum + cross(subtract(start, first.start), subtract(end, first.start)), 0);
  return Math.abs(twice) < NOTHING ? 0 : twice;
}

/** A square millimetre [nm²]: far below any room, far above what rounding leaves of none. */
const NOTHING = 1e12;
