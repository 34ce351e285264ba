import { readFileSync } from 'node:fs';
import { junctionDetail, storeyPlan, wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing } from '../../../src/domain/drawing/index.js';
import { readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { takeOff } from '../../../src/domain/takeoff/index.js';
import type { LaidStorey } from '../../../src/domain/takeoff/index.js';
import type { LengthUnit } from '../../../src/domain/schedule/schedule.js';
import { demoRange } from '../../support/drawn-job.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';

export const RANGE = demoRange();

export interface LaidSample {
  readonly units: LengthUnit;
  readonly storeys: readonly LaidStorey[];
}

/** A schedule document as it is laid with the demo range. */
export function laidDocument(document: unknown): LaidSample {
  const context = {
    cores: [...RANGE.cores.keys()],
    courseHeight: RANGE.courseHeight,
    buckThickness: RANGE.parameters.buckThickness,
  };
  const schedule = readScheduleDocument(document, context);
  if (!schedule.ok) throw new Error(JSON.stringify(schedule.error));
  return { units: schedule.value.units, storeys: takeOff(schedule.value, RANGE).laid.storeys };
}

export const laidSample = (name: string): LaidSample =>
  laidDocument(JSON.parse(readFileSync(new URL(`../../../shared/samples/${name}.schedule.json`, import.meta.url), 'utf8')));

export const plansOf = ({ storeys, units }: LaidSample): Drawing[] =>
  storeys.map((storey) => storeyPlan(storey, RANGE, units, SHEET_HEADER));

export const elevationsOf = ({ storeys, units }: LaidSample): Drawing[] =>
  storeys.flatMap((storey) => storey.walls.map((wall) => wallElevation(wall, storey, RANGE, units, SHEET_HEADER)));

export const detailsOf = ({ storeys, units }: LaidSample): Drawing[] =>
  storeys.flatMap((storey) =>
    storey.junctions.map((junction) => junctionDetail(junction, storey, RANGE, units, SHEET_HEADER, 600)),
  );
