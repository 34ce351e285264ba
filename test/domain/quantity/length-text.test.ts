import { describe, expect, it } from '@jest/globals';
import { inches, millimetres, NM_PER_FOOT, NM_PER_INCH } from '../../../src/domain/quantity/length.js';
import { readLength, readLengthNumber } from '../../../src/domain/quantity/length-text.js';
import type { WrittenLengthUnit } from '../../../src/domain/quantity/length-unit.js';

const read = (text: string, unit: WrittenLengthUnit | null = 'in', signed = false): number => {
  const result = readLength(text, { unit, signed });
  if (!result.ok) throw new Error(`${text}: ${result.error.fix}`);
  return result.value;
};
const fix = (text: string, unit: WrittenLengthUnit | null = 'in', signed = false): string => {
  const result = readLength(text, { unit, signed });
  if (result.ok) throw new Error(`${text} was read as ${result.value}`);
  expect(result.error.read).toBe(text);
  return result.error.fix;
};

describe('lengths that are read', () => {
  it.each([
    [`12'-6 1/2"`, 12 * NM_PER_FOOT + inches(6.5)],
    [`12' 6"`, 12 * NM_PER_FOOT + inches(6)],
    [`12'6"`, 12 * NM_PER_FOOT + inches(6)],
    [`12' - 6"`, 12 * NM_PER_FOOT + inches(6)],
    ['12ft 6.5in', 12 * NM_PER_FOOT + inches(6.5)],
    ['12 FT. 6 IN.', 12 * NM_PER_FOOT + inches(6)],
    ['12 feet 6 inches', 12 * NM_PER_FOOT + inches(6)],
    [`12'-6-1/2"`, 12 * NM_PER_FOOT + inches(6.5)],
    [`12'-6`, 12 * NM_PER_FOOT + inches(6)],
    [`12' 6`, 12 * NM_PER_FOOT + inches(6)],
    [`12'-6 1/2`, 12 * NM_PER_FOOT + inches(6.5)],
    [`12' - 6-1/2`, 12 * NM_PER_FOOT + inches(6.5)],
    [`12′–6½`, 12 * NM_PER_FOOT + inches(6.5)],
    [`12'-0`, 12 * NM_PER_FOOT],
    [`12'-11.75`, 12 * NM_PER_FOOT + inches(11.75)],
    ['12 ft-6', 12 * NM_PER_FOOT + inches(6)],
    [`12'-0"`, 12 * NM_PER_FOOT],
    [`12'-1/2"`, 12 * NM_PER_FOOT + inches(0.5)],
    [`12′-6½″`, 12 * NM_PER_FOOT + inches(6.5)],
    [`12’ 6⅝”`, 12 * NM_PER_FOOT + inches(6.625)],
    [`9'–0"`, 9 * NM_PER_FOOT],
    [`150.5"`, inches(150.5)],
    ['6½"', inches(6.5)],
    ['¾ in', inches(0.75)],
    ['1/64"', 396_875],
    [`12.5'`, inches(150)],
    [`12 1/2'`, inches(150)],
    ['.5"', inches(0.5)],
    ['3.81 m', 3_810_000_000],
    ['3810mm', 3_810_000_000],
    ['381 cm', 3_810_000_000],
    ['3.81 metres', 3_810_000_000],
    ['0.000001 mm', 1],
    ['0.000000001 m', 1],
    ['0', 0],
  ])('%s', (text, nm) => expect(read(text)).toBe(nm));

  it('reads a bare number in the unit it is given', () => {
    expect(read('480', 'in')).toBe(480 * NM_PER_INCH);
    expect(read('40', 'ft')).toBe(480 * NM_PER_INCH);
    expect(read('12192', 'mm')).toBe(480 * NM_PER_INCH);
    expect(read('12.192', 'm')).toBe(480 * NM_PER_INCH);
    expect(read('6 1/2', 'in')).toBe(inches(6.5));
  });

  it('lets a unit in the text win over the unit of bare numbers', () => expect(read(`40'`, 'mm')).toBe(480 * NM_PER_INCH));

  it('reads a sign where coordinates allow one, before the whole length', () => {
    expect(read(`-12'-6"`, 'in', true)).toBe(-12 * NM_PER_FOOT - inches(6));
    expect(read('\u221248', 'in', true)).toBe(-48 * NM_PER_INCH);
    expect(Object.is(read('-0', 'in', true), 0)).toBe(true);
  });

  it('rounds what is finer than a nanometre to the nearest one, a half away from zero', () => {
    expect(read('1/3"')).toBe(8_466_667);
    expect(read('0.0000005 mm')).toBe(1);
    expect(read('0.0000004 mm')).toBe(0);
    expect(read('-0.0000005 mm', 'in', true)).toBe(-1);
  });
});

describe('lengths that are refused, with what would do', () => {
  it.each([
    [`12'-14"`, `13'-2"`],
    [`12.5' 6"`, `13'-0"`],
    ['1e309', 'written out in digits'],
    ['1e3', 'written out in digits'],
    ['NaN', 'a length such as'],
    ['Infinity', 'a length such as'],
    ['', 'a length such as'],
    ['   ', 'a length such as'],
    [`6''`, 'two apostrophes'],
    ['12-6', `12'-6" for feet and inches`],
    ['12 6', `12'-6" for feet and inches`],
    ['12 - 6 1/2', `12'-6 1/2" for feet and inches`],
    ['12-13', 'a length such as'],
    ['3,810 mm', '3810 mm or 3.810 mm'],
    ['12,5', '125 or 12.5'],
    [`12' 30 mm`, 'one system of units'],
    ['3 m 6 in', 'one system of units'],
    [`12'-14`, `13'-2"`],
    [`12' 12`, `13'-0"`],
    [`12'-12 1/2`, `13'-0 1/2"`],
    [`12.5'-6`, `13'-0"`],
    [`12'6`, 'the inches with their mark'],
    [`12' 1/2`, 'the inches with their mark'],
    [`12'-1/2`, 'the inches with their mark'],
    [`12'-6-`, 'the inches with their mark'],
    [`12'-6 5/4`, 'a fraction below one'],
    [`12'--6`, 'the inches with their mark'],
    ['8 psi', 'psi is a unit of pressure'],
    ['3 ft/h', 'unit of rise'],
    ['70 F', 'unit of temperature'],
    ['121/2"', 'a fraction below one'],
    ['6 5/4"', 'a fraction below one'],
    ['1/0"', 'a fraction below one'],
    ['1/128"', 'no finer than 1/64'],
    ['-48', 'zero or more'],
    ['6.5 1/2"', 'a length such as'],
    ['--6"', 'a length such as'],
    ['twelve', 'a length such as'],
    ['2000 m 0', 'a length such as'],
    ['1000001 m', 'below 1,000 km'],
    ['9'.repeat(61), 'a length such as'],
    ['\u0000', 'a length such as'],
  ])('%s', (text, expected) => expect(fix(text)).toContain(expected));

  it('refuses a fraction in a metric document and a bare number without any unit', () => {
    expect(fix('6 1/2', 'mm')).toContain('fractions are read in inches and feet only');
    expect(fix('48', null)).toContain('a number with its unit');
  });
});

describe('numbers of a document', () => {
  it('are the shortest decimal of the double, exactly', () => {
    expect(readLengthNumber(0.1, { unit: 'mm' })).toEqual({ ok: true, value: 100_000 });
    expect(readLengthNumber(1e-6, { unit: 'mm' })).toEqual({ ok: true, value: 1 });
    expect(readLengthNumber(1.5e-7, { unit: 'm' })).toEqual({ ok: true, value: 150 });
    expect(readLengthNumber(142.0625, { unit: 'in' })).toEqual({ ok: true, value: 142 * NM_PER_INCH + 4 * 396_875 });
    expect(readLengthNumber(-0.0625, { unit: 'in', signed: true })).toEqual({ ok: true, value: -4 * 396_875 });
    expect(readLengthNumber(3810, { unit: 'mm' })).toEqual({ ok: true, value: millimetres(3810) });
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e309, 1e308, -1])('refuses %s', (value) => expect(readLengthNumber(value, { unit: 'in' }).ok).toBe(false));
});
