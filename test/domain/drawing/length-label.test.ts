import { describe, expect, it } from '@jest/globals';
import { lengthLabel } from '../../../src/domain/drawing/index.js';
import { inches, millimetres } from '../../../src/domain/quantity/length.js';

describe('lengthLabel', () => {
  it.each([
    { inch: 0, label: '0"' },
    { inch: 0.5, label: '1/2"' },
    { inch: 11.25, label: '11 1/4"' },
    { inch: 12, label: `1'-0"` },
    { inch: 150.5, label: `12'-6 1/2"` },
    { inch: 144.015625, label: `12'-0 1/64"` },
    { inch: -3.375, label: '-3 3/8"' },
  ])('writes $inch in as $label', ({ inch, label }) => {
    expect(lengthLabel(inches(inch), 'in')).toBe(label);
    expect(lengthLabel(inches(inch), 'ft')).toBe(label);
  });

  it.each([
    { mm: 3810, label: '3810' },
    { mm: 0.1, label: '0.1' },
    { mm: -12.5, label: '-12.5' },
  ])('writes $mm mm as $label', ({ mm, label }) => {
    expect(lengthLabel(millimetres(mm), 'mm')).toBe(label);
    expect(lengthLabel(millimetres(mm), 'm')).toBe(label);
  });

  it('marks what it had to round', () => {
    // 36 in × √2 = 50.911688 in = 4'-2.911688": the nearest sixteenth is 15/16 (.9375)
    expect(lengthLabel(Math.round(36 * Math.SQRT2 * 25_400_000), 'in')).toBe(`~4'-2 15/16"`);
    expect(lengthLabel(1_234_567_891, 'mm')).toBe('~1234.6');
    // 11.99 in to the nearest sixteenth is a whole foot
    expect(lengthLabel(inches(11.99), 'in')).toBe(`~1'-0"`);
  });
});
