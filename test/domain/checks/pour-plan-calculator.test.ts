import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { formPressureCalculator } from '../../../src/domain/checks/form-pressure-calculator.js';
import { pourPlanCalculator } from '../../../src/domain/checks/pour-plan-calculator.js';
import { answerOf, pointersOf, valueOf } from './asked.js';

const PLAN = { planArea: '80 ft2', lift: '4 ft', pump: '6 yd3/h', truck: '10 yd3' };

describe('pour-plan', () => {
  /** A3, en5466a p. 3-13, found: 162 ft3/h (6 yd3/h) on 80 ft2 rise 2.03 ft/h (2.025 unrounded). */
  it('rate, volume, time and trucks of a lift', () => {
    const answer = answerOf(pourPlanCalculator, PLAN);
    expect(valueOf(answer, 'rise').us.value).toBeCloseTo(2.025, 10);
    expect(valueOf(answer, 'volume').us.value).toBeCloseTo(320 / 27, 10);
    expect(valueOf(answer, 'time').us.value).toBeCloseTo(320 / 162, 10);
    expect(answer.result['trucks']).toBe(2);
    expect(valueOf(answer, 'leastPressure').us.value).toBeCloseTo(600, 9);
    expect(answer.result).not.toHaveProperty('pressure');
    expect(answer.defaults).toEqual([
      'edition: astm-c94-21', 'dischargeLimit: not stated, and astm-c94-21 sets none', 'unitWeight: 150 pcf', 'height and concrete: not stated, only the least pressure is told',
    ]);
  });

  /** engineering-forum-pours, found: 40 ft of 12 in, 10 ft high, are 14.8 yd3 and two trucks; at 5 ft/h two hours. */
  it('by length and core', () => {
    const answer = answerOf(pourPlanCalculator, { length: '40 ft', core: '12 in', lift: '10 ft', pump: `${(200 / 27).toFixed(9)} yd3/h`, truck: '10 yd3' });
    expect(valueOf(answer, 'volume').us.value.toFixed(1)).toBe('14.8');
    expect(answer.result['trucks']).toBe(2);
    expect(valueOf(answer, 'time').us.value).toBeCloseTo(2, 7);
    expect(valueOf(answer, 'rise').us.value).toBeCloseTo(5, 7);
  });

  /** Decision 29: a 5 ft lift is 750 psf where the standard's floor says 600. */
  it('pressure is never below unit weight times lift', () => {
    const answer = answerOf(pourPlanCalculator, { ...PLAN, lift: '5 ft', height: '10 ft', concrete: '70 F' });
    expect(valueOf(answer, 'pressure').us.value).toBeCloseTo(750, 9);
    expect(answer.governs).toBe('lift-height');
    const low = answerOf(pourPlanCalculator, { ...PLAN, lift: '3 ft', height: '10 ft', concrete: '70 F' });
    expect(valueOf(low, 'pressure').us.value).toBeCloseTo(600, 9);
    expect(low.governs).toBe('minimum');
  });

  it('above that it is the pressure of the bare calculator at this rate, in either system', () => {
    const us = answerOf(pourPlanCalculator, { ...PLAN, pump: '18 yd3/h', height: '12 ft', concrete: '70 F' });
    const bare = answerOf(formPressureCalculator, { rise: '6.075 ft/h', height: '12 ft', concrete: '70 F' });
    expect(valueOf(us, 'pressure').us.value).toBeCloseTo(valueOf(bare, 'pressure').us.value, 8);
    const si = answerOf(pourPlanCalculator, { planArea: '10 m2', lift: '1 m', pump: '20 m3/h', truck: '8 m3', height: '3 m', concrete: '20 C' });
    const bareSi = answerOf(formPressureCalculator, { rise: '2 m/h', height: '3 m', concrete: '20 C' });
    expect(valueOf(si, 'pressure')).toEqual(valueOf(bareSi, 'pressure'));
    expect(si.defaults).toContain('unitWeight: 2400 kg/m3');
  });

  it('outside the method there is no pressure, and the lift is still counted', () => {
    const answer = answerOf(pourPlanCalculator, { ...PLAN, height: '10 ft', concrete: '20 F' });
    expect(answer).toMatchObject({ governs: 'outside-method', findings: [{ code: 'outside-method' }], result: { trucks: 2 } });
    expect(answer.result).not.toHaveProperty('pressure');
  });

  /** hold-the-deliveries quoting C94 §10.7, found: 1.5 h; 10 yd3 at 6 yd3/h take 1.667 h, at 20 half an hour. */
  it('a truck that takes longer to empty than its concrete may be used is told', () => {
    const answer = answerOf(pourPlanCalculator, { ...PLAN, edition: 'astm-c94-before-2021' });
    expect(answer.governs).toBe('discharge-limit');
    expect(answer.notes[0]).toMatch(/^Emptying one truck takes longer than the 1\.5 h/);
    const fast = answerOf(pourPlanCalculator, { ...PLAN, pump: '20 yd3/h', edition: 'ASTM-C94-before-2021' });
    expect(valueOf(fast, 'truckTime').us.value).toBe(0.5);
    expect(valueOf(fast, 'haulTime').us.value).toBe(1);
    expect(valueOf(answerOf(pourPlanCalculator, { ...PLAN, pump: '20 yd3/h', dischargeLimit: '2 h' }), 'haulTime').us.value).toBe(1.5);
  });

  it('lifts add up: half the lift is half the time and half the concrete', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 500 }), fc.integer({ min: 5, max: 100 }), (area, pump) => {
        const ask = (lift: string) => answerOf(pourPlanCalculator, { ...PLAN, planArea: `${area} ft2`, pump: `${pump} yd3/h`, lift });
        expect(2 * valueOf(ask('2 ft'), 'time').us.value).toBeCloseTo(valueOf(ask('4 ft'), 'time').us.value, 9);
        expect(2 * valueOf(ask('2 ft'), 'volume').si.value).toBeCloseTo(valueOf(ask('4 ft'), 'volume').si.value, 8);
      }),
      { numRuns: 30 },
    );
  });

  it.each([
    { fields: {}, at: ['/lift', '/planArea', '/pump', '/truck'] },
    { fields: { ...PLAN, length: '40 ft' }, at: ['/length'] },
    { fields: { ...PLAN, height: '3 ft', concrete: '70 F' }, at: ['/lift'] },
    { fields: { ...PLAN, height: '10 ft' }, at: ['/concrete'] },
    { fields: { ...PLAN, planArea: '80 ft', pump: '6 yd3', truck: '0 yd3', edition: '1999' }, at: ['/edition', '/planArea', '/pump', '/truck'] },
    { fields: { ...PLAN, dischargeLimit: '90' }, at: ['/dischargeLimit'] },
  ])('refuses $fields at $at', ({ fields, at }) => expect(pointersOf(pourPlanCalculator, fields)).toEqual(at));

  it('never throws', () => {
    const names = [...Object.keys(PLAN), 'length', 'core', 'dischargeLimit', 'edition', 'height', 'concrete', 'unitWeight', 'cement', 'slump', 'method'];
    fc.assert(fc.property(fc.dictionary(fc.constantFrom(...names), fc.anything()), (fields) => {
      const answered = pourPlanCalculator(fields);
      return answered.ok || answered.error.length > 0;
    }));
  });
});
