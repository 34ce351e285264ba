import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { evaporationRate } from '../../src/domain/engineering/uno-1998/evaporation-rate.js';
import { evaporationRateSi } from '../../src/domain/engineering/uno-1998/evaporation-rate-si.js';
import { freshTemperature, ICE_DEGREES, type Batch } from '../../src/domain/engineering/hot-concrete-lecture/fresh-temperature.js';
import { itIsAsPublished, num, publishedRows, type Inputs } from './published-rows.js';

const asked = (i: Inputs) => [num(i, 'Tc'), num(i, 'Ta'), num(i, 'r'), num(i, 'V')] as const;
/** NIST SP 811: 0.45359237 kg over 0.09290304 m2. */
const KG_PER_M2 = 0.45359237 / 0.09290304;

describe('evaporation', () => {
  itIsAsPublished(publishedRows('uno-1998/evaporation'), {
    us: (i) => evaporationRate(...asked(i)),
    usInSi: (i) => evaporationRate(...asked(i)) * KG_PER_M2,
    si: (i) => evaporationRateSi(...asked(i)),
  });

  /** evaporation-meter-note, found: E = 5.275 · ( (Tc + 17.778)^2.5 − r · (Ta + 17.778)^2.5 ) · (V + 4.02336) · 10⁻⁶, the US equation converted. */
  // At 5 C the factors are 5 / 5.275 · (23 / 22.778)^2.5 = 0.9712; warmer concrete than air takes it down from there.
  it('the US customary equation is the printed conversion to its four digits, the SI printing up to 5 % under it', () => {
    const temperature = fc.double({ min: 5, max: 40, noNaN: true });
    fc.assert(
      fc.property(temperature, temperature, fc.double({ min: 0, max: 0.6, noNaN: true }), fc.double({ min: 0, max: 40, noNaN: true }), (Tc, Ta, r, V) => {
        fc.pre(Tc >= Ta);
        const printed = (5.275 * ((Tc + 17.778) ** 2.5 - r * (Ta + 17.778) ** 2.5) * (V + 4.02336)) / 1e6;
        const us = evaporationRate(Tc * 1.8 + 32, Ta * 1.8 + 32, r, V / 1.609344) * KG_PER_M2;
        expect(Math.abs(us / printed - 1)).toBeLessThan(2e-4);
        expect(evaporationRateSi(Tc, Ta, r, V) / printed).toBeLessThan(0.972);
        expect(evaporationRateSi(Tc, Ta, r, V) / printed).toBeGreaterThan(0.945);
      }),
    );
  });

  it('cold concrete in warm damp air takes up water', () => expect(evaporationRate(50, 90, 0.9, 10)).toBeLessThan(0));
});

const batch = (i: Inputs): Batch => i as unknown as Batch;
/** The blog's own heats: solids 0.92, water 4.184 kJ/kg, 335 kJ/kg for melting. */
function byHeats({ aggregate, aggregateAt, cement, cementAt, water, waterAt, ice }: Batch): number {
  const heat = 0.92 * (aggregate * aggregateAt + cement * cementAt) + 4.184 * water * waterAt - 335 * ice;
  return heat / (0.92 * (aggregate + cement) + 4.184 * (water + ice));
}

describe('mixing temperature', () => {
  itIsAsPublished(publishedRows('hot-concrete-lecture/mixing-temperature'), {
    mix: (i) => freshTemperature(batch(i), ICE_DEGREES.si),
    byHeats: (i) => byHeats(batch(i)),
  });

  const mix: Batch = { aggregate: 1800, aggregateAt: 30, cement: 350, cementAt: 60, water: 120, waterAt: 20, freeWater: 30, ice: 25 };

  it('is the same on either scale', () => {
    const warm = (c: number): number => c * 1.8 + 32;
    const fahrenheit = { ...mix, aggregateAt: warm(30), cementAt: warm(60), waterAt: warm(20) };
    expect(freshTemperature(fahrenheit, ICE_DEGREES['us-customary'])).toBeCloseTo(warm(freshTemperature(mix, ICE_DEGREES.si)), 9);
  });

  it('of parts all alike it is theirs, and no heat is lost in the sharing', () => {
    expect(freshTemperature({ ...mix, aggregateAt: 25, cementAt: 25, waterAt: 25, ice: 0 }, 80)).toBeCloseTo(25, 10);
    const T = freshTemperature(mix, 80);
    const gained = 0.22 * (mix.aggregate * (T - 30) + mix.cement * (T - 60)) + mix.water * (T - 20) + mix.freeWater * (T - 30) + mix.ice * (T + 80);
    expect(gained).toBeCloseTo(0, 8);
  });

  /** A page that takes 0.22 for the water too arrives at the average by mass: known wrong. */
  it('is not the average by mass', () => {
    const { aggregate, cement, water } = mix;
    const average = (aggregate * 30 + cement * 60 + water * 20) / (aggregate + cement + water);
    expect(Math.abs(freshTemperature({ ...mix, ice: 0, freeWater: 0 }, 80) - average)).toBeGreaterThan(1);
  });
});
