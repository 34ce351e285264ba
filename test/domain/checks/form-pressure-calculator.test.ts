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
      governs: 'equation-a', source: 'aci-347-04 §2.2.2', defaults: [], notes: [], findings: [],
    });
    expect(pressure().si.value).toBeCloseTo(39.501, 3);
    expect((answer().result['diagram'] as { depth: InBothUnits; pressure: InBothUnits }[]).map(({ depth, pressure: p }) => [depth.us.value, p.us.value])).toEqual([
      [0, 0], [5.5, 825], [12, 825],
    ]);
    expect(answer().trace.length).toBe(7);
  });

  it('8 ft of a wet mix is a liquid: 1200 psf, with the standard\'s note', () => {
    expect(answer({ height: '8 ft', slump: '8 in' })).toMatchObject({ result: { pressure: { us: { value: 1200 } }, hydrostaticDepth: { us: { value: 8 } } }, governs: 'liquid-head', findings: [] });
    expect(answer({ height: '8 ft', slump: '8 in' }).notes).toHaveLength(1);
  });

  it.each([
    { height: '3.6576 m' }, { height: '3657.6 mm' }, { height: '12\'-0"' }, { height: '144 in' },
    { rise: '1.8288 m/h' }, { rise: '72 in/h' }, { cement: 'Type I' }, { cement: 'ii' }, { retarder: 'no' }, { slump: '127 mm' },
  ])('%j says the same', (changes) => expect(pressure(changes)).toEqual(pressure()));

  it('both systems give the same answer, at the limits too', () => {
    const hundredths = (min: number, max: number) => fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);
    fc.assert(
      fc.property(hundredths(1, 20), hundredths(1, 20), fc.integer({ min: 40, max: 95 }), fc.integer({ min: 100, max: 180 }), fc.integer({ min: 1, max: 11 }), (ft, rise, T, pcf, slump) => {
        const us = pressure({ height: `${ft} ft`, rise: `${rise} ft/h`, concrete: `${T} F`, unitWeight: `${pcf} pcf`, slump: `${slump} in` });
        const si = pressure({
          height: `${(ft * 304.8).toFixed(6)} mm`, rise: `${(rise * 0.3048).toFixed(10)} m/h`, concrete: `${((T - 32) / 1.8).toFixed(12)} C`,
          unitWeight: `${(pcf * 16.018463373960142).toFixed(10)} kg/m3`, slump: `${(slump * 25.4).toFixed(4)} mm`,
        });
        expect(si.us.value / us.us.value).toBeCloseTo(1, 9);
      }),
    );
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
    { field: 'method', value: 'din-18218', read: 'din-18218' },
    { field: 'temprature', value: '70 F', read: '70 F' },
  ])('$field $value is refused by name', ({ field, value, read }) => {
    const found = errors({ [field]: value });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ pointer: `/${field}`, read });
    expect(found[0]?.fix).toMatch(new RegExp(`^${field}: .{8,}`));
  });

  it('says which methods it knows', () => expect(errors({ method: 'ciria-108' })[0]?.fix).toBe('method: one of aci-347'));

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
