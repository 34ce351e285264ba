import { readFileSync } from 'node:fs';
import { readRange } from '../../src/domain/range/read-range.js';
import type { FormRange } from '../../src/domain/range/range.js';
import { inches } from '../../src/domain/quantity/length.js';
import type { Opening, Schedule, Storey, Wall } from '../../src/domain/schedule/schedule.js';

/** The demo range as its JSON, with parameters or top-level figures changed. */
export function heron(change: { parameters?: Record<string, unknown>; top?: Record<string, unknown> } = {}): FormRange {
  const json = JSON.parse(readFileSync(new URL('../../shared/samples/heron-16.range.json', import.meta.url), 'utf8')) as {
    parameters: Record<string, object>;
  };
  for (const [name, value] of Object.entries(change.parameters ?? {})) json.parameters[name] = { ...json.parameters[name], value };
  const result = readRange({ ...json, ...change.top });
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const place = { sheet: null, row: null, pointer: '' };

export interface WallInput {
  readonly mark: string;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly core?: string;
  readonly height?: number;
  readonly base?: number;
  readonly storey?: string;
  readonly dimensionsTo?: Wall['dimensionsTo'];
}

export interface OpeningInput {
  readonly mark: string;
  readonly wall: string;
  readonly at: number;
  readonly sill: number;
  readonly width: number;
  readonly height: number;
  readonly lining?: Opening['lining'];
}

/** A canonical schedule in inches, for tests that work a figure by hand. */
export function scheduleOf(walls: readonly WallInput[], options: { openings?: readonly OpeningInput[]; height?: number; storey?: Partial<Storey> } = {}): Schedule {
  const height = options.height ?? 96;
  return {
    format: 'wallcourse/schedule@1',
    name: 'small job',
    units: 'in',
    dimensionsTo: 'foam-face',
    range: 'HERON-16',
    storeys: [{ id: 'S1', height: inches(height), grade: 'above', storeyAbove: false, closed: false, on: null, ...options.storey }],
    walls: walls.map((wall) => ({
      mark: wall.mark,
      storey: wall.storey ?? 'S1',
      core: wall.core ?? '6',
      from: { x: inches(wall.from[0]), y: inches(wall.from[1]) },
      to: { x: inches(wall.to[0]), y: inches(wall.to[1]) },
      length: inches(Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1])),
      dimensionsTo: wall.dimensionsTo ?? 'foam-face',
      height: inches(wall.height ?? height),
      base: inches(wall.base ?? 0),
      arc: null,
      start: null,
      end: null,
      place,
    })),
    openings: (options.openings ?? []).map((opening) => ({
      mark: opening.mark,
      wall: opening.wall,
      at: inches(opening.at),
      sill: inches(opening.sill),
      width: inches(opening.width),
      height: inches(opening.height),
      lining: opening.lining ?? 'buck',
      measured: 'concrete',
      place,
    })),
    features: [],
    site: null,
    pour: null,
    unknown: [],
  };
}

/** A loop of walls A, B, C … through the corners given, counter-clockwise with the building on the left. */
export function loopOf(corners: readonly (readonly [number, number])[], core = '6'): WallInput[] {
  return corners.map((from, index) => ({ mark: String.fromCharCode(65 + index), core, from, to: corners[(index + 1) % corners.length]! }));
}
