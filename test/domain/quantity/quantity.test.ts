import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { inUnit, readQuantity } from '../../../src/domain/quantity/quantity.js';
import { readTurn } from '../../../src/domain/quantity/turn-text.js';
import { UNITS, type Dimension, type Unit } from '../../../src/domain/quantity/unit.js';

const read = (text: string | number, dimension: Dimension): number => {
  const result = readQuantity(text, dimension);
  if (!result.ok) throw new Error(`${text}: ${result.error.fix}`);
  return result.value;
};
const fix = (text: string | number, dimension: Dimension): string => {
  const result = readQuantity(text, dimension);
  if (result.ok) throw new Error(`${text} was read as ${result.value}`);
  return result.error.fix;
};

describe('units, against NIST SP 811 (2008) Appendix B.8, seven printed digits (from memory)', () => {
  it.each<[string, Dimension, string]>([
    ['1 pcf', 'density', '16.01846'],
    ['1 psf', 'pressure', '0.04788026'],
    ['1 psi', 'pressure', '6.894757'],
    ['1 mph', 'speed', '0.4470400'],
    ['1 km/h', 'speed', '0.2777778'],
    ['1 yd3', 'volume', '0.7645549'],
    ['1 ft3', 'volume', '0.02831685'],
    ['1 lbf', 'force', '0.004448222'],
    ['1 lb/ft', 'force per length', '0.01459390'],
    ['1 ft-lb', 'moment', '0.001355818'],
    ['1 in-lb', 'moment', '0.0001129848'],
    ['1 kip-ft', 'moment', '1.355818'],
    ['1 N-m', 'moment', '0.001000000'],
    ['1 ft-lb/ft', 'moment per length', '0.004448222'],
    ['1 ksi', 'pressure', '6894.757'],
    ['1 MPa', 'pressure', '1000.000'],
    ['1 plf', 'force per length', '0.01459390'],
    ['1 ft2', 'area', '0.09290304'],
    ['1 lb', 'mass', '0.4535924'],
    ['1 lb/ft2/h', 'evaporation rate', '4.882428'],
  ])('%s of %s is %s', (text, dimension, printed) => expect(read(text, dimension).toPrecision(7)).toBe(printed));

  it('reads temperatures on both scales', () => {
    expect(read('212 F', 'temperature')).toBeCloseTo(100, 10);
    expect(read('32 °F', 'temperature')).toBeCloseTo(0, 10);
    expect(read('-40 deg F', 'temperature')).toBeCloseTo(-40, 10);
    expect(read('21°C', 'temperature')).toBe(21);
  });

  it('turns a unit weight into a density by standard gravity, and a fluid weight of so many pcf into as many psf/ft', () => {
    expect(read('9.80665 kN/m3', 'density')).toBeCloseTo(1000, 9);
    expect(read('45 pcf', 'fluid weight')).toBe(read('45 psf/ft', 'fluid weight'));
    expect(read('45 psf/ft', 'fluid weight')).toBeCloseTo((45 * 16.01846337396 * 9.80665) / 1000, 9);
  });
});

describe('quantities', () => {
  it.each<[string | number, Dimension, number]>([
    ['3 ft/h', 'rise', 0.9144],
    ['3 ft / hr', 'rise', 0.9144],
    ['1.2 m/h', 'rise', 1.2],
    ['0.5', 'fraction', 0.5],
    [0.5, 'fraction', 0.5],
    ['50 %', 'fraction', 0.5],
    ['50%', 'fraction', 0.5],
    ['50 percent', 'fraction', 0.5],
    ['600 kN/m²', 'pressure', 600],
    ['10 m³', 'volume', 10],
    ['40 cu yd/h', 'volume rate', 40 * 0.764554857984],
    ['90 min', 'time', 1.5],
    ['8 weeks', 'time', 1344],
    ['2 days', 'time', 48],
    ['1 year', 'time', 365 * 24],
    ['12 months', 'time', 365 * 24],
    ['2 tons', 'mass', 4000 * 0.45359237],
  ])('%s as %s', (text, dimension, si) => expect(read(text, dimension)).toBeCloseTo(si, 12));

  it.each<[string | number, Dimension, string]>([
    ['8 psi', 'rise', 'psi is a unit of pressure'],
    ['8 ft', 'pressure', 'ft is a unit of length'],
    ['70', 'temperature', 'a number with its unit'],
    [70, 'temperature', 'a number with its unit'],
    ['1e309 psf', 'pressure', 'a pressure such as'],
    ['NaN psf', 'pressure', 'a pressure such as'],
    [Number.NaN, 'fraction', 'a fraction such as'],
    [Number.POSITIVE_INFINITY, 'fraction', 'a fraction such as'],
    ['', 'pressure', 'a pressure such as'],
    ['50', 'fraction', 'a fraction such as'],
    ['-3 ft/h', 'rise', 'a rate of rise such as'],
    ['-300 C', 'temperature', 'a temperature such as'],
    ['1,200 psf', 'pressure', 'no comma'],
    ['3 furlongs/h', 'rise', 'a rate of rise such as'],
    ['x'.repeat(1000), 'rise', 'a rate of rise such as'],
  ])('refuses %s as %s', (text, dimension, expected) => expect(fix(text, dimension)).toContain(expected));

  it('takes the unit of a column header for a bare number', () => {
    expect(readQuantity('3', 'rise', { unit: 'ft/h' })).toEqual({ ok: true, value: 3 * 0.3048 });
    expect(readQuantity('1 m/h', 'rise', { unit: 'ft/h' })).toEqual({ ok: true, value: 1 });
  });

  it('comes back from every unit it is printed in', () => {
    const all = (Object.keys(UNITS) as Dimension[]).flatMap((dimension) => (UNITS[dimension] as readonly Unit[]).map((unit) => [dimension, unit] as const));
    fc.assert(
      fc.property(fc.constantFrom(...all), fc.double({ min: 0, max: 1, noNaN: true }), ([dimension, unit], written) => {
        const si = read(`${written.toFixed(12)} ${unit.symbol}`, dimension);
        expect(Number.isFinite(si)).toBe(true);
        expect(inUnit(dimension, unit.symbol, si)).toBeCloseTo(Number(written.toFixed(12)), 11);
      }),
    );
  });

  it('no word is a unit of one dimension twice', () => {
    for (const units of Object.values(UNITS) as (readonly Unit[])[]) {
      const names = units.flatMap((unit) => [unit.symbol.toLowerCase(), ...unit.names]);
      expect(new Set(names).size).toBe(names.length);
    }
  });
});

describe('turns', () => {
  it.each([
    ['90', 90],
    [-45, -45],
    ['67.5°', 67.5],
    ['22.5 deg', 22.5],
    ['-0', 0],
  ])('%s', (text, turn) => expect(readTurn(text)).toEqual({ ok: true, value: turn }));

  it.each(['180', '-180', '1e9', 'NaN', '', '90 ft'])('refuses %s', (text) => expect(readTurn(text).ok).toBe(false));
});
