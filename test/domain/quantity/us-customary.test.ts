import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  celsiusToFahrenheit, fahrenheitToCelsius, feetPerHourToMetresPerHour, kgPerM3ToPcf, kpaToPsf, metresPerHourToFeetPerHour, millimetresToInches, pcfToKgPerM3, psfToKpa,
} from '../../../src/domain/quantity/us-customary.js';

describe('conversions to and from US customary units', () => {
  it.each([
    { what: '1000 psf', si: psfToKpa(1000), value: 47.88025898033584 },
    { what: '1 pcf', si: pcfToKgPerM3(1), value: 16.018463373960142 },
    { what: '10 ft/h', si: feetPerHourToMetresPerHour(10), value: 3.048 },
    { what: '68 F', si: fahrenheitToCelsius(68), value: 20 },
    { what: '-40 F', si: fahrenheitToCelsius(-40), value: -40 },
  ])('$what is $value', ({ si, value }) => expect(si).toBeCloseTo(value, 10));

  it('give back the very number, so that a printed limit stays a limit', () => {
    const decimal = fc.integer({ min: 1, max: 200_000 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(decimal, (x) => {
        expect(kpaToPsf(psfToKpa(x))).toBe(x);
        expect(kgPerM3ToPcf(pcfToKgPerM3(x))).toBe(x);
        expect(metresPerHourToFeetPerHour(feetPerHourToMetresPerHour(x))).toBe(x);
        expect(celsiusToFahrenheit(fahrenheitToCelsius(x))).toBe(x);
        expect(millimetresToInches(x * 25.4)).toBe(x);
      }),
    );
  });
});
