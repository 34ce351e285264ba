import { NM_PER_UNIT } from './length-unit.js';
import { unitNamed, type Dimension } from './unit.js';

/**
 * The number that was meant by a converted one: twelve significant digits.
 *
 * 150 pcf held as kg/m³ and turned back is 150.00000000000003, and a printed limit must still count it as 150.
 */
const meant = (value: number): number => Number(value.toPrecision(12));

function toSi(dimension: Dimension, symbol: string): (value: number) => number {
  const { factor, offset = 0 } = unitOf(dimension, symbol);
  return (value) => meant(value * factor + offset);
}

function fromSi(dimension: Dimension, symbol: string): (si: number) => number {
  const { factor, offset = 0 } = unitOf(dimension, symbol);
  return (si) => meant((si - offset) / factor);
}

function unitOf(dimension: Dimension, symbol: string): { readonly factor: number; readonly offset?: number } {
  const unit = unitNamed(dimension, symbol);
  if (!unit) throw new Error(`${symbol} is not a unit of ${dimension}`);
  return unit;
}

/** Between the SI values that are held and the US customary ones in which the equations are printed. */
export const psfToKpa = toSi('pressure', 'psf');
export const kpaToPsf = fromSi('pressure', 'psf');
export const pcfToKgPerM3 = toSi('density', 'pcf');
export const kgPerM3ToPcf = fromSi('density', 'pcf');
export const feetPerHourToMetresPerHour = toSi('rise', 'ft/h');
export const metresPerHourToFeetPerHour = fromSi('rise', 'ft/h');
export const fahrenheitToCelsius = toSi('temperature', '°F');
export const celsiusToFahrenheit = fromSi('temperature', '°F');

const METRES_PER_FOOT = Number(NM_PER_UNIT.ft) / Number(NM_PER_UNIT.m);
const MM_PER_INCH = Number(NM_PER_UNIT.in) / Number(NM_PER_UNIT.mm);
export const feetToMetres = (ft: number): number => meant(ft * METRES_PER_FOOT);
export const millimetresToInches = (mm: number): number => meant(mm / MM_PER_INCH);
