import { cubicYardsToCubicMetres, fahrenheitToCelsius, feetToMetres, poundsToKilonewtons, psfToKpa } from '../quantity/us-customary.js';
import { inSi } from '../quantity/quantity.js';
import { lengthWords } from './length-words.js';
import { NM_PER_INCH, NM_PER_MM } from '../quantity/length.js';
import { shownNumber } from './shown-number.js';
import type { LengthUnit } from '../quantity/length-unit.js';

/** What a number's key is called where taking the key apart does not read well. */
const NAMES: Readonly<Record<string, string>> = {
  core: 'core',
  otherCore: 'other core',
  missing: 'not stated',
  notAtHand: 'not at hand',
  inside: 'walls inside',
  pressurePsf: 'pressure',
  ratedPsf: 'rated',
  riseFtPerH: 'rate of rise',
  riseLimitFtPerH: 'fastest allowed',
  riseLimit: 'fastest allowed',
  riseLimitBy: 'limited by',
  limitIn: 'slump limit',
  limitFtPerH: 'limit of the rate',
  concreteF: 'concrete',
  limitF: 'limit of the method',
  truckTimeH: 'time to empty a truck',
  overIn: 'has to be over',
};

/** What decides a pressure or a rate of rise, in plain words. */
const DECIDERS: Readonly<Record<string, string>> = {
  'equation-a': 'the pressure equation for slow filling',
  'equation-a-range': 'the fastest rate the pressure equation for slow filling is for',
  'equation-b': 'the pressure equation for fast filling or high walls',
  'highest-rate': 'the fastest rate the pressure equations are for',
  minimum: 'the least pressure a form is designed for',
  'liquid-head': 'the full liquid head of the concrete',
  'lift-height': 'the lift height',
  slump: 'the slump of the concrete',
};
const TEXT_WRITERS: Readonly<Record<string, (value: string) => string>> = { riseLimitBy: (value) => DECIDERS[value] ?? value };

const nearest = (value: number, step: number): string => shownNumber(Number((Math.round(value / step) * step).toFixed(6)));
const MM_PER_INCH = NM_PER_INCH / NM_PER_MM;
/** In a pound per square foot. */
const KG_PER_M2 = inSi('evaporation rate', 'lb/ft2/h', 1);
const isMetric = (units: LengthUnit): boolean => units === 'mm' || units === 'm';
const both = (us: string, si: string, units: LengthUnit): string => (isMetric(units) ? `${si} (${us})` : `${us} (${si})`);

/** How a number is written, by the unit its key ends in; the first that fits counts. */
const WRITERS: readonly { readonly suffix: string; readonly write: (value: number, units: LengthUnit) => string }[] = [
  { suffix: 'Yd3PerH', write: (v, units) => both(`${nearest(v, 0.1)} yd³/h`, `${nearest(cubicYardsToCubicMetres(v), 0.1)} m³/h`, units) },
  { suffix: 'FtPerH', write: (v, units) => both(`${nearest(v, 0.01)} ft/h`, `${nearest(feetToMetres(v), 0.01)} m/h`, units) },
  { suffix: 'LbPerFt2H', write: (v, units) => both(`${nearest(v, 0.001)} lb/ft2/h`, `${nearest(v * KG_PER_M2, 0.01)} kg/m2/h`, units) },
  { suffix: 'H', write: (v) => `${nearest(v, 0.01)} h` },
  { suffix: 'PsfPerFt', write: (v) => `${nearest(v, 0.1)} psf/ft` },
  { suffix: 'Psf', write: (v, units) => both(`${nearest(v, 1)} psf`, `${nearest(psfToKpa(v), 0.1)} kPa`, units) },
  { suffix: 'Deg', write: (v) => `${v.toFixed(1)}°` },
  { suffix: 'Mm', write: (v, units) => lengthWords(v, units) },
  { suffix: 'Lb', write: (v, units) => both(`${nearest(v, 1)} lb`, `${nearest(poundsToKilonewtons(v), 0.01)} kN`, units) },
  { suffix: 'In', write: (v, units) => both(`${nearest(v, 0.01)} in`, `${nearest(v * MM_PER_INCH, 1)} mm`, units) },
  { suffix: 'F', write: (v, units) => both(`${nearest(v, 0.1)} °F`, `${nearest(fahrenheitToCelsius(v), 0.1)} °C`, units) },
  { suffix: 'Kpa', write: (v) => `${nearest(v, 0.1)} kPa` },
  { suffix: 'KnPerM3', write: (v) => `${nearest(v, 0.01)} kN/m³` },
  { suffix: 'Mps', write: (v) => `${nearest(v, 0.1)} m/s` },
  { suffix: 'Mph', write: (v) => `${nearest(v, 0.1)} mph` },
  { suffix: 'Psi', write: (v) => `${nearest(v, 1)} psi` },
  { suffix: 'Ft', write: (v, units) => both(`${nearest(v, 0.01)} ft`, `${nearest(feetToMetres(v), 0.01)} m`, units) },
  { suffix: 'M', write: (v) => `${nearest(v, 0.01)} m` },
];

const spaced = (key: string): string => key.replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase();

/**
 * One of a finding's numbers in words: `pressure 825 psf (39.5 kPa)`, `turn 112.4°`, `core 6`.
 *
 * @param key   name of the number, ending in its unit
 * @param value the number, or a name as text
 * @param units units of the schedule
 */
export function numberWords(key: string, value: number | string, units: LengthUnit): string {
  const writer = typeof value === 'number' ? WRITERS.find(({ suffix }) => key.endsWith(suffix) && key !== suffix) : undefined;
  const name = NAMES[key] ?? spaced(writer ? key.slice(0, -writer.suffix.length) : key);
  if (typeof value === 'string') return `${name} ${TEXT_WRITERS[key]?.(value) ?? value}`;
  return `${name} ${writer ? writer.write(value, units) : shownNumber(value)}`;
}
