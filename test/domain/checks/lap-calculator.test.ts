import { describe, expect, it } from '@jest/globals';
import { lapCalculator } from '../../../src/domain/checks/lap-calculator.js';
import { answered, refused, si, us } from './answered.js';

const answer = (fields: Readonly<Record<string, unknown>>) => answered(lapCalculator, fields);

describe('lap calculator', () => {
  /** pci-handbook prints 28 (28.48 to the nearest), class-b-lap-chart 29 (rounded up). */
  it('#4, 3000 psi, Grade 60, Class B: 28.48 in, used as 29 in', () => {
    const found = answer({ method: 'aci-318-simplified', bar: '#4', fc: '3000 psi', fy: '60 ksi', class: 'B', top: false });
    expect(us(found, 'exact')).toBeCloseTo(28.48, 2);
    expect(us(found, 'length')).toBe(29);
    expect(si(found, 'length')).toBeCloseTo(736.6, 9);
    expect(found.defaults).toEqual(['confinement: clear, spacing at least 2 db and cover at least db']);
  });

  it('the same concrete and grade in metric units', () => {
    const found = answer({ method: 'aci-318-simplified', bar: '#4', fc: '20.6842718795 MPa', fy: '413.685437590 MPa' });
    expect(us(found, 'exact')).toBeCloseTo(28.48, 2);
  });

  /** Worked by hand: 21.91 · 1.3 · 1.3 and 21.91 · 1.5. */
  it('top bars and bars standing close lap further; class A less', () => {
    const base = { method: 'aci-318-simplified', bar: '#4', fc: '3000 psi', fy: '60 ksi' };
    expect(us(answer({ ...base, top: true }), 'exact')).toBeCloseTo(37.03, 2);
    expect(us(answer({ ...base, confinement: 'close', class: 'A' }), 'exact')).toBeCloseTo(32.86, 2);
    expect(us(answer({ ...base, class: 'A' }), 'exact')).toBeCloseTo(21.91, 2);
  });

  /** retaining-wall-sheet prints 17.09 in. */
  it('#4 by the general equation with confinement 2.5 is 17.09 in, and more confinement counts no more', () => {
    const base = { method: 'aci-318-general', bar: '#4', fc: '3000 psi', fy: '60 ksi', class: 'B' };
    expect(us(answer({ ...base, confinement: 2.5 }), 'exact')).toBeCloseTo(17.09, 2);
    const over = answer({ ...base, confinement: '4' });
    expect(us(over, 'exact')).toBeCloseTo(17.09, 2);
    expect(over.notes).toContain('Confinement over 2.5 counts as 2.5.');
  });

  it('no lap is shorter than 12 in', () => {
    expect(answer({ method: 'aci-318-general', bar: '#3', fc: '6000 psi', fy: '40 ksi', confinement: 2.5 })).toMatchObject({ governs: 'least-length', result: { exact: { us: { value: 12 } }, length: { us: { value: 12 } } } });
  });

  /** irc-2018 Table R608.5.4(1), read in a public web copy. */
  it.each([
    ['#4', '40 ksi', 20], ['#5', '40 ksi', 25], ['#6', '40 ksi', 30],
    ['#4', '60 ksi', 30], ['#5', '60 ksi', 38], ['#6', '60 ksi', 45],
  ] as const)('irc: %s at %s laps %d in', (bar, fy, inches) => {
    expect(answer({ method: 'irc', bar, fy }).result).toMatchObject({ exact: { us: { value: inches } }, length: { us: { value: inches } } });
  });

  /** 280 and 420 MPa are the metric names of Grades 40 and 60, from memory; 21.909 · 1.3 · 420 / 413.685 by hand. */
  it('metric grades', () => {
    expect([us(answer({ method: 'irc', bar: '#5', fy: '420 MPa' }), 'length'), us(answer({ method: 'irc', bar: '#5', fy: '280 MPa' }), 'length')]).toEqual([38, 25]);
    expect(us(answer({ method: 'aci-318-simplified', bar: '#4', fc: '3000 psi', fy: '420 MPa' }), 'exact')).toBeCloseTo((28.482 * 420) / 413.685, 1);
  });

  it('a table says which fields it did not read', () => {
    const found = answer({ method: 'irc', bar: '#4', fy: '60 ksi', top: true, class: 'B' });
    expect([us(found, 'length'), found.notes.at(-1)]).toEqual([30, 'Not asked for by this table, and not entered: class, top.']);
  });

  /** obc-2024 9.3.1.1.(4). */
  it.each([['10M', 450], ['15M', 650]] as const)('obc: %s laps %d mm', (bar, mm) => expect(si(answer({ method: 'obc', bar }), 'length')).toBe(mm));

  it.each([
    { fields: { method: 'irc', bar: '#7', fy: '60 ksi' }, numbers: { bar: '#7' } },
    { fields: { method: 'irc', bar: '#4', fy: '50 ksi' }, numbers: { yieldPsi: 50_000 } },
    { fields: { method: 'irc', bar: '#4', fc: '2000 psi' }, numbers: { limitPsi: 2500 } },
    { fields: { method: 'obc', bar: '20M' }, numbers: { bar: '20M' } },
    { fields: { method: 'obc', bar: '10M', fy: '300 MPa' }, numbers: { side: 'below' } },
    { fields: { method: 'aci-318-simplified', bar: '15M', fc: '3000 psi' }, numbers: { bar: '15M' } },
    { fields: { method: 'aci-318-general', bar: '#5', fc: '3000 psi', fy: '80 ksi', confinement: 2 }, numbers: { limitPsi: 60_917 } },
  ])('$fields has no answer', ({ fields, numbers }) => {
    expect(answer(fields)).toMatchObject({ result: {}, governs: 'outside-method', findings: [{ code: 'outside-method', numbers }] });
  });

  it.each([
    { fields: {}, pointers: ['/bar', '/method'] },
    { fields: { method: 'aci-318-simplified', bar: '#4' }, pointers: ['/fc'] },
    { fields: { method: 'aci-318-simplified', bar: '#4', fc: '3000 psi', confinement: 2.5 }, pointers: ['/confinement'] },
    { fields: { method: 'aci-318-general', bar: '#4', fc: '3000 psi', confinement: 'clear', class: 'C' }, pointers: ['/class', '/confinement'] },
    { fields: { method: 'aci-318-general', bar: '#4', fc: '3000 ft', top: 'perhaps' }, pointers: ['/fc', '/top'] },
  ])('refuses $fields at $pointers', ({ fields, pointers }) => expect(refused(lapCalculator, fields)).toEqual(pointers));
});
