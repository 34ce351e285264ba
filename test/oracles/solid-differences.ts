import type { Schedule } from '../../src/domain/schedule/schedule.js';
import type { LaidWall, Takeoff } from '../../src/domain/takeoff/index.js';
import { faceAreas } from './face-areas.js';
import { HERON } from './heron-figures.js';
import { turnOf } from './solid-ledges.js';
import { solidWalls, type SolidWall } from './solid-lines.js';
import { solidVolumes, type SolidKernel, type SolidVolumes } from './solid-volumes.js';

const NM_PER_INCH = 25_400_000;
const cubicInches = (nm3: bigint): number => Number(nm3) / NM_PER_INCH ** 3;
const squareInches = (nm2: bigint): number => Number(nm2) / NM_PER_INCH ** 2;
/** decisions.md 6 [in]. */
const SNAP = 2 * (0.002 / 25.4);
/** Of the concrete and of the faces: the goal of the take-off; an area laid out in steps of a tenth of a micrometre is 4e-8 off. */
const WITHIN = 1e-6;
/** Bodies whose sum and union differ by less share nothing but faces. */
const TOUCHING = 1e-8;

/** Where a take-off's concrete and faces differ from solids and polygons built of the schedule alone, in words. */
export function solidDifferences(takeoff: Takeoff, schedule: Schedule, kernel: SolidKernel): string[] {
  const walls = solidWalls(schedule);
  const laid = takeoff.laid.storeys.flatMap((storey) => storey.walls);
  const faults: string[] = [];
  const solids = solidVolumes(schedule, kernel, (wall, end) => {
    const leg = laidLeg(laid.find(({ mark }) => mark === wall.mark)!, end);
    if (!legsOf(wall, end, walls).some((length) => Math.abs(leg.length - length) < SNAP)) faults.push(`${wall.mark}: no unit has a leg of ${leg.length} in`);
    return leg.end;
  });
  faults.push(...laid.flatMap((wall) => wallDifferences(wall, walls.find(({ mark }) => mark === wall.mark)!, solids, schedule)));
  return [...faults, ...takeoff.concrete.flatMap(({ storey, nm3 }) => storeyDifferences(storey, cubicInches(nm3), walls, solids))];
}

/** A corner unit's leg in a wall's top course: its length from the node and where it ends on the dimension line [in]. */
function laidLeg(wall: LaidWall, end: 'from' | 'to'): { length: number; end: number } {
  const top = wall.courses.find(({ n }) => n === wall.stack.courses)!;
  const legs = top.pieces.filter(({ kind, inside }) => kind.startsWith('corner') && !inside).sort((a, b) => a.from - b.from);
  const leg = end === 'from' ? legs[0]! : legs.at(-1)!;
  const inner = end === 'from' ? leg.to : leg.from;
  return { length: (end === 'from' ? inner : wall.length - inner) / NM_PER_INCH, end: (inner + wall.startOffset) / NM_PER_INCH };
}

/** decisions.md 3: what the two legs of a corner's unit may take of an axis. */
function legsOf(wall: SolidWall, end: 'from' | 'to', walls: readonly SolidWall[]): number[] {
  const joint = wall.joints[end];
  if (joint.kind !== 'corner') return [];
  const turn = Math.abs(turnOf(wall, end, walls.find(({ mark }) => mark === joint.other.mark)!, joint.other.end));
  const near = (degrees: number): boolean => Math.abs((turn * 180) / Math.PI - degrees) <= HERON.turnTolerance;
  const core = wall.levels.at(-1)!.core;
  const legs = (near(90) ? HERON.square : near(45) ? HERON.pair : HERON.hinged)[String(core)]!;
  return legs.map((leg) => leg - (core / 2 + HERON.panel) * Math.tan(turn / 2));
}

function wallDifferences(wall: LaidWall, drawn: SolidWall, solids: SolidVolumes, schedule: Schedule): string[] {
  const face = faceAreas(drawn, solids.slabs.get(wall.mark)!, schedule);
  const solid = solids.ofWall.get(wall.mark)!;
  const [gross, openings] = [squareInches(wall.faceNm2), squareInches(wall.openingNm2)];
  return [
    ...apart(`${wall.mark}: concrete`, cubicInches(wall.concreteNm3), solid, solid),
    ...apart(`${wall.mark}: gross face`, gross, face.gross, face.gross),
    ...apart(`${wall.mark}: openings`, openings, face.openings, face.gross),
    ...apart(`${wall.mark}: net face`, gross - openings, face.net, face.gross),
  ];
}

/** The storey as one body, and whether its walls overlap in it. */
function storeyDifferences(storey: string, counted: number, walls: readonly SolidWall[], solids: SolidVolumes): string[] {
  const swept = walls.filter((wall) => wall.storey === storey).reduce((sum, { mark }) => sum + solids.sweptOf.get(mark)!, 0);
  const solid = solids.ofStorey.get(storey)! + swept;
  const overlap = solids.overlapOf.get(storey)!;
  return [
    ...apart(`${storey}: concrete`, counted, solid, solid),
    ...(Math.abs(overlap) > TOUCHING * solid ? [`${storey}: walls overlap by ${overlap} in³ of ${solid}`] : []),
  ];
}

const apart = (what: string, counted: number, reference: number, of: number): string[] =>
  (Math.abs(counted - reference) <= WITHIN * of ? [] : [`${what} ${counted}, reference ${reference}, ${((counted - reference) / of).toExponential(2)} apart`]);
