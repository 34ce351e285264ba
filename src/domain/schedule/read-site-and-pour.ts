import { CEMENT_NAMES, cementGroup } from '../engineering/aci-347-04/cement-group.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { toMm } from '../quantity/length.js';
import type { RowReader } from './row-reader.js';
import { BUILDING_CODES, type Pour, type Site } from './schedule.js';
import { MAX_MARK, MAX_WALL_HEIGHT } from './schedule-limits.js';

export const SITE_KEYS = ['wind', 'exposure', 'soil', 'backfill', 'seismic', 'snow', 'duration', 'code'] as const;
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
  'stone',
  'discharge',
] as const;

/** The stated loads of the site in SI; null where none is stated. Wrong values are recorded by the reader and left out. */
export function readSite(document: RowReader): Site | null {
  const site = document.object('site', SITE_KEYS);
  if (!site) return null;
  return stated<Site>({
    windMps: site.quantity('wind', 'speed', PLAUSIBLE.designWind),
    exposure: site.has('exposure') ? site.choice('exposure', ['B', 'C', 'D'] as const) : undefined,
    soilKnPerM3: site.quantity('soil', 'fluid weight', PLAUSIBLE.soil),
    backfill: site.has('backfill') ? site.length('backfill', { most: MAX_WALL_HEIGHT }) : undefined,
    seismic: site.has('seismic') ? site.text('seismic', MAX_MARK) : undefined,
    snowKpa: site.quantity('snow', 'pressure', PLAUSIBLE.snow),
    durationH: site.quantity('duration', 'time', PLAUSIBLE.duration),
    code: site.has('code') ? site.choice('code', BUILDING_CODES) : undefined,
  });
}

/** The pour as planned, in SI; null where nothing is stated. */
export function readPour(document: RowReader): Pour | null {
  const pour = document.object('pour', POUR_KEYS);
  if (!pour) return null;
  const slump = pour.has('slump') ? pour.length('slump', { unitNeeded: true, span: PLAUSIBLE.slump }) : undefined;
  const stone = pour.has('stone') ? pour.length('stone', { unitNeeded: true, span: PLAUSIBLE.stone }) : undefined;
  return stated<Pour>({
    riseMPerH: pour.quantity('rise', 'rise', PLAUSIBLE.rise),
    concreteC: pour.quantity('concrete', 'temperature', PLAUSIBLE.concrete),
    unitWeightKgPerM3: pour.quantity('unitWeight', 'density', PLAUSIBLE.unitWeight),
    cement: readCement(pour),
    retarder: pour.has('retarder') ? pour.flag('retarder', false) : undefined,
    slumpMm: slump === undefined ? undefined : toMm(slump),
    airC: pour.quantity('air', 'temperature', PLAUSIBLE.air),
    humidity: pour.quantity('humidity', 'fraction', PLAUSIBLE.humidity),
    windMps: pour.quantity('wind', 'speed', PLAUSIBLE.windAtPour),
    pumpM3PerH: pour.quantity('pump', 'volume rate', PLAUSIBLE.pump),
    truckM3: pour.quantity('truck', 'volume', PLAUSIBLE.truck),
    stoneMm: stone === undefined ? undefined : toMm(stone),
    dischargeH: pour.quantity('discharge', 'time', PLAUSIBLE.discharge),
  });
}

/** A cement as written, of a name that the table of cements knows. */
function readCement(pour: RowReader): string | undefined {
  const cement = pour.has('cement') ? pour.text('cement', MAX_MARK) : undefined;
  return cement === undefined || cementGroup(cement) !== null ? cement : pour.fail('cement', `one of: ${CEMENT_NAMES.join(', ')}`);
}

/** Only what is stated; null where that is nothing. */
function stated<T extends object>(values: T): T | null {
  const entries = Object.entries(values).filter(([, value]) => value !== undefined);
  return entries.length === 0 ? null : (Object.fromEntries(entries) as T);
}
