import { lengthUnitNamed } from './length-unit.js';

/** One unit of a dimension: SI value = written value × factor + offset. */
export interface Unit {
  readonly symbol: string;
  /** Every way of writing it, in plain lower-case text without spaces (`lb/ft3`, `degf`). */
  readonly names: readonly string[];
  readonly factor: number;
  readonly offset?: number;
}

/** Kilograms in a pound and metres in a foot: exact, international yard and pound agreement, 1959. */
const LB = 0.45359237;
const FT = 0.3048;
/** Standard gravity, exact: 3rd General Conference on Weights and Measures, 1901 [m/s²]. */
const G = 9.80665;
/** Newtons in a pound of force: exact product of the two above. */
const LBF = LB * G;
const YD3 = 27 * FT ** 3;

/**
 * The units read and printed, by what they measure; the first of a dimension is its SI unit (factor 1), in which every value is held.
 *
 * `density` is what the trade calls unit weight: 150 pcf is 2,402.8 kg/m³, and kN/m³ is turned into it by standard gravity.
 * `fluid weight` is a pressure per depth: 45 psf/ft = 45 pcf = 7.069 kN/m³. A year is 365 days, a month its twelfth; a ton is 2000 lb.
 */
export const UNITS = {
  rise: [
    unit('m/h', 1, 'm/hr', 'm/hour'),
    unit('ft/h', FT, 'ft/hr', 'ft/hour', 'fph', "'/h", "'/hr"),
    unit('mm/h', 0.001, 'mm/hr', 'mm/hour'),
    unit('in/h', FT / 12, 'in/hr', 'in/hour'),
  ],
  temperature: [unit('°C', 1, 'c', 'degc', 'celsius'), { ...unit('°F', 5 / 9, 'f', 'degf', 'fahrenheit'), offset: -160 / 9 }],
  density: [unit('kg/m3', 1), unit('pcf', LB / FT ** 3, 'lb/ft3', 'lbs/ft3', 'lbf/ft3', 'lb/cuft'), unit('kN/m3', 1000 / G)],
  pressure: [
    unit('kPa', 1, 'kn/m2'),
    unit('Pa', 0.001, 'n/m2'),
    unit('MPa', 1000, 'n/mm2'),
    unit('GPa', 1_000_000, 'kn/mm2'),
    unit('psf', LBF / FT ** 2 / 1000, 'lb/ft2', 'lbs/ft2', 'lbf/ft2'),
    unit('psi', (LBF * 144) / FT ** 2 / 1000, 'lb/in2', 'lbs/in2', 'lbf/in2'),
    unit('ksf', LBF / FT ** 2, 'kip/ft2'),
    unit('ksi', (LBF * 144) / FT ** 2, 'kip/in2'),
  ],
  'fluid weight': [
    unit('kN/m3', 1, 'kpa/m', 'kn/m2/m'),
    unit('psf/ft', LBF / FT ** 3 / 1000, 'lb/ft2/ft', 'psfperft'),
    unit('pcf', LBF / FT ** 3 / 1000, 'lb/ft3', 'lbs/ft3', 'lbf/ft3'),
  ],
  speed: [
    unit('m/s', 1, 'm/sec'),
    unit('km/h', 1 / 3.6, 'kph', 'km/hr', 'kmh'),
    unit('mph', (5280 * FT) / 3600, 'mi/h', 'mile/h', 'miles/h'),
    unit('ft/s', FT, 'ft/sec', 'fps'),
  ],
  'volume rate': [unit('m3/h', 1, 'm3/hr', 'm3/hour'), unit('yd3/h', YD3, 'yd3/hr', 'yd3/hour', 'cuyd/h', 'cy/h', 'cy/hr')],
  volume: [
    unit('m3', 1),
    unit('yd3', YD3, 'cuyd', 'cy'),
    unit('ft3', FT ** 3, 'cuft', 'cf'),
    unit('L', 0.001, 'litre', 'litres', 'liter', 'liters'),
  ],
  area: [unit('m2', 1), unit('mm2', 1e-6), unit('ft2', FT ** 2, 'sqft', 'sf'), unit('in2', (FT / 12) ** 2, 'sqin')],
  force: [unit('kN', 1), unit('N', 0.001), unit('lb', LBF / 1000, 'lbs', 'lbf'), unit('kip', LBF, 'kips')],
  'force per length': [
    unit('kN/m', 1),
    unit('N/m', 0.001),
    unit('lb/ft', LBF / FT / 1000, 'lbs/ft', 'lbf/ft', 'plf'),
    unit('kip/ft', LBF / FT, 'klf'),
  ],
  moment: [
    unit('kN·m', 1, 'kn.m', 'knm', 'kn-m'),
    unit('ft·lb', (LBF * FT) / 1000, 'ft.lb', 'ft-lb', 'lb-ft', 'ftlb'),
    unit('ft·kip', LBF * FT, 'ft.kip', 'ft-kip', 'kip-ft', 'kip.ft', 'k-ft'),
    unit('in·lb', (LBF * FT) / 12000, 'in.lb', 'in-lb', 'lb-in', 'lb.in'),
    unit('N·m', 0.001, 'n.m', 'n-m'),
  ],
  'moment per length': [
    unit('kN·m/m', 1, 'kn.m/m', 'knm/m', 'kn-m/m'),
    unit('ft·lb/ft', LBF / 1000, 'ft.lb/ft', 'ft-lb/ft', 'lb-ft/ft'),
  ],
  mass: [unit('kg', 1), unit('lb', LB, 'lbs', 'lbm'), unit('g', 0.001), unit('t', 1000, 'tonne', 'tonnes'), unit('ton', 2000 * LB, 'tons')],
  'evaporation rate': [unit('kg/m2/h', 1, 'kg/m2/hr'), unit('lb/ft2/h', LB / FT ** 2, 'lb/ft2/hr')],
  time: [
    unit('h', 1, 'hr', 'hrs', 'hour', 'hours'),
    unit('min', 1 / 60, 'minute', 'minutes'),
    unit('d', 24, 'day', 'days'),
    unit('wk', 168, 'week', 'weeks'),
    unit('month', 730, 'months'),
    unit('yr', 8760, 'year', 'years'),
  ],
  angle: [unit('°', 1, 'deg', 'degree', 'degrees')],
  fraction: [unit('1', 1), unit('%', 0.01, 'percent', 'pct')],
} as const satisfies Record<string, readonly Unit[]>;

export type Dimension = keyof typeof UNITS;

/** `°F`, `deg F` and `lb / cu ft` as the names of the table: lower case, no spaces, `^` or degree sign before a letter. */
const unitName = (written: string): string =>
  written
    .toLowerCase()
    .replace(/[\s^]/g, '')
    .replace(/°(?=[cf])/, '')
    .replace(/(?<=[a-z0-9])per(?=[a-z])/g, '/')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/·/g, '.');

/** The unit of a dimension that a word stands for; undefined where it is none. */
export function unitNamed(dimension: Dimension, written: string): Unit | undefined {
  const name = unitName(written);
  const units: readonly Unit[] = UNITS[dimension];
  return units.find((candidate) => unitName(candidate.symbol) === name || candidate.names.includes(name));
}

/** What a written unit measures, `length` included; undefined for a word that is no unit. */
export function dimensionOfUnit(written: string): Dimension | 'length' | undefined {
  if (lengthUnitNamed(written.trim().toLowerCase())) return 'length';
  return (Object.keys(UNITS) as Dimension[]).find((dimension) => unitNamed(dimension, written) !== undefined);
}

function unit(symbol: string, factor: number, ...names: string[]): Unit {
  return { symbol, names, factor };
}
