import { toFeet } from '../quantity/length.js';
import { coreOfCourse } from '../takeoff/course-core.js';
import type { LaidJob, LaidOpening, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { stationText } from './crew-text.js';
import type { PressureOf } from './rule.js';

export interface OpeningPlace {
  readonly storey: LaidStorey;
  readonly wall: LaidWall;
  readonly opening: LaidOpening;
}

/** Every opening of the job, storey by storey and wall by wall in order of station. */
export function openingPlaces(job: LaidJob): readonly OpeningPlace[] {
  return job.storeys.flatMap((storey) => storey.walls.flatMap((wall) => wall.openings.map((opening) => ({ storey, wall, opening }))));
}

/** What the concrete presses with on a lining as wide as the core, for every unit of its length. */
export interface CorePressure {
  readonly lbPerFt: number;
  readonly pressure: ReturnType<PressureOf>;
}

/**
 * Pressure times core at an opening, the most of the courses and strips it stands in, the ones over its head and under its sill included.
 *
 * @equation F = p · core
 * @source   statics
 */
export function corePressureAt({ storey, wall, opening }: OpeningPlace, pressureOf: PressureOf): CorePressure {
  const beside = wall.courses.filter(({ bottom, height }) => bottom <= opening.head && bottom + height >= opening.sill);
  const cores = (beside.length > 0 ? beside.map(({ n }) => coreOfCourse(wall, n)) : [wall.core]).map((core): CorePressure => {
    const pressure = pressureOf(storey.id, core);
    return { pressure, lbPerFt: pressure.psf * toFeet(core.width) };
  });
  return cores.reduce((most, each) => (each.lbPerFt > most.lbPerFt ? each : most));
}

/** `D1 at station 60 in (1524 mm)`. */
export const openingText = ({ opening }: OpeningPlace): string => `${opening.mark} at ${stationText(opening.from)}`;
