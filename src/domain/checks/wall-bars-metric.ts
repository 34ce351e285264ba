import { beyondTables } from './wall-bars-answer.js';
import { metricWallBars } from './metric-wall-bars.js';
import { notRead, wallBarsOf, type WallBars, type WallToRead } from './wall-bars-read.js';
import { tabledThickness } from './wall-bars-thickness.js';
import { toMm } from '../quantity/length.js';
import type { BarsSite } from './wall-bars-site.js';

const SOURCE = 'obc-2024 9.15.4.5';

/** Bars of a flat wall by the Ontario code: its foundation tables below grade, one answer above. */
export function barsMetric({ core, height }: WallToRead, { backfill, seismic }: BarsSite, below: boolean): WallBars {
  if (below && backfill === null) return notRead({ missing: 'backfill' }, SOURCE);
  const question = { edition: 'obc-2024', family: core.family, height, windSide: null, alternate: null, notAsked: [] } as const;
  const notes = seismic === null ? [] : [`The schedule states the seismic category ${seismic}; this code asks for Sa(0.2), at most 0.4, which is not looked at here.`];
  const entered = { heightMm: toMm(height), thicknessMm: toMm(core.width) };
  if (!below || backfill === null) {
    const read = wallBarsOf(metricWallBars({ ...question, nominal: core.width, soilSide: null }), { ...entered, position: 'middle third' });
    return { ...read, notes: [...read.notes, ...notes] };
  }
  const thickness = tabledThickness(core);
  if (thickness === null) return wallBarsOf(beyondTables('wall-beyond-tables', { core: core.code, thicknessMm: toMm(core.width), limit: '150 to 289 mm' }, SOURCE));
  const read = wallBarsOf(metricWallBars({ ...question, nominal: thickness, soilSide: { backfill, soil: null, position: 'inside-face' } }), { ...entered, tableThicknessMm: toMm(thickness), backfillMm: toMm(backfill), position: 'inside half' });
  const thicker = thickness === core.width ? [] : [`The concrete is ${toMm(core.width)} mm thick and is read in the table for ${toMm(thickness)} mm, the next thinner one.`];
  return { ...read, notes: [...read.notes, ...thicker, ...notes] };
}
