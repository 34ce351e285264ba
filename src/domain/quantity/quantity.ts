import { failure, success, type Result } from '../evidence/result.js';
import type { QuantityFault } from './quantity-fault.js';
import { MAX_QUANTITY_TEXT, plainText } from './text.js';
import { dimensionOfUnit, unitNamed, UNITS, type Dimension, type Unit } from './unit.js';

export interface QuantityReadingOptions {
  /** Unit of a bare number (a column header's); without it a bare number is refused, except for a fraction. */
  readonly unit?: string | null;
}

const ABSOLUTE_ZERO_C = -273.15;
const EXAMPLES: Readonly<Record<Dimension, string>> = {
  rise: 'a rate of rise such as 3 ft/h or 1.2 m/h',
  temperature: 'a temperature such as 70 F or 21 C',
  density: 'a unit weight such as 150 pcf, 2400 kg/m3 or 23.5 kN/m3',
  pressure: 'a pressure such as 600 psf, 30 kPa or 8 psi',
  'fluid weight': 'an equivalent fluid weight such as 45 psf/ft, 45 pcf or 7.1 kN/m3',
  speed: 'a speed such as 115 mph, 51 m/s or 185 km/h',
  'volume rate': 'a volume per hour such as 40 yd3/h or 30 m3/h',
  volume: 'a volume such as 10 yd3 or 7.5 m3',
  area: 'an area such as 100 ft2 or 9.3 m2',
  force: 'a force such as 400 lb or 1.8 kN',
  'force per length': 'a force per length such as 300 lb/ft or 4.4 kN/m',
  moment: 'a moment such as 500 ft-lb or 0.7 kN-m',
  'moment per length': 'a moment per length of wall such as 1500 ft-lb/ft or 6.7 kN-m/m',
  mass: 'a mass such as 50 kg or 110 lb',
  'evaporation rate': 'a rate of evaporation such as 0.2 lb/ft2/h or 1 kg/m2/h',
  time: 'a time such as 1.5 h, 90 min or 8 weeks',
  angle: 'an angle in degrees such as 67.5',
  fraction: 'a fraction such as 0.5 or 50 %, from 0 to 1',
};

/**
 * A quantity with its unit as people write it, in the SI unit of its dimension (the first of `UNITS`).
 *
 * A bare number is read only where the caller gives its unit, or for a fraction (`0.5`) and an angle (`67.5`). The wrong dimension is
 * refused by name ("8 psi" for a rate of rise). Values are finite; only temperatures and angles may be negative; fractions lie in 0..1.
 *
 * @example readQuantity('150 pcf', 'density') is 2402.77 kg/m³
 */
export function readQuantity(
  raw: string | number,
  dimension: Dimension,
  options: QuantityReadingOptions = {},
): Result<number, QuantityFault> {
  const read = String(raw);
  const fault = (fix: string): Result<number, QuantityFault> => failure({ read, fix });
  if (read.length > MAX_QUANTITY_TEXT) return fault(EXAMPLES[dimension]);
  const text = typeof raw === 'number' ? read : plainText(raw);
  if (typeof raw === 'number' && !Number.isFinite(raw)) return fault(EXAMPLES[dimension]);
  if (/\d,\d/.test(text)) return fault(`no comma, which means thousands to some and decimals to others: ${EXAMPLES[dimension]}`);
  const match = /^(-?(?:\d{1,15}(?:\.\d{1,20})?|\.\d{1,20})(?:e[+-]?\d{1,3})?) ?(.*)$/.exec(text);
  if (!match || (typeof raw === 'string' && /e/.test(match[1] ?? ''))) return fault(EXAMPLES[dimension]);
  const written =
    match[2] === ''
      ? (options.unit ?? (dimension === 'fraction' || dimension === 'angle' ? UNITS[dimension][0].symbol : ''))
      : (match[2] ?? '');
  if (written === '') return fault(`a number with its unit: ${EXAMPLES[dimension]}`);
  const unit = unitNamed(dimension, written);
  if (!unit) return fault(wrongUnit(written, dimension));
  const value = toSi(Number(match[1]), unit);
  return inBounds(value, dimension) ? success(value) : fault(EXAMPLES[dimension]);
}

/** A value held in SI, in another unit of its dimension (`inUnit('pressure', 'psf', 28.73)`); an unknown symbol is a defect. */
export function inUnit(dimension: Dimension, symbol: string, si: number): number {
  const unit = unitNamed(dimension, symbol);
  if (!unit) throw new Error(`${symbol} is not a unit of ${dimension}`);
  return (si - (unit.offset ?? 0)) / unit.factor;
}

/** The other way: so many of a unit, in the SI unit of its dimension; an unknown symbol is a defect. */
export function inSi(dimension: Dimension, symbol: string, value: number): number {
  const unit = unitNamed(dimension, symbol);
  if (!unit) throw new Error(`${symbol} is not a unit of ${dimension}`);
  return toSi(value, unit);
}

const toSi = (value: number, unit: Unit): number => value * unit.factor + (unit.offset ?? 0);

function inBounds(value: number, dimension: Dimension): boolean {
  if (!Number.isFinite(value)) return false;
  if (dimension === 'temperature') return value >= ABSOLUTE_ZERO_C;
  if (dimension === 'fraction') return value >= 0 && value <= 1;
  return dimension === 'angle' || value >= 0;
}

function wrongUnit(written: string, dimension: Dimension): string {
  const other = dimensionOfUnit(written);
  if (other === undefined || other === dimension) return EXAMPLES[dimension];
  return `${written} is a unit of ${other}; what is expected is ${EXAMPLES[dimension]}`;
}
