import { add, cross, direction, dot, leftNormal, scale, subtract } from '../geometry/vector.js';
import type { Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { Quad } from './obstacles.js';

/** A wall of a storey in plan: its frame, and the outlines of its panels and core, mitred at corners and trimmed at tees. */
export interface PlanWall {
  readonly wall: LaidWall;
  readonly along: Vector;
  /** Unit vector to the outside of the building. */
  readonly outward: Vector;
  /** A point of the plan: station along the axis, distance from it toward the outside [nm]. */
  readonly at: (station: number, outward: number) => Vector;
  readonly outsidePanel: Quad;
  readonly insidePanel: Quad;
  readonly core: Quad;
  /** Over both panels. */
  readonly body: Quad;
}

/** Which line of the neighbour an edge runs to: its foam face or its core face. */
type Part = 'foam' | 'core';

const PARALLEL = 1e-6;

export function planWalls(storey: LaidStorey): PlanWall[] {
  return storey.walls.map((wall) => planWall(wall, storey));
}

function planWall(wall: LaidWall, storey: LaidStorey): PlanWall {
  const along = directionOf(wall);
  const left = leftNormal(along);
  const outward = wall.outside === 'left' ? left : scale(left, -1);
  const at = (station: number, distance: number): Vector =>
    add(add(wall.axisFrom, scale(along, station)), scale(outward, distance));
  const ends = { start: endOf(wall, storey, 'start'), end: endOf(wall, storey, 'end') };
  const side = wall.outside === 'left' ? 1 : -1;
  const [foam, core] = [wall.thickness / 2, wall.core.width / 2];
  const edge = (distance: number, part: Part, face: Part): { from: number; to: number } => ({
    from: ends.start(distance * side, part, face),
    to: wall.length - ends.end(-distance * side, part, face),
  });
  const quad = (outer: number, outerPart: Part, inner: number, innerPart: Part, face: Part): Quad => {
    const [a, b] = [edge(outer, outerPart, face), edge(inner, innerPart, face)];
    return [at(b.from, inner), at(b.to, inner), at(a.to, outer), at(a.from, outer)];
  };
  return {
    wall,
    along,
    outward,
    at,
    outsidePanel: quad(foam, 'foam', core, 'core', 'foam'),
    insidePanel: quad(-core, 'core', -foam, 'foam', 'foam'),
    core: quad(core, 'core', -core, 'core', 'core'),
    body: quad(foam, 'foam', -foam, 'foam', 'foam'),
  };
}

export const directionOf = (wall: LaidWall): Vector => direction(subtract(wall.axisTo, wall.axisFrom));

/**
 * How far from the node, into the wall, a line of the wall begins.
 *
 * @param left distance of the line to the left of the direction into the wall [nm]
 * @param part whether the line is the wall's foam face or its core face
 * @param face whether a branch stops at the through wall's foam face or runs on to its core
 */
type EndCut = (left: number, part: Part, face: Part) => number;

function endOf(wall: LaidWall, storey: LaidStorey, end: 'start' | 'end'): EndCut {
  const id = end === 'start' ? wall.startJunction : wall.endJunction;
  const junction = storey.junctions.find((candidate) => candidate.id === id);
  const into = end === 'start' ? directionOf(wall) : scale(directionOf(wall), -1);
  if (junction?.tee?.branch === wall.mark) return branchCut(into, junction.tee, storey);
  const partner = junction === undefined ? null : partnerAt(junction, wall, storey);
  return partner === null ? () => 0 : mitreCut(into, partner);
}

interface Partner {
  readonly wall: LaidWall;
  readonly into: Vector;
}

function partnerAt(junction: Junction, wall: LaidWall, storey: LaidStorey): Partner | null {
  if (junction.kind !== 'corner') return null;
  const mark = junction.walls.find((candidate) => candidate !== wall.mark);
  const partner = storey.walls.find((candidate) => candidate.mark === mark);
  if (partner === undefined) return null;
  const away = directionOf(partner);
  return { wall: partner, into: partner.startJunction === junction.id ? away : scale(away, -1) };
}

/** Lines of one kind meet on the mitre: left of this wall with right of the other, looking from the node. */
function mitreCut(into: Vector, partner: Partner): EndCut {
  const sine = cross(into, partner.into);
  return (left, part) => {
    if (Math.abs(sine) < PARALLEL) return 0;
    const half = (part === 'foam' ? partner.wall.thickness : partner.wall.core.width) / 2;
    return (left * dot(into, partner.into) + Math.sign(left) * half) / sine;
  };
}

/** A branch stops at the near face of the through wall's panel, or of its core. */
function branchCut(into: Vector, tee: NonNullable<Junction['tee']>, storey: LaidStorey): EndCut {
  const through = storey.walls.find((candidate) => candidate.mark === tee.through);
  if (through === undefined) return () => 0;
  const normal = leftNormal(directionOf(through));
  const toward = dot(normal, into) >= 0 ? normal : scale(normal, -1);
  const lean = dot(leftNormal(into), toward);
  return (left, _part, face) =>
    ((face === 'foam' ? through.thickness : through.core.width) / 2 - left * lean) / dot(into, toward);
}

/** Stations and distances as a quadrilateral of the plan. */
export const stretch = (wall: PlanWall, from: Nm, to: Nm, inner: number, outer: number): Quad => [
  wall.at(from, inner),
  wall.at(to, inner),
  wall.at(to, outer),
  wall.at(from, outer),
];
