import { describe, expect, it } from '@jest/globals';
import { CORES, PARAMETERS } from '../../support/rule-range.js';
import { designPressure } from '../../../src/domain/reinforcement/design-pressure.js';
import { fahrenheitToCelsius, feetPerHourToMetresPerHour, pcfToKgPerM3 } from '../../../src/domain/quantity/us-customary.js';
import { feet } from '../../../src/domain/quantity/length.js';
import type { Parameters } from '../../../src/domain/range/range.js';
import type { Pour } from '../../../src/domain/schedule/schedule.js';

const POUR: Pour = {
  riseMPerH: feetPerHourToMetresPerHour(3), concreteC: fahrenheitToCelsius(70), unitWeightKgPerM3: pcfToKgPerM3(150), cement: 'I', retarder: false, slumpMm: 165.1,
};
const of = (pour: Pour | null, heightFt = 9, parameters: Partial<Parameters> = {}) => designPressure(pour, CORES[6], feet(heightFt), { ...PARAMETERS, ...parameters });

describe('designPressure', () => {
  it.each([
    { what: 'the standard\'s minimum for a slow warm pour', pour: {}, height: 9, psf: 600, governs: 'minimum' },
    { what: 'equation A: 150 + 9000 · 6 / 70', pour: { riseMPerH: 1.8288 }, height: 9, psf: 150 + 54_000 / 70, governs: 'equation-a' },
    { what: 'the head of a low wall', pour: {}, height: 3, psf: 450, governs: 'liquid-head' },
    { what: 'the full head of a wet mix: 9 · 150', pour: { slumpMm: 203.2 }, height: 9, psf: 1350, governs: 'liquid-head' },
    { what: '7 in of slump, written in inches, is within the method', pour: { slumpMm: 177.8 }, height: 9, psf: 600, governs: 'minimum' },
    { what: '150 pcf, held in kg/m3, is not heavy concrete', pour: { riseMPerH: 1.8288, unitWeightKgPerM3: 2402.769506094024 }, height: 9, psf: 150 + 54_000 / 70, governs: 'equation-a' },
    { what: 'a retarder', pour: { riseMPerH: 1.8288, retarder: true }, height: 9, psf: 1.2 * (150 + 54_000 / 70), governs: 'equation-a' },
  ])('is $what', ({ pour, height, psf, governs }) => {
    const design = of({ ...POUR, ...pour }, height);
    expect(design).toMatchObject({ basis: 'pour', governs, defaults: [] });
    expect(design.findings.map(({ code }) => code)).toEqual(design.notes.length > 0 ? ['full-liquid-head'] : []);
    expect(design.psf).toBeCloseTo(psf, 8);
  });

  it('is never below one lift: 5 ft of 150 pcf are 750 psf where the minimum says 600', () => {
    expect(of(POUR, 9, { liftHeight: feet(5) })).toMatchObject({ psf: 750, governs: 'lift-height' });
    expect(of(POUR, 4.5, { liftHeight: feet(5) })).toMatchObject({ psf: 675, governs: 'lift-height' });
    expect(of(POUR, 9, { liftHeight: feet(4) })).toMatchObject({ psf: 600, governs: 'minimum' });
  });

  it.each([
    { what: 'no pour', pour: null, missing: 'rise, concrete' },
    { what: 'a pour without a rate of rise', pour: { concreteC: 20 }, missing: 'rise' },
    { what: 'a pour without a temperature', pour: { riseMPerH: 1 }, missing: 'concrete' },
  ])('is the rated pressure for $what, and says so', ({ pour, missing }) => {
    const design = of(pour);
    expect(design).toMatchObject({ psf: 750, basis: 'rated', governs: 'rated', findings: [{ code: 'pour-not-stated', severity: 'note', numbers: { missing } }] });
    expect(design.findings).toHaveLength(1);
  });

  it('is the rated pressure, with a hold, where the method gives no answer', () => {
    expect(of({ ...POUR, concreteC: 0 })).toMatchObject({
      psf: 750, basis: 'rated',
      findings: [{ code: 'outside-method', severity: 'hold', numbers: { method: 'ACI 347-04', core: '6', concreteF: 32, limitF: 40, side: 'below' }, source: 'aci-347-04' }],
    });
    expect(of({ ...POUR, cement: 'moon dust' })).toMatchObject({ psf: 750, basis: 'rated', findings: [{ code: 'outside-method', severity: 'hold', numbers: { cement: 'moon dust' } }] });
  });

  it('lists what it assumed', () => {
    expect(of({ riseMPerH: 1.8288, concreteC: fahrenheitToCelsius(80) })).toMatchObject({
      psf: 825, defaults: ['unitWeight: 150 pcf', 'cement: I', 'retarder: none', 'slump: not over 7 in'],
    });
    expect(of(POUR).defaults).toEqual([]);
  });

  it('prints the note of the standard beside a full liquid head, and finds it', () => {
    expect(of({ ...POUR, slumpMm: 203.2 }).findings).toMatchObject([{ code: 'full-liquid-head', severity: 'note', numbers: { slumpIn: 8, limitIn: 7, pressurePsf: 1350, core: '6' } }]);
    expect(of(POUR).findings).toEqual([]);
    expect(of({ ...POUR, slumpMm: 203.2 }).notes).toEqual(['Slump 8 in is over the 7 in limit of the wall equations: full liquid head.']);
  });
});
