import { meant } from './rounding.js';
import { NM_PER_UNIT } from './length-unit.js';
import { unitNamed, type Dimension } from './unit.js';

/** Held values keep fourteen significant digits. */
const held = (value: number): number => Number(value.toPrecision(14));

function toSi(dimension: Dimension, symbol: string): (value: number) => number {
  const { factor, offset = 0 } = unitOf(dimension, symbol);
  return (value) => held(value * factor + offset);
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
export const cubicYardsToCubicMetres = toSi('volume', 'yd3');
export const poundsToKilonewtons = toSi('force', 'lb');
export const pcfToKgPerM3 = toSi('density', 'pcf');
export const kgPerM3ToPcf = fromSi('density', 'pcf');
export const feetPerHourToMetresPerHour = toSi('rise', 'ft/h');
export const metresPerHourToFeetPerHour = fromSi('rise', 'ft/h');
export const fahrenheitToCelsius = toSi('temperature', '°F');
/** A scale with a zero of its own: nine decimals instead of twelve digits. */
export const celsiusToFahrenheit = (c: number): number => Number((c * 1.8 + 32).toFixed(9));

const METRES_PER_FOOT = Number(NM_PER_UNIT.ft) / Number(NM_PER_UNIT.m);
const MM_PER_INCH = Number(NM_PER_UNIT.in) / Number(NM_PER_UNIT.mm);
export const feetToMetres = (ft: number): number => held(ft * METRES_PER_FOOT);
export const millimetresToInches = (mm: number): number => meant(mm / MM_PER_INCH);
