import type { Schedule } from '../../src/domain/schedule/schedule.js';
import { HERON } from '../oracles/heron-figures.js';
import { readInches } from '../oracles/read-dimension.js';
import { placeDeclared } from '../oracles/slow-lines.js';
import type { Dimension, ScheduleDocument } from './schedule-document.js';

const NM_PER_INCH = 25_400_000;

/** A document as the readers hand it on, made here without them, so that the take-off is tested alone. */
export function canonicalSchedule(document: ScheduleDocument): Schedule {
  const nm = (value: Dimension): number => Math.round(readInches(value, document.units) * NM_PER_INCH);
  const placed = placeDeclared(document);
  const place = { sheet: null, row: null, pointer: '' };
  return {
    format: document.format, name: document.name, units: document.units, dimensionsTo: document.dimensionsTo, range: document.range,
    storeys: document.storeys.map((storey) => ({ ...storey, height: nm(storey.height), on: storey.on ?? null })),
    walls: document.walls.map((wall, index) => {
      const { from, to } = placed.get(wall.mark)!;
      const [start, end] = [from, to].map(([x, y]) => ({ x: Math.round(x * NM_PER_INCH), y: Math.round(y * NM_PER_INCH) })) as [{ x: number; y: number }, { x: number; y: number }];
      return {
        mark: wall.mark, storey: wall.storey, core: wall.core, from: start, to: end,
        length: wall.length === undefined ? Math.round(Math.hypot(end.x - start.x, end.y - start.y)) : nm(wall.length),
        dimensionsTo: wall.dimensionsTo ?? document.dimensionsTo,
        height: nm(wall.height ?? document.storeys.find(({ id }) => id === wall.storey)!.height), base: nm(wall.base ?? 0),
        arc: null, start: wall.start ?? null, end: wall.end ?? null, place: { ...place, pointer: `/walls/${index}` },
      };
    }),
    openings: document.openings.map(({ mark, wall, at, sill, width, height, lining, measured }, index) => {
      const buck = measured === 'rough' ? Math.round(HERON.buck * NM_PER_INCH) : 0;
      const below = nm(sill) === 0 ? 0 : buck;
      return {
        mark, wall, at: nm(at) - buck, sill: nm(sill) - below, width: nm(width) + 2 * buck, height: nm(height) + buck + below,
        lining: lining ?? 'buck', measured: measured ?? 'concrete', place: { ...place, pointer: `/openings/${index}` },
      };
    }),
    features: [], site: null, pour: null, unknown: [],
  };
}
