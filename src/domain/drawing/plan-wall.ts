import { cross, dot, leftNormal, scale } from '../geometry/vector.js';
import type { Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { Quad } from './obstacles.js';
import { bulgeOf, directionAt, intoEnd, meetingOf, pointAt, stationAt } from './wall-curve.js';

/** Inner edge from start to end, then the outer one back; an edge with a bulge is an arc. */
export type Outline = readonly [PlanPoint, PlanPoint, PlanPoint, PlanPoint];
export interface PlanPoint extends Vector {
  readonly bulge?: number;
}

/** A wall of a storey in plan: its frame, and the outlines of its panels and core, mitred at corners and trimmed at tees. */
export interface PlanWall {
  readonly wall: LaidWall;
  readonly along: Vector;
  /** Unit vector along the axis at a station; `along` is that of the middle. */
  readonly directionAt: (station: number) => Vector;
  /** Unit vector to the outside of the building. */
  readonly outward: Vector;
  /** A point of the plan: station along the axis, distance from it toward the outside [nm]. */
  readonly at: (station: number, outward: number) => Vector;
  readonly outsidePanel: Outline;
  readonly insidePanel: Outline;
  readonly core: Outline;
  /** Corners over both panels. */
  readonly body: Quad;
  /** What the wall covers. */
  readonly rooms: readonly Quad[];
  /** Stations at which a face or a line beside the wall begins and ends, cut as the foam face is. */
  readonly faceEnds: (outward: number) => { readonly from: number; readonly to: number };
}

/** Which line of the neighbour an edge runs to: its foam face or its core face. */
type Part = 'foam' | 'core';

const PARALLEL = 1e-6;
/** Nodes of two walls nearer than this are one [nm]. */
const SAME_NODE = 1_000;
/** Of a curve that one quadrilateral covers. */
const ROOM_RADIANS = 0.12;

export function planWalls(storey: LaidStorey): PlanWall[] {
  return storey.walls.map((wall) => planWall(wall, storey));
}

function planWall(wall: LaidWall, storey: LaidStorey): PlanWall {
  const side = wall.outside === 'left' ? 1 : -1;
  const at = (station: number, distance: number): Vector => pointAt(wall, station, distance * side);
  const ends = { start: endOf(wall, storey, 'start'), end: endOf(wall, storey, 'end') };
  const [foam, core] = [wall.thickness / 2, wall.core.width / 2];
  const edge = (distance: number, part: Part, face: Part): { from: number; to: number } => ({
    from: ends.start(distance * side, part, face),
    to: wall.length - ends.end(-distance * side, part, face),
  });
  const outline = (outer: number, outerPart: Part, inner: number, innerPart: Part, face: Part): Outline => {
    const [a, b] = [edge(outer, outerPart, face), edge(inner, innerPart, face)];
    return [
      { ...at(b.from, inner), bulge: bulgeOf(wall, b.from, b.to) },
      at(b.to, inner),
      { ...at(a.to, outer), bulge: bulgeOf(wall, a.to, a.from) },
      at(a.from, outer),
    ];
  };
  const directionAlong = (station: number): Vector => directionAt(wall, station);
  const middle = directionAlong(wall.length / 2);
  const [outer, inner] = [edge(foam, 'foam', 'foam'), edge(-foam, 'foam', 'foam')];
  return {
    wall,
    along: middle,
    directionAt: directionAlong,
    outward: scale(leftNormal(middle), side),
    at,
    outsidePanel: outline(foam, 'foam', core, 'core', 'foam'),
    insidePanel: outline(-core, 'core', -foam, 'foam', 'foam'),
    core: outline(core, 'core', -core, 'core', 'core'),
    body: [at(inner.from, -foam), at(inner.to, -foam), at(outer.to, foam), at(outer.from, foam)],
    rooms: roomsOf(wall, at, inner, outer),
    faceEnds: (outward) => edge(outward, 'foam', 'foam'),
  };
}

/** The wall over both panels as quadrilaterals: one where it is straight, short ones round a curve. */
function roomsOf(wall: LaidWall, at: PlanWall['at'], inner: { from: number; to: number }, outer: { from: number; to: number }): Quad[] {
  const foam = wall.thickness / 2;
  const count = wall.arc === null ? 1 : Math.max(1, Math.ceil(wall.length / wall.arc.axisRadius / ROOM_RADIANS));
  const share = (span: { from: number; to: number }, i: number): number => span.from + ((span.to - span.from) * i) / count;
  return Array.from({ length: count }, (_, i): Quad => [
    at(share(inner, i), -foam),
    at(share(inner, i + 1), -foam),
    at(share(outer, i + 1), foam),
    at(share(outer, i), foam),
  ]);
}

/** Of a straight wall; of a curve in its middle. */
export const directionOf = (wall: LaidWall): Vector => directionAt(wall, wall.length / 2);

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
  const into = intoEnd(wall, end);
  if (junction?.tee?.branch === wall.mark) {
    const through = storey.walls.find((candidate) => candidate.mark === junction.tee?.through);
    if (through?.arc || (through && wall.arc)) return curvedBranchCut(wall, end, through);
    return branchCut(into, junction.tee, storey);
  }
  const partner = junction === undefined ? null : partnerAt(junction, wall, storey);
  if (partner !== null && (wall.arc || partner.wall.arc || !shareNode(wall, end, partner))) return meetingCut(wall, end, partner);
  return partner === null ? () => 0 : mitreCut(into, partner);
}

interface Partner {
  readonly wall: LaidWall;
  readonly into: Vector;
  readonly end: 'start' | 'end';
}

function partnerAt(junction: Junction, wall: LaidWall, storey: LaidStorey): Partner | null {
  if (junction.kind !== 'corner') return null;
  const mark = junction.walls.find((candidate) => candidate !== wall.mark);
  const partner = storey.walls.find((candidate) => candidate.mark === mark);
  if (partner === undefined) return null;
  const end = partner.startJunction === junction.id ? 'start' : 'end';
  return { wall: partner, into: intoEnd(partner, end), end };
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

/** As far into the wall as its line meets the other's; nothing where they do not meet. */
function cutAt(wall: LaidWall, end: 'start' | 'end', left: number, other: LaidWall, otherLeft: number): number {
  const node = end === 'start' ? wall.axisFrom : wall.axisTo;
  const met = meetingOf(wall, end === 'start' ? left : -left, other, otherLeft, node);
  if (met === null) return 0;
  const station = stationAt(wall, met);
  return end === 'start' ? station : wall.length - station;
}

/** Axes of one node; over a change of cores in one wall alone they pass each other. */
function shareNode(wall: LaidWall, end: 'start' | 'end', partner: Partner): boolean {
  const [a, b] = [end === 'start' ? wall.axisFrom : wall.axisTo, partner.end === 'start' ? partner.wall.axisFrom : partner.wall.axisTo];
  return Math.hypot(a.x - b.x, a.y - b.y) < SAME_NODE;
}

/** As `mitreCut`, where one of the two is a curve or the axes do not meet in the node. */
function meetingCut(wall: LaidWall, end: 'start' | 'end', partner: Partner): EndCut {
  return (left, part) => {
    const half = (part === 'foam' ? partner.wall.thickness : partner.wall.core.width) / 2;
    const beside = -Math.sign(left) * half;
    return cutAt(wall, end, left, partner.wall, partner.end === 'start' ? beside : -beside);
  };
}

/** As `branchCut`, where one of the two is a curve. */
function curvedBranchCut(wall: LaidWall, end: 'start' | 'end', through: LaidWall): EndCut {
  const node = end === 'start' ? wall.axisFrom : wall.axisTo;
  const normal = leftNormal(directionAt(through, stationAt(through, node)));
  const side = dot(normal, intoEnd(wall, end)) >= 0 ? 1 : -1;
  return (left, _part, face) => cutAt(wall, end, left, through, (side * (face === 'foam' ? through.thickness : through.core.width)) / 2);
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

/** Stations and distances as an outline of the plan, curved where the wall is. */
export const stretch = (wall: PlanWall, from: Nm, to: Nm, inner: number, outer: number): Outline => [
  { ...wall.at(from, inner), bulge: bulgeOf(wall.wall, from, to) },
  wall.at(to, inner),
  { ...wall.at(to, outer), bulge: bulgeOf(wall.wall, to, from) },
  wall.at(from, outer),
];
