import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { printFeet, printFeetInches, printInches, printLength, printMetres, printMillimetres } from '../../../src/domain/quantity/print-length.js';

describe('printed lengths', () => {
  it.each([
    [150.5, `12'-6 1/2"`],
    [108, `9'-0"`],
    [0, `0'-0"`],
    [11.984375, `0'-11 63/64"`],
    [0.75, `0'-0 3/4"`],
    [132.109375, `11'-0 7/64"`],
    [132, `11'-0"`],
    [-12.5, `-1'-0 1/2"`],
    [-48, `-4'-0"`],
  ])('%d in is %s', (value, text) => expect(printFeetInches(inches(value))).toBe(text));

  it('shows what is not a whole number of 64ths in decimals', () => {
    expect(printFeetInches(165_000_000)).toBe(`0'-6.49606299"`);
    expect(printFeetInches(304_799_999)).toBe(`0'-11.99999996"`);
    expect(printInches(1)).toBe('0.00000004"');
  });

  it('prints metric exactly and feet to 1e-9', () => {
    expect(printMillimetres(3_810_000_001)).toBe('3810.000001 mm');
    expect(printMetres(-3_810_000_000)).toBe('-3.81 m');
    expect(printFeet(inches(150))).toBe('12.5 ft');
    expect(printInches(inches(150.5))).toBe('150 1/2"');
  });

  it('prints a computed position to the nearest nanometre', () => {
    expect(printMillimetres(1_499_999.6)).toBe('1.5 mm');
    expect(printFeetInches(-0.2)).toBe(`0'-0"`);
  });

  it('follows the unit of the document', () => {
    expect(printLength(inches(150), 'in')).toBe(`12'-6"`);
    expect(printLength(inches(150), 'ft')).toBe(`12'-6"`);
    expect(printLength(inches(150), 'mm')).toBe('3810 mm');
    expect(printLength(inches(150), 'm')).toBe('3.81 m');
  });
});
