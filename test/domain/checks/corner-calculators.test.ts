import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { bendThrustCalculator } from '../../../src/domain/checks/bend-thrust-calculator.js';
import { hoopTensionCalculator } from '../../../src/domain/checks/hoop-tension-calculator.js';
import { teeCalculator } from '../../../src/domain/checks/tee-calculator.js';
import { upliftCalculator } from '../../../src/domain/checks/uplift-calculator.js';
import { answerOf, pointersOf, valueOf } from './asked.js';

describe('bend-thrust', () => {
  /** 2 · 600 · 0.5 · sin 45° = 424.26 lb/ft; closed form. */
  it('of a square corner, with the thrust of a lift', () => {
    const answer = answerOf(bendThrustCalculator, { pressure: '600 psf', core: '6 in', turn: '90', lift: '4 ft' });
    expect(valueOf(answer, 'thrustPerHeight').us).toEqual({ value: Number((600 * Math.SQRT1_2).toPrecision(12)), unit: 'lb/ft' });
    expect(valueOf(answer, 'thrustPerHeight').si.value).toBeCloseTo((600 * Math.SQRT1_2 * 4.4482216152605) / 304.8, 9);
    expect(valueOf(answer, 'thrust').us.value).toBeCloseTo(2400 * Math.SQRT1_2, 8);
    expect(answer).toMatchObject({ governs: 'one-core', source: 'statics', defaults: [], findings: [] });
    expect(answer.trace.map(({ substituted }) => substituted)).toEqual(['2 · 600 · 0.5 · sin( 90° / 2 )', '424.264 · 4']);
  });

  it('works in SI where all is asked in SI, and the hand of the turn does not matter', () => {
    const answer = answerOf(bendThrustCalculator, { pressure: '30 kPa', core: '150 mm', turn: -60 });
    expect(valueOf(answer, 'thrustPerHeight').si).toEqual({ value: 4.5, unit: 'kN/m' });
    expect(answer.trace[0]).toMatchObject({ substituted: '2 · 30 · 0.15 · sin( 60° / 2 )', unit: 'kN/m' });
    expect(answer.defaults).toEqual(['lift: not stated, thrust per unit height only']);
    expect(answer.result).not.toHaveProperty('thrust');
  });

  /** Decision 4: p · √(t1² + t2² − 2 · t1 · t2 · cos θ). */
  it('of two cores', () => {
    const answer = answerOf(bendThrustCalculator, { pressure: '10 kPa', core: '300 mm', otherCore: '400 mm', turn: '90' });
    expect(valueOf(answer, 'thrustPerHeight').si.value).toBe(5);
    expect(answer.governs).toBe('two-cores');
  });

  it.each([
    { fields: {}, at: ['/core', '/pressure', '/turn'] },
    { fields: { pressure: '600 psf', core: '6 in', turn: '180' }, at: ['/turn'] },
    { fields: { pressure: '600 ft', core: '6 psf', turn: '90 ft' }, at: ['/core', '/pressure', '/turn'] },
    { fields: { pressure: '-1 psf', core: '-6 in', turn: '90', lift: '-4 ft' }, at: ['/core', '/lift', '/pressure'] },
    { fields: { pressure: '600 psf', core: '6 in', turn: '90', angle: '90' }, at: ['/angle'] },
    { fields: { pressure: '600 psf', core: '6 in', turn: {} }, at: ['/turn'] },
  ])('refuses $fields at $at', ({ fields, at }) => expect(pointersOf(bendThrustCalculator, fields)).toEqual(at));
});

describe('hoop-tension', () => {
  /** p · t = 300 lb/ft, p · R = 3000 lb/ft; closed form. */
  it('of the band, of the face alone, and over a lift', () => {
    const answer = answerOf(hoopTensionCalculator, { pressure: '600 psf', core: '6 in', radius: '5 ft', lift: '4 ft' });
    expect(valueOf(answer, 'tensionPerHeight').us).toEqual({ value: 300, unit: 'lb/ft' });
    expect(valueOf(answer, 'faceTensionPerHeight').us.value).toBe(3000);
    expect(valueOf(answer, 'tension').us).toEqual({ value: 1200, unit: 'lb' });
    expect(answer.notes).toEqual([expect.stringContaining('webs')]);
  });

  it.each([
    { fields: { pressure: '600 psf', core: '6 in', radius: '6 in' }, at: ['/radius'] },
    { fields: { radius: '5 psf' }, at: ['/core', '/pressure', '/radius'] },
  ])('refuses $fields at $at', ({ fields, at }) => expect(pointersOf(hoopTensionCalculator, fields)).toEqual(at));
});

describe('tee', () => {
  /** Decision 9: 400 lb at 600 psf, 6 in, 16 in. en5151-forms Table 5: 9 gauge double 1420 lb. */
  it('force, and ties of 9 gauge wire', () => {
    const answer = answerOf(teeCalculator, { pressure: '600 psf', core: '6 in', courseHeight: '16 in', wireGauge: '9', strands: '2', safetyFactor: '2' });
    expect(valueOf(answer, 'force').us).toEqual({ value: expect.closeTo(400, 8), unit: 'lb' });
    expect(valueOf(answer, 'breakingLoad').us.value).toBeCloseTo(1420, 8);
    expect(valueOf(answer, 'capacity').us.value).toBeCloseTo(710, 8);
    expect(answer.result['ties']).toBe(1);
    expect(answer.trace.map(({ source }) => source)).toContain('en5151-forms Table 5');
  });

  /** 16 gauge: 40 700 psi · π · 0.0625² / 4 = 124.9 lb a strand; two strands at a factor of 2 carry 124.9, and 400 needs four. */
  it('thin wire has no printed load, says so, and four ties carry what three do not', () => {
    const answer = answerOf(teeCalculator, { pressure: '600 psf', core: '6 in', courseHeight: '16 in', wireGauge: 16 });
    expect(valueOf(answer, 'capacity').us.value).toBeCloseTo((40_700 * Math.PI * 0.0625 ** 2) / 4, 6);
    expect(answer.result['ties']).toBe(4);
    expect(answer.notes[0]).toMatch(/^No load of this gauge is printed/);
    expect(answer.defaults).toEqual(['strands: 2', 'safetyFactor: 2 on the breaking load, from memory', 'bar: not stated, no bar counted']);
  });

  /** Z = 0.5³/6 in³, M = 60 000 · Z / 1.67 = 748.5 lb·in = F · (2 · 22 − 6) / 8, F = 157.6 lb: by hand. */
  it('a bar by itself carries less than the force, and the answer says so', () => {
    const answer = answerOf(teeCalculator, { pressure: '600 psf', core: '6 in', courseHeight: '16 in', bar: '#4', webSpacing: '8 in', barYield: '60 ksi' });
    expect(valueOf(answer, 'barForce').us.value).toBeCloseTo(157.58, 2);
    expect(answer.notes).toEqual([expect.stringMatching(/^The bar does not carry/)]);
    expect(answer.result).not.toHaveProperty('ties');
  });

  it.each([
    { fields: { wireGauge: '13', strands: '1.5', bar: '#99' }, at: ['/bar', '/core', '/courseHeight', '/pressure', '/strands', '/wireGauge'] },
    { fields: { pressure: '600 psf', core: '6 in', courseHeight: '16 in', strands: '2' }, at: ['/strands'] },
    { fields: { pressure: '600 psf', core: '6 in', courseHeight: '16 in', webSpacing: '8 in' }, at: ['/webSpacing'] },
    { fields: { pressure: '600 psf', core: '6 in', courseHeight: '16 in', wireGauge: '9', safetyFactor: '0.5' }, at: ['/safetyFactor'] },
  ])('refuses $fields at $at', ({ fields, at }) => expect(pointersOf(teeCalculator, fields)).toEqual(at));
});

describe('uplift', () => {
  /** 600 psf on 4 in of overhang: 200 lb/ft. */
  it('of a taper top that leans out 4 in, along a form of 4 ft', () => {
    const answer = answerOf(upliftCalculator, { pressure: '600 psf', lean: '4 in', length: '4 ft', wireGauge: '9' });
    expect(valueOf(answer, 'forcePerLength').us.value).toBeCloseTo(200, 8);
    expect(valueOf(answer, 'force').us.value).toBeCloseTo(800, 8);
    expect(answer.result['ties']).toBe(2);
  });

  it('by the angle of the face: at 45 degrees it leans out by its height', () => {
    const answer = answerOf(upliftCalculator, { pressure: '30 kPa', lean: '45 deg', height: '400 mm' });
    expect(valueOf(answer, 'forcePerLength').si.value).toBeCloseTo(12, 9);
    expect(answer.defaults).toEqual(['length: 1 m', 'wireGauge: not stated, no wire counted']);
  });

  it.each([
    { fields: { pressure: '600 psf', lean: '45 deg' }, at: ['/height'] },
    { fields: { pressure: '600 psf', lean: '90 deg', height: '1 ft' }, at: ['/lean'] },
    { fields: { pressure: '600 psf', lean: '4 in', height: '1 ft' }, at: ['/height'] },
    { fields: { pressure: '600 psf', lean: '4' }, at: ['/lean'] },
    { fields: { pressure: '600 psf', lean: 4 }, at: ['/lean'] },
  ])('refuses $fields at $at', ({ fields, at }) => expect(pointersOf(upliftCalculator, fields)).toEqual(at));
});

describe('never throws', () => {
  it.each([
    ['bend-thrust', bendThrustCalculator], ['hoop-tension', hoopTensionCalculator], ['tee', teeCalculator], ['uplift', upliftCalculator],
  ])('%s', (_, calculator) => {
    const names = ['pressure', 'core', 'otherCore', 'turn', 'lift', 'radius', 'courseHeight', 'wireGauge', 'strands', 'safetyFactor', 'bar', 'webSpacing', 'lean', 'height', 'length', '__proto__'];
    fc.assert(fc.property(fc.dictionary(fc.constantFrom(...names), fc.anything()), (fields) => {
      const answered = calculator(fields);
      return answered.ok || answered.error.length > 0;
    }));
  });
});
