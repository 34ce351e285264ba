import { describe, expect, it } from '@jest/globals';
import { heightStackCalculator } from '../../../src/domain/checks/height-stack-calculator.js';
import type { CalculatorAnswer } from '../../../src/domain/checks/calculator-answer.js';

type Fields = Readonly<Record<string, unknown>>;

function answer(fields: Fields): CalculatorAnswer {
  const answered = heightStackCalculator(fields);
  if (!answered.ok) throw new Error(JSON.stringify(answered.error));
  return answered.value;
}

const inches = (value: number) => ({ us: { value, unit: 'in' }, si: { value: Number((value * 25.4).toPrecision(12)), unit: 'mm' } });

/** Worked figures: decision 11 of the project. */
describe('height-stack calculator', () => {
  it('96 in are six plain courses of 16 in, and says what it assumed', () => {
    expect(answer({ height: "8'-0\"" })).toMatchObject({
      result: { courses: 6, strips: 0, ripped: 'none', height: inches(96), deviation: inches(0) },
      governs: 'courses',
      defaults: [
        'courseHeight: 16 in (form range HERON-16)', 'stripHeight: 3 in (form range HERON-16)', 'tolerance: 1/4 in (common practice)',
        'minRip: 8 in (common practice)', 'prefers: rip (common practice)',
      ],
      findings: [],
    });
  });

  it('6 courses and 4 strips of 3 in are 108 in exactly; where a rip is preferred the seventh course is ripped to 12 in', () => {
    expect(answer({ height: '108 in', prefers: 'strips' })).toMatchObject({ result: { courses: 6, strips: 4, ripped: 'none', height: inches(108), deviation: inches(0) }, governs: 'strips', findings: [] });
    expect(answer({ height: '108 in' })).toMatchObject({
      result: { courses: 7, strips: 0, ripped: inches(12), deviation: inches(0) }, governs: 'rip', findings: [{ code: 'height-ripped', numbers: { askedMm: 2743.2, rippedMm: 304.8 } }],
    });
  });

  it('with strips of 3 3/8 in and no rip, 6 + 4 = 109 1/2 in is nearest and 6 + 3 = 106 1/8 in is next', () => {
    const found = answer({ height: '108 in', stripHeight: '3 3/8 in', minRip: '15 in' });
    expect(found).toMatchObject({
      result: { courses: 6, strips: 4, height: inches(109.5), deviation: inches(1.5) }, governs: 'nearest',
      findings: [{ code: 'height-not-coursed', severity: 'advise', numbers: { askedMm: 2743.2, stackMm: 2781.3, deviationMm: 38.1 } }],
    });
    expect((found.result['alternatives'] as readonly unknown[])[0]).toMatchObject({ courses: 6, strips: 3, height: inches(106.125), deviation: inches(-1.875) });
  });

  it('without strips there are courses and rips alone, also in millimetres', () => {
    const { result } = answer({ height: '2.7 m', courseHeight: '300 mm', stripHeight: 'none', minRip: '100 mm' });
    expect(result).toMatchObject({ courses: 9, strips: 0, ripped: 'none', deviation: inches(0) });
    for (const each of result['alternatives'] as readonly { strips: number }[]) expect(each.strips).toBe(0);
  });

  it('a tolerance lets a plain stack stand for a height a little off', () => {
    expect(answer({ height: '97 in', tolerance: '1 in' })).toMatchObject({ result: { courses: 6, deviation: inches(-1) }, governs: 'courses', findings: [] });
  });

  it.each([
    { fields: {}, pointer: '/height' },
    { fields: { height: '108' }, pointer: '/height' },
    { fields: { height: '0 ft' }, pointer: '/height' },
    { fields: { height: '101 ft' }, pointer: '/height' },
    { fields: { height: '9 ft', courseHeight: '3 in' }, pointer: '/courseHeight' },
    { fields: { height: '9 ft', minRip: '16 in' }, pointer: '/minRip' },
    { fields: { height: '9 ft', stripHeight: '16 in' }, pointer: '/stripHeight' },
    { fields: { height: '9 ft', tolerance: '2 ft' }, pointer: '/tolerance' },
    { fields: { height: '9 ft', prefers: 'foam' }, pointer: '/prefers' },
    { fields: { height: '9 ft', courses: 6 }, pointer: '/courses' },
  ])('refuses $fields at $pointer', ({ fields, pointer }) => {
    const answered = heightStackCalculator(fields);
    expect(answered.ok ? [] : answered.error.map((error) => error.pointer)).toEqual([pointer]);
  });
});
