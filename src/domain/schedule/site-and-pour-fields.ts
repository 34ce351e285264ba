import type { Nm } from '../quantity/length.js';
import type { Pour, Site, Storey } from './schedule.js';

type Fields = Record<string, unknown>;

const withUnit = (value: number | undefined, unit: string): string | undefined => (value === undefined ? undefined : `${value} ${unit}`);

/** The site as it could be sent again, every figure with its unit; undefined where nothing was stated. */
export const siteFields = (site: Site, shown: (length: Nm) => unknown): Fields => ({
  wind: withUnit(site.windMps, 'm/s'),
  exposure: site.exposure,
  soil: withUnit(site.soilKnPerM3, 'kN/m3'),
  backfill: site.backfill === undefined ? undefined : shown(site.backfill),
  seismic: site.seismic,
  snow: withUnit(site.snowKpa, 'kPa'),
  duration: withUnit(site.durationH, 'h'),
  code: site.code,
});

/** The pour likewise. */
export const pourFields = (pour: Pour): Fields => ({
  rise: withUnit(pour.riseMPerH, 'm/h'),
  concrete: withUnit(pour.concreteC, 'C'),
  unitWeight: withUnit(pour.unitWeightKgPerM3, 'kg/m3'),
  cement: pour.cement,
  retarder: pour.retarder,
  slump: withUnit(pour.slumpMm, 'mm'),
  air: withUnit(pour.airC, 'C'),
  humidity: pour.humidity,
  wind: withUnit(pour.windMps, 'm/s'),
  pump: withUnit(pour.pumpM3PerH, 'm3/h'),
  truck: withUnit(pour.truckM3, 'm3'),
  stone: withUnit(pour.stoneMm, 'mm'),
  discharge: withUnit(pour.dischargeH, 'h'),
});

/** What stands on a storey's walls, likewise. */
export const loadFields = (storey: Storey): Fields => ({
  dead: withUnit(storey.deadKnPerM, 'kN/m'),
  live: withUnit(storey.liveKnPerM, 'kN/m'),
  snow: withUnit(storey.snowKnPerM, 'kN/m'),
});
