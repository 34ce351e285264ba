import { describe, expect, it } from '@jest/globals';
import { basementWallCalculator } from '../../../src/domain/checks/basement-wall-calculator.js';
import { answered, refused, si, units, us } from './answered.js';

const answer = (fields: Readonly<Record<string, unknown>>) => answered(basementWallCalculator, fields);

/** Closed form of the simple beam, worked by hand: statics. */
describe('basement-wall calculator', () => {
  it('8 ft of soil of 30 psf/ft on 8 ft: q0 L / 6, q0 L / 3, q0 L² / ( 9 √3 ) at 0.5774 L', () => {
    const found = answer({ soil: '30 psf/ft', backfill: '8 ft', height: '8 ft' });
    expect([us(found, 'top'), us(found, 'bottom')]).toEqual([320, 640]);
    expect(us(found, 'moment')).toBeCloseTo((240 * 64) / (9 * Math.sqrt(3)), 8);
    expect(us(found, 'at')).toBeCloseTo(8 / Math.sqrt(3), 8);
    expect([units(found, 'top'), units(found, 'moment'), units(found, 'at')]).toEqual([['lb/ft', 'kN/m'], ['ft·lb/ft', 'kN·m/m'], ['ft', 'm']]);
    expect(found.governs).toBe('full-height');
  });

  it('7 kN/m3, 2 m of soil on 2.5 m, in metric: Rt = 7 · 8 / 15', () => {
    const found = answer({ soil: '7 kN/m3', backfill: '2 m', height: '2.5 m' });
    expect(si(found, 'top')).toBeCloseTo(56 / 15, 9);
    expect(si(found, 'bottom')).toBeCloseTo(14 - 56 / 15, 9);
    expect(found.trace.at(-1)?.unit).toBe('kN·m/m');
    expect(found.governs).toBe('part-height');
  });

  it('both systems agree', () => {
    const feet = answer({ soil: '45 pcf', backfill: '7 ft', height: '8 ft' });
    const metres = answer({ soil: '7.06893 kN/m3', backfill: '2.1336 m', height: '2.4384 m' });
    expect(us(feet, 'moment')).toBeCloseTo(1131.99, 2);
    expect(us(metres, 'moment')).toBeCloseTo(us(feet, 'moment'), 1);
    expect(si(feet, 'at')).toBeCloseTo(4.780 * 0.3048, 3);
  });

  it('a soil class stands for the load of its column; a prohibited one has no answer', () => {
    expect(us(answer({ soil: 'sm', backfill: '7 ft', height: '8 ft' }), 'moment')).toBeCloseTo(1131.99, 2);
    expect(answer({ soil: 'CH', backfill: '7 ft', height: '8 ft' })).toMatchObject({ result: {}, findings: [{ code: 'outside-method', numbers: { soil: 'CH' } }] });
  });

  it('soil above the top support has no answer', () => {
    expect(answer({ soil: '30 psf/ft', backfill: '9 ft', height: '8 ft' })).toMatchObject({ result: {}, findings: [{ numbers: { backfillFt: 9, limitFt: 8 } }] });
  });

  it.each([
    { fields: {}, pointers: ['/backfill', '/height', '/soil'] },
    { fields: { soil: 'clay', backfill: '7 ft', height: '8 psi' }, pointers: ['/height', '/soil'] },
    { fields: { soil: '30 psf', backfill: '-7 ft', height: '8 ft', depth: '1 ft' }, pointers: ['/backfill', '/depth', '/soil'] },
  ])('refuses $fields at $pointers', ({ fields, pointers }) => expect(refused(basementWallCalculator, fields)).toEqual(pointers));
});
