import { toMm } from '../quantity/length.js';
import type { RowReader } from './row-reader.js';
import type { Pour, Site } from './schedule.js';
import { MAX_MARK, MAX_WALL_HEIGHT } from './schedule-limits.js';

export const SITE_KEYS = ['wind', 'exposure', 'soil', 'backfill', 'seismic', 'snow'] as const;
export const POUR_KEYS = [
  'rise',
  'concrete',
  'unitWeight',
  'cement',
  'retarder',
  'slump',
  'air',
  'humidity',
  'wind',
  'pump',
  'truck',
] as const;

/** The stated loads of the site in SI; null where none is stated. Wrong values are recorded by the reader and left out. */
export function readSite(document: RowReader): Site | null {
  const site = document.object('site', SITE_KEYS);
  if (!site) return null;
  return stated<Site>({
    windMps: site.quantity('wind', 'speed'),
    exposure: site.has('exposure') ? site.choice('exposure', ['B', 'C', 'D'] as const) : undefined,
    soilKnPerM3: site.quantity('soil', 'fluid weight'),
    backfill: site.has('backfill') ? site.length('backfill', { most: MAX_WALL_HEIGHT }) : undefined,
    seismic: site.has('seismic') ? site.text('seismic', MAX_MARK) : undefined,
    snowKpa: site.quantity('snow', 'pressure'),
  });
}

/** The pour as planned, in SI; null where nothing is stated. */
export function readPour(document: RowReader): Pour | null {
  const pour = document.object('pour', POUR_KEYS);
  if (!pour) return null;
  const slump = pour.has('slump') ? pour.length('slump', { unitNeeded: true }) : undefined;
  return stated<Pour>({
    riseMPerH: pour.quantity('rise', 'rise', { positive: true }),
    concreteC: pour.quantity('concrete', 'temperature'),
    unitWeightKgPerM3: pour.quantity('unitWeight', 'density', { positive: true }),
    cement: pour.has('cement') ? pour.text('cement', MAX_MARK) : undefined,
    retarder: pour.has('retarder') ? pour.flag('retarder', false) : undefined,
    slumpMm: slump === undefined ? undefined : toMm(slump),
    airC: pour.quantity('air', 'temperature'),
    humidity: pour.quantity('humidity', 'fraction'),
    windMps: pour.quantity('wind', 'speed'),
    pumpM3PerH: pour.quantity('pump', 'volume rate', { positive: true }),
    truckM3: pour.quantity('truck', 'volume', { positive: true }),
  });
}

/** Only what is stated; null where that is nothing. */
function stated<T extends object>(values: T): T | null {
  const entries = Object.entries(values).filter(([, value]) => value !== undefined);
  return entries.length === 0 ? null : (Object.fromEntries(entries) as T);
}
