import type { Schedule } from '../../src/domain/schedule/schedule.js';
import type { LaidWall, Takeoff } from '../../src/domain/takeoff/index.js';
import { faceAreas } from './face-areas.js';
import { solidWalls, type SolidWall } from './solid-lines.js';
import { solidVolumes, type SolidKernel, type SolidVolumes } from './solid-volumes.js';

const NM_PER_INCH = 25_400_000;
const cubicInches = (nm3: bigint): number => Number(nm3) / NM_PER_INCH ** 3;
const squareInches = (nm2: bigint): number => Number(nm2) / NM_PER_INCH ** 2;
/** Of the concrete and of the faces: the goal of the take-off; an area laid out in steps of a tenth of a micrometre is 4e-8 off. */
const WITHIN = 1e-6;
/** Bodies whose sum and union differ by less share nothing but faces. */
const TOUCHING = 1e-8;

/** Where a take-off's concrete and faces differ from solids and polygons built of the schedule alone, in words. */
export function solidDifferences(takeoff: Takeoff, schedule: Schedule, kernel: SolidKernel): string[] {
  const solids = solidVolumes(schedule, kernel);
  const walls = solidWalls(schedule);
  return [
    ...takeoff.laid.storeys.flatMap((storey) => storey.walls).flatMap((wall) => wallDifferences(wall, walls.find(({ mark }) => mark === wall.mark)!, solids, schedule)),
    ...takeoff.concrete.flatMap(({ storey, nm3 }) => storeyDifferences(storey, cubicInches(nm3), walls, solids)),
  ];
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
