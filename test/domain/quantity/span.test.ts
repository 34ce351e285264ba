import { describe, expect, it } from '@jest/globals';
import { inSi } from '../../../src/domain/quantity/quantity.js';
import { inSpan, type Span } from '../../../src/domain/quantity/span.js';

describe('spans', () => {
  it.each<{ value: number; span: Omit<Span, 'says'>; held: boolean }>([
    { value: 0, span: { above: 0, to: 10 }, held: false },
    { value: 1e-300, span: { above: 0, to: 10 }, held: true },
    { value: 0, span: { from: 0, to: 10 }, held: true },
    { value: -1e-300, span: { from: 0, to: 10 }, held: false },
    { value: 10, span: { from: 0, to: 10 }, held: true },
    { value: 10.000001, span: { from: 0, to: 10 }, held: false },
    { value: -1e300, span: { to: 10 }, held: true },
    { value: -40, span: { from: -40, to: 100 }, held: true },
    { value: -40.000001, span: { from: -40, to: 100 }, held: false },
    { value: 0.1 + 0.2, span: { from: 0, to: 0.3 }, held: true },
  ])('$value in $span: $held', ({ value, span, held }) => expect(inSpan(value, { ...span, says: '' })).toBe(held));

  it('so many of a unit are held in SI', () => {
    expect(inSi('rise', 'ft/h', 10)).toBeCloseTo(3.048, 12);
    expect(inSi('temperature', '°F', -40)).toBeCloseTo(-40, 12);
    expect(() => inSi('rise', 'psf', 1)).toThrow('psf is not a unit of rise');
  });
});
