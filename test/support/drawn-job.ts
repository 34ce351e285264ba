import { readFileSync } from 'node:fs';
import { inches } from '../../src/domain/quantity/length.js';
import { readRange } from '../../src/domain/range/read-range.js';
import type { FormRange } from '../../src/domain/range/range.js';
import type { DimensionsTo, LengthUnit, Opening, Schedule, Wall } from '../../src/domain/schedule/schedule.js';
import { takeOff } from '../../src/domain/takeoff/index.js';
import type { LaidStorey } from '../../src/domain/takeoff/index.js';

/** The demo range, read from its sample. */
export function demoRange(): FormRange {
  const json: unknown = JSON.parse(readFileSync(new URL('../../shared/samples/heron-16.range.json', import.meta.url), 'utf8'));
  const range = readRange(json);
  if (!range.ok) throw new Error(JSON.stringify(range.error));
  return range.value;
}

/** A wall in inches of the plan: mark, from, to, core. */
export type PlanRow = readonly [
  mark: string,
  from: readonly [number, number],
  to: readonly [number, number],
  core?: string,
  height?: number,
];
/** An opening in inches: mark, wall, at, sill, width, height. */
export type HoleRow = readonly [
  mark: string,
  wall: string,
  at: number,
  sill: number,
  width: number,
  height: number,
  lining?: 'buck' | 'end-closure',
];

export interface DrawnJob {
  readonly walls: readonly PlanRow[];
  readonly openings?: readonly HoleRow[];
  readonly height?: number;
  readonly units?: LengthUnit;
  readonly dimensionsTo?: DimensionsTo;
}

const PLACE = { sheet: null, row: null, pointer: '' };

/** One storey on a footing, as it was written. */
export function drawnSchedule({
  walls,
  openings = [],
  height = 96,
  units = 'in',
  dimensionsTo = 'foam-face',
}: DrawnJob): Schedule {
  return {
    format: 'wallcourse/schedule@1',
    name: 'Drawn job',
    units,
    dimensionsTo,
    range: 'HERON-16',
    features: [],
    site: null,
    pour: null,
    unknown: [],
    storeys: [{ id: 'S1', height: inches(height), grade: 'above', storeyAbove: false, closed: false, on: null }],
    walls: walls.map(([mark, from, to, core = '6', own = height]): Wall => ({
      mark,
      storey: 'S1',
      core,
      from: point(from),
      to: point(to),
      length: Math.round(Math.hypot(point(to).x - point(from).x, point(to).y - point(from).y)),
      dimensionsTo,
      height: inches(own),
      base: 0,
      arc: null,
      start: null,
      end: null,
      place: PLACE,
    })),
    openings: openings.map(([mark, wall, at, sill, width, tall, lining = 'buck']): Opening => ({
      mark,
      wall,
      at: inches(at),
      sill: inches(sill),
      width: inches(width),
      height: inches(tall),
      lining,
      measured: 'concrete',
      place: PLACE,
    })),
  };
}

export function drawnStorey(job: DrawnJob, range: FormRange): LaidStorey {
  return takeOff(drawnSchedule(job), range).laid.storeys[0] as LaidStorey;
}

const point = ([x, y]: readonly [number, number]): { x: number; y: number } => ({ x: inches(x), y: inches(y) });

/** A house with a bay of 45° turns, a corner of turn 67.5°, a re-entrant corner and two partitions. */
export const BAY_HOUSE: DrawnJob = {
  height: 108,
  walls: [
    ['A', [0, 0], [150, 0]],
    ['B', [150, 0], [210, -60]],
    ['C', [210, -60], [330, -60]],
    ['D', [330, -60], [390, 0]],
    ['E', [390, 0], [540, 0]],
    ['F', [540, 0], [540, 200]],
    ['G', [540, 200], [490, 320.7107]],
    ['H', [490, 320.7107], [260, 320.7107]],
    ['I', [260, 320.7107], [260, 440]],
    ['J', [260, 440], [0, 440]],
    ['K', [0, 440], [0, 0]],
    ['P', [0, 230], [180, 230]],
    ['Q', [400, 11], [400, 200], '4'],
  ],
  openings: [
    ['D1', 'C', 40, 0, 40, 84],
    ['W1', 'A', 54, 36, 48, 48],
    ['W2', 'E', 60, 36, 36, 48],
    ['W3', 'K', 80, 36, 60, 48],
    ['W4', 'K', 330, 36, 36, 48],
    ['W5', 'F', 80, 36, 36, 48, 'end-closure'],
    ['W6', 'H', 90, 36, 60, 48],
    ['W7', 'J', 60, 48, 24, 36],
    ['W8', 'J', 170, 48, 24, 36],
    ['D2', 'P', 60, 0, 36, 84],
  ],
};
