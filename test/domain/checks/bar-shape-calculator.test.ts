import { describe, expect, it } from '@jest/globals';
import { barShapeCalculator } from '../../../src/domain/checks/bar-shape-calculator.js';
import { answered, refused, si, us } from './answered.js';

const answer = (fields: Readonly<Record<string, unknown>>) => answered(barShapeCalculator, fields);

/** Formulas of bs-8666-2005 Table 3, read in public charts; the figures are worked by hand from them. */
describe('bar-shape calculator', () => {
  it('code 11, legs 1000 and 300, 12 mm: 1276 mm', () => {
    const found = answer({ standard: 'bs-8666', code: '11', diameter: '12 mm', dimensions: { A: '1000 mm', B: '300 mm' } });
    expect(si(found, 'cuttingLength')).toBe(1276);
    expect(us(found, 'cuttingLength')).toBeCloseTo(1276 / 25.4, 9);
    expect(found).toMatchObject({ governs: 'code-11', defaults: ['radius: 24 mm, the least for 12 mm'], trace: [{ equation: 'L = A + B − 0.5 · r − 1 · d', value: 1276 }], findings: [] });
  });

  it('code 21, 600, 200, 600: 1352 mm, the code also as a number and the legs in inches', () => {
    expect(si(answer({ code: 21, diameter: '12 mm', dimensions: { A: '0.6 m', B: '200 mm', C: '600 mm' } }), 'cuttingLength')).toBe(1352);
    expect(si(answer({ code: '21', diameter: '12 mm', dimensions: { A: '20 in', B: '10 in', C: '20 in' } }), 'cuttingLength')).toBeCloseTo(50 * 25.4 - 48, 9);
  });

  it('a helix counts its turns', () => {
    expect(si(answer({ code: '77', diameter: '10 mm', dimensions: { A: '500 mm', C: 12 } }), 'cuttingLength')).toBeCloseTo(12 * Math.PI * 490, 6);
  });

  /** A bar schedule gives every drawn dimension: which of them the length is made of is for the standard to say. */
  it.each([
    { code: '14', dimensions: { A: '1000 mm', B: '300 mm', C: '500 mm', D: '200 mm' }, mm: 1452, unused: 'B, D' },
    { code: '26', dimensions: { A: '600 mm', B: '200 mm', C: '300 mm', D: '100 mm' }, mm: 1100, unused: 'D' },
    { code: '51', dimensions: { A: '500 mm', B: '300 mm', C: '150 mm', D: '150 mm' }, mm: 1780, unused: 'D' },
    { code: '67', dimensions: { A: '3000 mm', B: '2900 mm', C: '400 mm', R: '3000 mm' }, mm: 3000, unused: 'B, C, R' },
  ])('code $code takes $unused and leaves them out of the length', ({ code, dimensions, mm, unused }) => {
    const found = answer({ code, diameter: '12 mm', dimensions });
    expect(si(found, 'cuttingLength')).toBe(mm);
    expect(found.notes).toContain(`Not in the length of code ${code}: ${unused}.`);
  });

  it('a link without C has the least ends, and says so', () => {
    const found = answer({ code: '51', diameter: '12 mm', dimensions: { A: '500 mm', B: '300 mm' } });
    expect(si(found, 'cuttingLength')).toBe(1792);
    expect(found).toMatchObject({ defaults: expect.arrayContaining(['C and D: the least ends of the standard']), trace: [{ equation: 'L = 2 · A + 2 · B + max( 16 · d, 160 mm )', value: 1792 }] });
    expect(si(answer({ code: '47', diameter: '12 mm', dimensions: { A: '500 mm', B: '300 mm' } }), 'cuttingLength')).toBe(1552);
  });

  it('the trace takes off the radius of code 12', () => {
    expect(answer({ code: '12', diameter: '12 mm', dimensions: { A: '1000 mm', B: '500 mm', R: '300 mm' } }).trace).toMatchObject([{ equation: 'L = A + B − 0.43 · R − 1.2 · d', value: 1500 - 129 - 14.4 }]);
  });

  it('a wider bend takes off more', () => {
    expect(si(answer({ code: '11', diameter: '12 mm', radius: '60 mm', dimensions: { A: '1000 mm', B: '300 mm' } }), 'cuttingLength')).toBe(1258);
  });

  it('a leg shorter than the least end is told', () => {
    expect(answer({ code: '11', diameter: '16 mm', dimensions: { A: '1000 mm', B: '120 mm' } }).findings).toMatchObject([{ code: 'outside-method', severity: 'hold', numbers: { dimension: 'B', endMm: 120, limitMm: 130 } }]);
  });

  it.each([
    { fields: { code: '11', diameter: '14 mm', dimensions: { A: '1 m', B: '1 m' } }, numbers: { diameterMm: 14 } },
    { fields: { code: '11', diameter: '12 mm', radius: '20 mm', dimensions: { A: '1 m', B: '1 m' } }, numbers: { radiusMm: 20, limitMm: 24 } },
  ])('$fields has no answer', ({ fields, numbers }) => expect(answer(fields)).toMatchObject({ result: {}, findings: [{ code: 'outside-method', numbers }] }));

  it.each([
    { fields: {}, pointers: ['/code', '/diameter'] },
    { fields: { code: '99', diameter: '12 mm', dimensions: {} }, pointers: ['/code'] },
    { fields: { code: '47', diameter: '12 mm', dimensions: { A: '500 mm', B: '300 mm', C: '150 mm' } }, pointers: ['/dimensions/C'] },
    { fields: { code: '51', diameter: '12 mm', dimensions: { A: '500 mm', B: '300 mm', C: '150 mm', D: '160 mm' } }, pointers: ['/dimensions/D'] },
    { fields: { code: '51', diameter: '12 mm', dimensions: { A: '500 mm', B: '300 mm', D: '160 mm' } }, pointers: ['/dimensions/C'] },
    { fields: { code: '21', diameter: '12 mm' }, pointers: ['/dimensions'] },
    { fields: { code: '21', diameter: '12 mm', dimensions: { A: '600 mm', B: '8 psi', D: '600 mm' } }, pointers: ['/dimensions/B', '/dimensions/C', '/dimensions/D'] },
    { fields: { code: '11', diameter: '12 mm', dimensions: { A: '-1 m', B: '1 m' }, standard: 'other' }, pointers: ['/dimensions/A', '/standard'] },
    { fields: { code: '11', diameter: '12 mm', dimensions: { A: '10 mm', B: '10 mm' } }, pointers: ['/dimensions'] },
  ])('refuses $fields at $pointers', ({ fields, pointers }) => expect(refused(barShapeCalculator, fields)).toEqual(pointers));
});
