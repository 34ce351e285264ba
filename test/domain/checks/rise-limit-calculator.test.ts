import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formPressureCalculator } from '../../../src/domain/checks/form-pressure-calculator.js';
import { riseLimitCalculator } from '../../../src/domain/checks/rise-limit-calculator.js';
import type { CalculatorAnswer, InBothUnits } from '../../../src/domain/checks/calculator-answer.js';

type Fields = Readonly<Record<string, unknown>>;
const PLAIN: Fields = { rating: '825 psf', height: '12 ft', concrete: '80 F', unitWeight: '150 pcf', cement: 'I', retarder: false, slump: '5 in', method: 'aci-347' };

function answer(changes: Fields = {}): CalculatorAnswer {
  const answered = riseLimitCalculator({ ...PLAIN, ...changes });
  if (!answered.ok) throw new Error(JSON.stringify(answered.error));
  return answered.value;
}

describe('rise-limit calculator', () => {
  it('turns the pressure round: 825 psf at 80 F is 6 ft/h, 1.8288 m/h', () => {
    expect(answer()).toMatchObject({
      result: { rise: { us: { value: 6, unit: 'ft/h' }, si: { value: 1.8288, unit: 'm/h' } } },
      governs: 'equation-a', source: 'aci-347-04 §2.2.2', defaults: [], findings: [],
      notes: [expect.stringMatching(/^US customary equations of ACI 347-04, because height, rating and concrete are in US customary units; /)],
    });
  });

  it.each([{ rating: '39.50121365877707 kPa' }, { height: '3.6576 m' }, { concrete: '26.6666666666667 C' }])('%j says the same', (changes) => {
    expect((answer(changes).result['rise'] as InBothUnits).us.value).toBeCloseTo(6, 9);
  });

  it('says any rate where the wall is low enough', () => {
    expect(answer({ height: '5.5 ft' })).toMatchObject({ result: { rise: 'any rate' }, governs: 'liquid-head', findings: [] });
  });

  it.each([
    { changes: { slump: '9 in' }, governs: 'slump', least: 1800 },
    { changes: { rating: '550 psf' }, governs: 'minimum', least: 600 },
  ])('says no rate for $changes and finds the pressure over the rating', ({ changes, governs, least }) => {
    expect(answer(changes)).toMatchObject({
      result: { rise: 'no rate', leastPressure: { us: { value: least } } }, governs, findings: [{ code: 'pressure-over-rating', severity: 'hold', numbers: { pressurePsf: least } }],
    });
  });

  it('says why 15 ft/h is the end', () => {
    expect(answer({ rating: '1500 psf' })).toMatchObject({ result: { rise: { us: { value: 15 } } }, governs: 'highest-rate' });
    expect(answer({ rating: '1500 psf' }).notes).toEqual([expect.stringMatching(/^Any faster/), expect.stringMatching(/^US customary/)]);
  });

  it('gives no number outside the method', () => {
    expect(answer({ concrete: '35 F' })).toMatchObject({ result: {}, governs: 'outside-method', findings: [{ code: 'outside-method' }] });
  });

  it.each([
    { field: 'rating', value: undefined },
    { field: 'rating', value: '750' },
    { field: 'rating', value: '0 psf' },
    { field: 'rating', value: '-5 psf' },
    { field: 'rating', value: '8 ft' },
    { field: 'rise', value: '3 ft/h' },
    { field: 'method', value: 'aci-318' },
  ])('refuses $field $value by name', ({ field, value }) => {
    const answered = riseLimitCalculator({ ...PLAIN, [field]: value });
    expect(answered).toMatchObject({ ok: false, error: [{ pointer: `/${field}` }] });
  });

  it('is the inverse of the form-pressure calculator', () => {
    const number = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);
    let compared = 0;
    fc.assert(
      fc.property(number(620, 1400), number(9, 14), fc.integer({ min: 40, max: 95 }), (rating, height, T) => {
        const { result, governs } = answer({ rating: `${rating} psf`, height: `${height} ft`, concrete: `${T} F` });
        if (governs !== 'equation-a' && governs !== 'equation-b') return;
        const { value, unit } = (result['rise'] as InBothUnits).us;
        const pressed = formPressureCalculator({ height: `${height} ft`, concrete: `${T} F`, rise: `${value.toFixed(12)} ${unit}`, slump: '5 in' });
        if (!pressed.ok) throw new Error('refused');
        expect((pressed.value.result['pressure'] as InBothUnits).us.value / rating).toBeCloseTo(1, 9);
        compared += 1;
      }),
      { seed: 347 },
    );
    expect(compared).toBeGreaterThanOrEqual(50);
  });

  it.each([
    { changes: {}, rise: 2, governs: 'equation-a' },
    { changes: { height: '5 m', rating: '47.4645502645503 kPa' }, rise: 1.5, governs: 'equation-b' },
    { changes: { rating: '51 kPa' }, rise: 2.1, governs: 'equation-a-range' },
    { changes: { rating: '0.08 MPa' }, rise: 4.5, governs: 'highest-rate' },
  ])('asked in SI with $changes: $rise m/h by the SI set', ({ changes, rise, governs }) => {
    const given = answer({ rating: '48.7343915343915 kPa', height: '4 m', concrete: '20 C', unitWeight: '2400 kg/m3', slump: '120 mm', ...changes });
    const { us, si } = given.result['rise'] as InBothUnits;
    expect(given.governs).toBe(governs);
    expect(si.value).toBeCloseTo(rise, 7);
    expect(us.value).toBeCloseTo(si.value / 0.3048, 9);
    expect(given.notes.at(-1)).toMatch(/^SI equations of ACI 347-04, because height, rating and concrete are all in SI units; /);
    expect(given.trace.at(-1)?.unit).toBe('m/h');
  });

  it('the rating in psf, and the US customary set governs', () => {
    const given = answer({ rating: '750 psf', height: '4 m', concrete: '20 C', unitWeight: '2400 kg/m3' });
    expect((given.result['rise'] as InBothUnits).us.value).toBeCloseTo((600 * 68) / 9000, 9);
    expect(given.notes).toEqual([expect.stringMatching(/because rating is in US customary units; /)]);
  });

  it('asked in SI, is the inverse of the form-pressure calculator', () => {
    const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
    const compared = { 'equation-a': 0, 'equation-b': 0 };
    fc.assert(
      fc.property(tenths(31, 70), tenths(3, 6), fc.integer({ min: 5, max: 35 }), fc.boolean(), (rating, height, T, retarder) => {
        const asked = { height: `${height} m`, concrete: `${T} C`, unitWeight: '2400 kg/m3', slump: '120 mm', retarder };
        const { result, governs } = answer({ rating: `${rating} kPa`, ...asked });
        if ((governs !== 'equation-a' && governs !== 'equation-b') || result['rise'] === 'no rate') return;
        const { value, unit } = (result['rise'] as InBothUnits).si;
        const pressed = formPressureCalculator({ ...asked, rise: `${value.toFixed(12)} ${unit}` });
        if (!pressed.ok) throw new Error('refused');
        expect((pressed.value.result['pressure'] as InBothUnits).si.value / rating).toBeCloseTo(1, 9);
        compared[governs] += 1;
      }),
      { numRuns: 400, seed: 347 },
    );
    expect(compared['equation-a']).toBeGreaterThanOrEqual(50);
    expect(compared['equation-b']).toBeGreaterThanOrEqual(50);
  });
});
