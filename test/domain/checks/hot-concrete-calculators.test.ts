import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { concreteTemperatureCalculator } from '../../../src/domain/checks/concrete-temperature-calculator.js';
import { evaporationCalculator } from '../../../src/domain/checks/evaporation-calculator.js';
import { answerOf, pointersOf, valueOf } from './asked.js';

const E1 = { air: '80 F', concrete: '87 F', humidity: '50 %', wind: '12 mph' };

describe('evaporation', () => {
  /** E1: the chart's example, about 0.25 lb/ft2/h (found, second hand); 0.2435 by the equation (computed); threshold 0.2 (found). */
  it('of the chart\'s example is over the threshold', () => {
    const answer = answerOf(evaporationCalculator, E1);
    expect(valueOf(answer, 'rate').us.value.toFixed(4)).toBe('0.2435');
    expect(valueOf(answer, 'threshold').us).toEqual({ value: 0.2, unit: 'lb/ft2/h' });
    expect(answer).toMatchObject({ result: { precautions: 'needed' }, governs: 'over-threshold', defaults: ['lowBleed: no'], findings: [] });
  });

  /** E1 in SI: 1.2 kg/m2/h (found, second hand), 1.152 by the SI equation (computed); threshold 1.0 (found). */
  it('asked in SI it is answered by the SI equation and threshold', () => {
    const answer = answerOf(evaporationCalculator, { air: '27 C', concrete: '31 C', humidity: '50 %', wind: '19 km/h' });
    expect(valueOf(answer, 'rate').si.value.toFixed(1)).toBe('1.2');
    expect(valueOf(answer, 'threshold').si).toEqual({ value: 1, unit: 'kg/m2/h' });
    expect(answer.trace[0]).toMatchObject({ unit: 'kg/m2/h', source: 'uno-1998 SI' });
  });

  it('humidity as a number, as text or in percent is the same', () => {
    const rate = (humidity: unknown) => valueOf(answerOf(evaporationCalculator, { ...E1, humidity }), 'rate');
    expect([rate(0.5), rate('0.5')]).toEqual([rate('50 %'), rate('50 %')]);
    expect(pointersOf(evaporationCalculator, { ...E1, humidity: 50 })).toEqual(['/humidity']);
  });

  it('half the threshold for mixes that bleed little', () => {
    const answer = answerOf(evaporationCalculator, { air: '27 C', concrete: '31 C', humidity: '0.5', wind: '19 km/h', lowBleed: 'yes' });
    expect(valueOf(answer, 'rate').si.value.toFixed(3)).toBe('1.152');
    expect(valueOf(answer, 'rate').us.value).toBeCloseTo(valueOf(answer, 'rate').si.value * 0.2048161, 6);
    expect(valueOf(answer, 'threshold').si).toEqual({ value: 0.5, unit: 'kg/m2/h' });
  });

  it('where water condenses nothing evaporates, and the answer says so', () => {
    const answer = answerOf(evaporationCalculator, { air: '95 F', concrete: '50 F', humidity: '90 %', wind: '10 mph' });
    expect(valueOf(answer, 'rate').us.value).toBe(0);
    expect(answer).toMatchObject({ governs: 'condensation', result: { precautions: 'not needed' } });
    expect(answer.trace[0]?.value).toBeLessThan(0);
  });

  it.each([
    { changes: { air: '30 F' }, numbers: { airF: 30, limitF: 40, side: 'below' } },
    { changes: { concrete: '110 F' }, numbers: { concreteF: 110, limitF: 104, side: 'above' } },
    { changes: { wind: '30 mph' }, numbers: { windMps: 13.4112, limitMps: 11.176, side: 'above' } },
  ])('off the chart, $changes, no number', ({ changes, numbers }) => {
    const answer = answerOf(evaporationCalculator, { ...E1, ...changes });
    expect(answer).toMatchObject({ result: {}, governs: 'outside-method', findings: [{ code: 'outside-method', numbers }] });
  });

  it.each([
    { fields: {}, at: ['/air', '/concrete', '/humidity', '/wind'] },
    { fields: { ...E1, air: '80', humidity: '150 %', wind: '12 F' }, at: ['/air', '/humidity', '/wind'] },
    { fields: { ...E1, lowBleed: 'perhaps' }, at: ['/lowBleed'] },
  ])('refuses $fields at $at', ({ fields, at }) => expect(pointersOf(evaporationCalculator, fields)).toEqual(at));
});

const T1 = { aggregate: '1828.2 kg', aggregateTemperature: '37 C', cement: '360 kg', cementTemperature: '40 C', water: '122.8 kg', waterTemperature: '30 C', ice: '50 kg' };

describe('concrete-temperature', () => {
  /** T1, ice-and-mix-blog, found: 27 C. */
  it('T1 of the page, with ice', () => {
    const answer = answerOf(concreteTemperatureCalculator, T1);
    expect(valueOf(answer, 'temperature').si.value.toFixed(0)).toBe('27');
    expect(answer).toMatchObject({ governs: 'with-ice', defaults: ['freeWater: none'], findings: [] });
    expect(answer.notes).toEqual([expect.stringMatching(/haul/), expect.stringMatching(/fifth/)]);
  });

  it('asked in pounds and Fahrenheit it is the same', () => {
    const us = answerOf(concreteTemperatureCalculator, { aggregate: '4030.49 lb', aggregateTemperature: '98.6 F', cement: '793.664 lb', cementTemperature: '104 F', water: '270.728 lb', waterTemperature: '86 F', ice: '110.2311 lb' });
    expect(valueOf(us, 'temperature').si.value).toBeCloseTo(valueOf(answerOf(concreteTemperatureCalculator, T1), 'temperature').si.value, 3);
    expect(us.trace[0]?.substituted).toContain('112');
  });

  it('too hot is told: aci-305-1-14 §3.3, 95 F', () => {
    const answer = answerOf(concreteTemperatureCalculator, { ...T1, ice: '0 kg', aggregateTemperature: '45 C' });
    expect(answer.notes).toEqual([expect.stringMatching(/haul/), expect.stringMatching(/^Over 95 F/)]);
  });

  it('a mix that would freeze has no number', () => {
    expect(answerOf(concreteTemperatureCalculator, { ...T1, ice: '400 kg' })).toMatchObject({ result: {}, governs: 'outside-method', findings: [{ numbers: { limitF: 32 } }] });
  });

  it.each([
    { fields: {}, at: ['/aggregate', '/aggregateTemperature', '/cement', '/cementTemperature', '/water', '/waterTemperature'] },
    { fields: { ...T1, ice: '50 kN', water: '-1 kg', waterTemperature: '-5 C' }, at: ['/ice', '/water', '/waterTemperature'] },
  ])('refuses $fields at $at', ({ fields, at }) => expect(pointersOf(concreteTemperatureCalculator, fields)).toEqual(at));
});

describe('never throws', () => {
  it.each([['evaporation', evaporationCalculator], ['concrete-temperature', concreteTemperatureCalculator]])('%s', (_, calculator) => {
    const names = ['air', 'concrete', 'humidity', 'wind', 'lowBleed', ...Object.keys(T1), 'freeWater'];
    fc.assert(fc.property(fc.dictionary(fc.constantFrom(...names), fc.anything()), (fields) => {
      const answered = calculator(fields);
      return answered.ok || answered.error.length > 0;
    }));
  });
});
