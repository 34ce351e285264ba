import { describe, expect, it } from '@jest/globals';
import { flexureCalculator } from '../../../src/domain/checks/flexure-calculator.js';
import { answered, refused, si, units, us } from './answered.js';

const answer = (fields: Readonly<Record<string, unknown>>) => answered(flexureCalculator, fields);

describe('flexure calculator', () => {
  /** navfac-dm-2-8 p. 2.08-109: a 1.898 in, 3 800 755 in·lb with a as printed. */
  it('the manual section: 316 729 ft·lb, block 1.898 in, with phi 1', () => {
    const found = answer({ As: '2.20 in2', d: '27.125 in', b: '18 in', fc: '5000 psi', fy: '66 ksi', phi: 1 });
    expect(us(found, 'moment')).toBeCloseTo(3_800_752 / 12, 0);
    expect(us(found, 'a')).toBeCloseTo(1.898, 3);
    expect(units(found, 'moment')).toEqual(['ft·lb', 'kN·m']);
    expect(si(found, 'moment')).toBeCloseTo((us(found, 'moment') * 1.3558179483) / 1000, 6);
    expect(found.notes[0]).toContain('over the 0.9 of ACI 318-14');
  });

  /** retaining-wall-sheet prints 9048. */
  it('#4 at 12 in, d 10.25 in: 9048.5 ft·lb in a foot of wall', () => {
    const found = answer({ bar: '#4', spacing: '12 in', d: '10.25 in', fc: '3000 psi' });
    expect(us(found, 'moment')).toBeCloseTo(9048.5, 1);
    expect(units(found, 'moment')).toEqual(['ft·lb/ft', 'kN·m/m']);
    expect(found.defaults).toEqual(['b: 12 in, a foot of wall', 'fy: 60 ksi (Grade 60)', 'phi: 0.9, by the strain of the bars']);
    expect(found.governs).toBe('tension-controlled');
  });

  it('the same in metric units', () => {
    const metric = answer({ As: '129.032 mm2', d: '260.35 mm', b: '304.8 mm', fc: '20.6842718795 MPa', fy: '413.685437590 MPa', phi: 0.9 });
    expect(us(metric, 'moment')).toBeCloseTo(9048.5, 1);
  });

  it('takes a metric bar by its nominal area', () => {
    expect(si(answer({ bar: '10M', spacing: '400 mm', b: '1 m', d: '75 mm', fc: '20 MPa', fy: '400 MPa' }), 'steel')).toBeCloseTo(250, 6);
  });

  /** aci-318-14 Table 21.2.2, from memory: a 1.0353 in, c 1.2180 in, strain 0.00377 is under 0.004. */
  it('a section whose bars strain less than 0.004 has no answer', () => {
    const found = answer({ As: '0.44 in2', d: '2.75 in', b: '12 in', fc: '2500 psi' });
    expect(found.result).toEqual({});
    expect(found.findings).toMatchObject([{ code: 'outside-method', numbers: { limit: 0.004, side: 'below' } }]);
  });

  /** a 0.9882 in, c 1.1626 in, strain 0.004096: phi 0.65 + 0.25 · (0.004096 − 0.002069) / (0.005 − 0.002069) = 0.823. */
  it('between 0.004 and 0.005 the strength reduction falls', () => {
    const found = answer({ As: '0.42 in2', d: '2.75 in', b: '12 in', fc: '2500 psi' });
    expect(found.governs).toBe('transition');
    expect(found.defaults.at(-1)).toMatch(/^phi: 0\.82/);
  });

  it('bars over 80 ksi have no answer, weak concrete a note', () => {
    expect(answer({ As: '0.2 in2', d: '6 in', b: '12 in', fc: '4000 psi', fy: '100 ksi' }).governs).toBe('outside-method');
    expect(answer({ bar: '#5', spacing: '16 in', d: '10.1875 in', fc: '2000 psi' }).notes.join()).toContain('weaker than the 2500 psi');
  });

  it.each([
    { fields: {}, pointers: ['/As', '/d', '/fc'] },
    { fields: { As: '0.2 in2', d: '6 in', fc: '3000 psi' }, pointers: ['/b'] },
    { fields: { As: '0.2 in2', bar: '#4', spacing: '12 in', d: '6 in', b: '12 in', fc: '3000 psi' }, pointers: ['/bar', '/spacing'] },
    { fields: { bar: '#2', spacing: '12 in', d: '6 in', fc: '3000 psi' }, pointers: ['/bar'] },
    { fields: { bar: '#4', spacing: '12 in', d: '8 psi', fc: '3000' }, pointers: ['/d', '/fc'] },
    { fields: { bar: '#4', spacing: '12 in', d: '-6 in', fc: '3000 psi', phi: 1.2 }, pointers: ['/d', '/phi'] },
    { fields: { bar: '#4', spacing: '12 in', d: '6 in', fc: '3000 psi', width: '12 in' }, pointers: ['/width'] },
  ])('refuses $fields at $pointers', ({ fields, pointers }) => expect(refused(flexureCalculator, fields)).toEqual(pointers));
});
