import { meant } from '../quantity/rounding.js';
import { DEFAULT_CODE, type BuildingCode, type Schedule } from '../schedule/schedule.js';
import { finding, type Finding } from '../evidence/finding.js';
import { inUnit } from '../quantity/quantity.js';
import type { Nm } from '../quantity/length.js';
import type { Soil } from './soil-field.js';
import type { WindSide } from './wall-bars-input.js';

/** What the tables are entered with, as the schedule states it; null where it does not. */
export interface BarsSite {
  readonly code: BuildingCode;
  readonly windMps: number | null;
  readonly windMph: number | null;
  readonly exposure: WindSide['exposure'] | null;
  readonly soil: Soil | null;
  readonly backfill: Nm | null;
  readonly seismic: string | null;
  readonly snowPsf: number | null;
  /** What was taken where nothing is stated. */
  readonly defaults: readonly string[];
}

/** Letter of a seismic design category as people write it: `B`, `D1`, `SDC C`; null where none is written. */
function categoryOf(seismic: string | null | undefined): string | null {
  return /^(?:sdc|category|seismic design category)?\s*([a-f])[0-2]?$/i.exec(seismic?.trim() ?? '')?.[1]?.toUpperCase() ?? null;
}

/** What is stated and does not say what the tables ask; null where all of it does. */
export const unclearSite = ({ code, seismic }: BarsSite): string | null =>
  code === 'irc-2018' && seismic !== null && categoryOf(seismic) === null ? `seismic design category, A to F (written: ${seismic})` : null;

/** The site in the units of the tables: mph, psf, and lengths in whole nanometres. */
export function barsSite({ site }: Pick<Schedule, 'site'>): BarsSite {
  const { code, windMps, exposure, soilKnPerM3, backfill, seismic, snowKpa } = site ?? {};
  const irc = (code ?? DEFAULT_CODE) === 'irc-2018';
  return {
    code: code ?? DEFAULT_CODE,
    windMps: windMps ?? null,
    windMph: windMps === undefined ? null : meant(inUnit('speed', 'mph', windMps)),
    exposure: exposure ?? null,
    soil: soilKnPerM3 === undefined ? null : { kNPerM3: soilKnPerM3, className: null },
    backfill: backfill ?? null,
    seismic: seismic ?? null,
    snowPsf: snowKpa === undefined ? null : meant(inUnit('pressure', 'psf', snowKpa)),
    defaults: [
      ...(code === undefined ? [`code: ${DEFAULT_CODE}`] : []),
      ...(irc && categoryOf(seismic) === null ? ['seismic: a design category of A to C, where the tables hold'] : []),
    ],
  };
}

const SECTION = 'irc-2018 R608.2';
/** Greatest ground snow load of the section [psf]. irc-2018 R608.2, from memory. */
const SNOW_PSF = 70;
/** Storeys above grade under either code: irc-2018 R608.2 as quoted in public pages; obc-2024 9.15.1.1, read. */
const STOREYS = 2;

/**
 * What puts the whole storey beyond either code's tables, whatever its walls.
 *
 * @param site   as stated
 * @param above  how many storeys above grade stand one on the other here, this one among them
 */
export function beyondSite({ code, seismic, snowPsf }: BarsSite, above: number): readonly Finding[] {
  const irc = code === 'irc-2018';
  return [
    ...(irc && (categoryOf(seismic) ?? 'A') > 'C' ? [finding('site-beyond-method', { numbers: { seismic: seismic ?? '', limit: 'design category C' }, source: SECTION })] : []),
    ...(irc && snowPsf !== null && snowPsf > SNOW_PSF ? [finding('site-beyond-method', { numbers: { snowPsf, limitPsf: SNOW_PSF, status: 'limit from memory' }, source: SECTION })] : []),
    ...(above > STOREYS ? [finding('wall-beyond-tables', { numbers: { storeysAboveGrade: above, limit: '2 storeys' }, source: irc ? SECTION : 'obc-2024 9.15.1.1' })] : []),
  ];
}
