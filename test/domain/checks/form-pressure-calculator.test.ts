import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formPressureCalculator } from '../../../src/domain/checks/form-pressure-calculator.js';
import type { CalculatorAnswer, InBothUnits } from '../../../src/domain/checks/calculator-answer.js';
import type { InputError } from '../../../src/domain/evidence/input-error.js';

type Fields = Readonly<Record<string, unknown>>;
const PLAIN: Fields = { method: 'aci-347', height: '12 ft', rise: '6 ft/h', concrete: '80 F', unitWeight: '150 pcf', cement: 'I', retarder: false, slump: '5 in' };

function answer(changes: Fields = {}): CalculatorAnswer {
  const answered = formPressureCalculator({ ...PLAIN, ...changes });
  if (!answered.ok) throw new Error(JSON.stringify(answered.error));
  return answered.value;
}
function errors(changes: Fields): readonly InputError[] {
  const answered = formPressureCalculator({ ...PLAIN, ...changes });
  if (answered.ok) throw new Error(`read ${JSON.stringify(changes)}`);
  return answered.error;
}
const pressure = (changes: Fields = {}): InBothUnits => answer(changes).result['pressure'] as InBothUnits;

describe('form-pressure calculator', () => {
  it('answers in both systems with what governs, the liquid zone, the diagram, trace and source', () => {
    expect(answer()).toMatchObject({
      result: {
        pressure: { us: { value: 825, unit: 'psf' }, si: { unit: 'kPa' } },
        hydrostaticDepth: { us: { value: 5.5, unit: 'ft' }, si: { value: 1.6764, unit: 'm' } },
      },
      governs: 'equation-a', source: 'aci-347-04 §2.2.2', defaults: [], findings: [],
      notes: [expect.stringMatching(/^US customary equations of ACI 347-04, because height, rise and concrete are in US customary units; /)],
    });
    expect(pressure().si.value).toBeCloseTo(39.501, 3);
    expect((answer().result['diagram'] as { depth: InBothUnits; pressure: InBothUnits }[]).map(({ depth, pressure: p }) => [depth.us.value, p.us.value])).toEqual([
      [0, 0], [5.5, 825], [12, 825],
    ]);
    expect(answer().trace.length).toBe(7);
  });

  it('8 ft of a wet mix is a liquid: 1200 psf, with the standard\'s note', () => {
    expect(answer({ height: '8 ft', slump: '8 in' })).toMatchObject({ result: { pressure: { us: { value: 1200 } }, hydrostaticDepth: { us: { value: 8 } } }, governs: 'liquid-head', findings: [] });
    expect(answer({ height: '8 ft', slump: '8 in' }).notes).toEqual([expect.stringMatching(/^Slump 8 in/), expect.stringMatching(/^US customary/)]);
  });

  it.each([
    { height: '3.6576 m' }, { height: '3657.6 mm' }, { height: '12\'-0"' }, { height: '144 in' },
    { rise: '1.8288 m/h' }, { rise: '72 in/h' }, { cement: 'Type I' }, { cement: 'ii' }, { retarder: 'no' }, { slump: '127 mm' },
  ])('%j says the same', (changes) => expect(pressure(changes)).toEqual(pressure()));

  it('a question asked all in SI is answered by the SI set: within 0.3 % where both use one equation and no floor', () => {
    const hundredths = (min: number, max: number) => fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100);
    const same = { a: 0, b: 0 };
    fc.assert(
      fc.property(hundredths(2, 6), hundredths(1, 4.4), fc.integer({ min: 5, max: 25 }), fc.integer({ min: 1300, max: 2900 }), fc.integer({ min: 0, max: 170 }), (m, rise, C, rho, slump) => {
        const fields = { height: `${m} m`, rise: `${rise} m/h`, concrete: `${C} C`, unitWeight: `${rho} kg/m3`, slump: `${slump} mm` };
        const si = answer(fields);
        const us = answer({ ...fields, concrete: `${(C * 1.8 + 32).toFixed(6)} F` });
        expect(si.notes.at(-1)).toMatch(/^SI equations/);
        expect(us.notes.at(-1)).toMatch(/^US customary equations of ACI 347-04, because concrete is in US customary units/);
        if (si.governs === 'minimum' || us.governs === 'minimum' || si.governs !== us.governs || (rho >= 2400 && rho <= 2403) || (rho >= 2240 && rho <= 2243)) return;
        const ratio = (si.result['pressure'] as InBothUnits).us.value / (us.result['pressure'] as InBothUnits).us.value;
        expect(Math.abs(ratio - 1)).toBeLessThan(si.governs === 'liquid-head' ? 1e-9 : 0.003);
        if (si.governs === 'equation-a') same.a += 1;
        if (si.governs === 'equation-b') same.b += 1;
      }),
      { numRuns: 1200, seed: 347 },
    );
    expect(same.a).toBeGreaterThanOrEqual(50);
    expect(same.b).toBeGreaterThanOrEqual(50);
  });

  it.each([
    { height: '12 ft' }, { height: '144 in' }, { rise: '6 ft/h' }, { rise: '72 in/h' }, { concrete: '68 F' },
  ])('one of the three in US units, %j, and the US customary set governs', (changes) => {
    const given = answer({ height: '3.6576 m', rise: '1.8288 m/h', concrete: '20 C', ...changes });
    expect(given.result).toMatchObject({ pressure: { us: { value: Number((150 + 54_000 / 68).toPrecision(12)) } } });
    expect(given.notes).toEqual([expect.stringMatching(/^US customary equations of ACI 347-04, because (height|rise|concrete) is in US customary units; the SI set differs by up to 0\.3 %.*30 · Cw kPa/)]);
  });

  it('answers in SI with both values of the one evaluation, the SI trace, its own defaults, and says so', () => {
    const answered = formPressureCalculator({ height: '3 m', rise: '1 m/h', concrete: '10 C' });
    if (!answered.ok) throw new Error('refused');
    const { result, governs, trace, notes, defaults } = answered.value;
    const { us, si } = result['pressure'] as InBothUnits;
    expect(si).toEqual({ value: Number((7.2 + 785 / 27.8).toPrecision(12)), unit: 'kPa' });
    expect(us.value).toBeCloseTo((7.2 + 785 / 27.8) / 0.0478802589804, 6);
    expect(governs).toBe('equation-a');
    expect(trace.map(({ unit }) => unit)).toEqual(['1', '1', 'kPa', 'kPa', 'kPa', 'kPa', 'm']);
    expect(defaults).toEqual(['method: aci-347', 'unitWeight: 2400 kg/m3', 'cement: I', 'retarder: none', 'slump: not over 175 mm']);
    expect(notes).toEqual([
      'SI equations of ACI 347-04, because height, rise and concrete are all in SI units; the US customary set differs by up to 0.3 % where the same equation holds, because each set rounds its constants and limits for itself, and its minimum is 600 · Cw psf (28.7 kPa), here 30 · Cw kPa.',
    ]);
    expect((result['diagram'] as { depth: InBothUnits }[]).map(({ depth }) => depth.si.value)).toEqual([0, (result['hydrostaticDepth'] as InBothUnits).si.value, 3]);
  });

  it.each([
    { unitWeight: '2400 kg/m3' }, { unitWeight: '23.53596 kN/m3' }, { unitWeight: '150 pcf' }, { slump: '175 mm' }, { slump: '7 in' }, { slump: '17.5 cm' },
  ])('in SI, %j is the border in whose units it is written, and within it', (changes) => {
    const given = answer({ height: '3 m', rise: '1 m/h', concrete: '10 C', unitWeight: '2400 kg/m3', slump: '100 mm', ...changes });
    expect(given.result).toMatchObject({ pressure: { si: { value: Number((7.2 + 785 / 27.8).toPrecision(12)) } } });
  });

  it.each([
    { field: 'rise', at: '2.1 m/h', governs: 'equation-b' }, { field: 'rise', at: '2100 mm/h', governs: 'equation-b' }, { field: 'rise', at: '4500 mm/h', governs: 'equation-b' },
    { field: 'rise', at: '4.501 m/h', governs: 'liquid-head' }, { field: 'height', at: '420 cm', governs: 'equation-a' }, { field: 'height', at: '4201 mm', governs: 'equation-b' },
    { field: 'slump', at: '176 mm', governs: 'liquid-head' }, { field: 'slump', at: '7.1 in', governs: 'liquid-head' },
  ])('in SI, $field $at is $governs', ({ field, at, governs }) => {
    expect(answer({ height: '4 m', rise: '2 m/h', concrete: '20 C', unitWeight: '2400 kg/m3', slump: '100 mm', [field]: at }).governs).toBe(governs);
  });

  it('in SI, a wall that is liquid to its foot has two points in its diagram', () => {
    const { result } = answer({ height: '3 m', rise: '1 m/h', concrete: '10 C', unitWeight: '24 kN/m3', slump: '200 mm' });
    expect((result['diagram'] as { pressure: InBothUnits }[]).map(({ pressure: p }) => p.si.value)).toEqual([0, 72]);
  });

  it.each([
    { limit: '7 in of slump', at: { slump: '177.8 mm' } },
    { limit: '150 pcf', at: { unitWeight: '2402.769506094021 kg/m3' } },
    { limit: '14 ft', at: { height: '4267.2 mm' } },
  ])('$limit, written in SI, is still within the limit', ({ at }) => expect(pressure(at).us.value).toBe(825));

  it('lists what it assumed', () => {
    const answered = formPressureCalculator({ height: '12 ft', rise: '6 ft/h', concrete: '80 F' });
    expect(answered).toMatchObject({
      ok: true,
      value: { result: { pressure: { us: { value: 825 } } }, defaults: ['method: aci-347', 'unitWeight: 150 pcf', 'cement: I', 'retarder: none', 'slump: not over 7 in'] },
    });
  });

  it.each([{ concrete: '30 F' }, { concrete: '-5 C' }, { concrete: '0 F' }, { concrete: '100 F' }])('%j gives no number but a finding that names the limit', (changes) => {
    const given = answer(changes);
    expect(given).toMatchObject({ result: {}, governs: 'outside-method', findings: [{ code: 'outside-method', severity: 'hold', numbers: { method: 'ACI 347-04' } }] });
    expect(Object.keys(given.result)).toEqual([]);
    expect([40, 95]).toContain(given.findings[0]?.numbers['limitF']);
  });
});

describe('form-pressure calculator, bad input', () => {
  it.each([
    { field: 'height', value: undefined, read: 'nothing' },
    { field: 'height', value: 8, read: '8' },
    { field: 'height', value: '8', read: '8' },
    { field: 'height', value: '-8 ft', read: '-8 ft' },
    { field: 'height', value: '0 ft', read: '0 ft' },
    { field: 'height', value: '5000 ft', read: '5000 ft' },
    { field: 'height', value: '8 psf', read: '8 psf' },
    { field: 'height', value: 'tall', read: 'tall' },
    { field: 'height', value: '12\'-14"', read: '12\'-14"' },
    { field: 'height', value: '1e309 ft', read: '1e309 ft' },
    { field: 'height', value: null, read: 'null' },
    { field: 'rise', value: '3 ft', read: '3 ft' },
    { field: 'rise', value: '0 ft/h', read: '0 ft/h' },
    { field: 'rise', value: '-3 ft/h', read: '-3 ft/h' },
    { field: 'rise', value: '1e9 ft/h', read: '1e9 ft/h' },
    { field: 'rise', value: 'NaN', read: 'NaN' },
    { field: 'concrete', value: '70', read: '70' },
    { field: 'concrete', value: '70 pcf', read: '70 pcf' },
    { field: 'concrete', value: '400 F', read: '400 F' },
    { field: 'unitWeight', value: '15 pcf', read: '15 pcf' },
    { field: 'unitWeight', value: '150 psf', read: '150 psf' },
    { field: 'cement', value: 'moon dust', read: 'moon dust' },
    { field: 'cement', value: 'constructor', read: 'constructor' },
    { field: 'retarder', value: 'perhaps', read: 'perhaps' },
    { field: 'slump', value: '13 in', read: '13 in' },
    { field: 'method', value: 'aci-318', read: 'aci-318' },
    { field: 'temprature', value: '70 F', read: '70 F' },
  ])('$field $value is refused by name', ({ field, value, read }) => {
    const found = errors({ [field]: value });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ pointer: `/${field}`, read });
    expect(found[0]?.fix).toMatch(new RegExp(`^${field}: .{8,}`));
  });

  it('says which methods it knows', () => expect(errors({ method: 'ciria' })[0]?.fix).toBe('method: one of aci-347, ciria-108, din-18218'));

  it('tells all errors at once', () => {
    expect(errors({ height: 'x', rise: '1', concrete: null, cement: '9', foo: 1 }).map(({ pointer }) => pointer).sort()).toEqual(['/cement', '/concrete', '/foo', '/height', '/rise']);
  });

  it('cuts what was read to 80 characters', () => {
    const [found] = errors({ height: 'y'.repeat(1_000_000) });
    expect(found?.read).toHaveLength(80);
  });

  it('never throws', () => {
    fc.assert(fc.property(fc.dictionary(fc.constantFrom('height', 'rise', 'concrete', 'unitWeight', 'cement', 'retarder', 'slump', 'method', '__proto__', 'a/b'), fc.anything()), (fields) => {
      const answered = formPressureCalculator(fields);
      return answered.ok || answered.error.length > 0;
    }));
  });
});
