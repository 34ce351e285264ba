import { describe, expect, it } from '@jest/globals';
import { wallBarsCalculator } from '../../../src/domain/checks/wall-bars-calculator.js';
import { answered, refused, si, us } from './answered.js';

const answer = (fields: Readonly<Record<string, unknown>>) => answered(wallBarsCalculator, fields);
const BASEMENT = { nominal: '8 in', height: '9 ft', backfill: '8 ft', soil: 'GW' };

/** irc-2018 Table R404.1.2(8), a public transcription. */
describe('wall-bars: basement walls', () => {
  it('8 in, 9 ft, 8 ft of gravel: #5 @ 41, and the rule beside it', () => {
    const found = answer(BASEMENT);
    expect(found).toMatchObject({
      result: { cell: '#5 @ 41', bar: '#5', spacing: { us: { value: 41, unit: 'in' }, si: { value: 1041.4, unit: 'mm' } }, status: 'found', table: 'R404.1.2(8)', strengthRule: '#5 @ 41', edition: 'irc-2021' },
      governs: 'table', source: 'irc-2021 Table R404.1.2(8)', findings: [],
    });
    expect(found.result['horizontal']).toMatch(/^3 × #4/);
    expect(found.defaults).toEqual(['edition: irc-2021', 'family: flat', 'position: inside-face, 1 1/4 in from the inside of the concrete; at the center the tables ask for more']);
  });

  it('the same asked in metres and by lateral load', () => {
    expect(answer({ nominal: '203.2 mm', height: '2.7432 m', backfill: '2.4384 m', soil: '30 psf/ft' }).result['cell']).toBe('#5 @ 41');
  });

  it('bars at the center: the cell is from memory and says so', () => {
    const found = answer({ ...BASEMENT, position: 'center' });
    expect(found).toMatchObject({ result: { cell: '#6 @ 36', status: 'from memory', strengthRule: '#6 @ 36' }, source: 'irc-2018 Table R404.1.2(3), from memory' });
    expect(found.notes[0]).toContain('from memory');
  });

  it('between rows the next one up is taken, and said', () => {
    const found = answer({ ...BASEMENT, height: '8 ft 6 in', backfill: '7 ft 6 in', soil: '40 psf/ft' });
    expect(found.result['cell']).toBe('#6 @ 38');
    expect(found.notes).toContain('Nothing lies between rows: the row of a 9 ft wall with 8 ft of backfill and 45 psf/ft is taken.');
  });

  it('a 6 in wall with stay-in-place forms takes #4 @ 48 where the table asks for none', () => {
    expect(answer({ nominal: '6 in', height: '8 ft', backfill: '4 ft', soil: 'SM' })).toMatchObject({ result: { cell: 'NR', bar: '#4', spacing: { us: { value: 48 } } }, governs: 'stay-in-place-minimum' });
    const thick = answer({ nominal: '10 in', height: '8 ft', backfill: '4 ft', soil: 'SM' });
    expect(thick).toMatchObject({ result: { cell: 'NR', bar: 'none', strengthRule: 'NR' }, governs: 'table' });
    expect(thick.result['spacing']).toBeUndefined();
  });

  it('the disputed cell is said to be', () => {
    const found = answer({ nominal: '8 in', height: '9 ft', backfill: '6 ft', soil: 'CL' });
    expect(found.result['cell']).toBe('#6 @ 39');
    expect(found.notes.join()).toContain('disputed');
  });

  it('design required is a hold with the cell and without bars', () => {
    const found = answer({ nominal: '6 in', height: '10 ft', backfill: '9 ft', soil: 'CL' });
    expect(found).toMatchObject({ result: { cell: 'DR' }, governs: 'design-required', findings: [{ code: 'wall-beyond-tables', severity: 'hold' }] });
    expect(found.result['bar']).toBeUndefined();
  });

  /** Table R404.1.2(5), from memory. */
  it('a waffle of 6 in, from memory', () => {
    expect(answer({ nominal: '6 in', family: 'waffle-grid', height: '8 ft', backfill: '8 ft', soil: 'GP' }).result).toMatchObject({ cell: '#6 @ 32', status: 'from memory', strengthRule: '#6 @ 32' });
  });

  /** irc-2018 Table R608.5.4(2), row 41 → #4 Gr 60: round(41 · 0.20 / 0.31) = 26; worked, row not read. */
  it('another bar and grade in its place', () => {
    const found = answer({ ...BASEMENT, alternateBar: '#4' });
    expect([found.result['alternateBar'], us(found, 'alternateSpacing')]).toEqual(['#4', 26]);
    expect(found.notes.join()).toContain('was not read');
    expect(us(answer({ ...BASEMENT, nominal: '6 in', soil: 'CL', alternateBar: '#5', alternateGrade: '40 ksi' }), 'alternateSpacing')).toBe(11);
    expect(answer({ ...BASEMENT, alternateBar: '#7' }).findings).toMatchObject([{ code: 'outside-method' }]);
    expect(answer({ ...BASEMENT, family: 'waffle-grid', alternateBar: '#4' }).findings).toMatchObject([{ code: 'outside-method', numbers: { limit: 'flat walls with at least 4 ft of backfill' } }]);
  });

  it.each([
    { fields: { height: '10 ft 1 in' }, code: 'wall-beyond-tables' },
    { fields: { nominal: '9 in' }, code: 'wall-beyond-tables' },
    { fields: { nominal: '10 in', family: 'waffle-grid' }, code: 'wall-beyond-tables' },
    { fields: { nominal: '12 in', position: 'center' }, code: 'wall-beyond-tables' },
    { fields: { height: '8 ft', backfill: '8 ft 1 in' }, code: 'backfill-beyond-tables' },
    { fields: { nominal: '6 in', family: 'screen-grid', height: '10 ft', backfill: '9 ft' }, code: 'backfill-beyond-tables' },
    { fields: { soil: 'MH' }, code: 'soil-not-listed' },
    { fields: { soil: '85 psf/ft' }, code: 'soil-not-listed' },
  ])('$fields is $code, and no bars', ({ fields, code }) => {
    expect(answer({ ...BASEMENT, ...fields })).toMatchObject({ result: {}, governs: code, findings: [{ code, severity: 'hold' }] });
  });
});

/** irc-2018 Table R608.6(1), a public web copy. */
describe('wall-bars: walls above grade', () => {
  const WIND = { nominal: '4 in', height: '9 ft', wind: '130 mph', exposure: 'B', bearing: 'top' };

  it('4 in, 9 ft, 130 mph in B, top bearing: #4 @ 39', () => {
    expect(answer(WIND)).toMatchObject({ result: { cell: '#4 @ 39', table: 'R608.6(1)', status: 'found' }, findings: [] });
    expect(answer({ ...WIND, wind: '58.115 m/s' }).result['cell']).toBe('#4 @ 39');
  });

  it('side bearing is assumed, being no lighter', () => {
    const found = answer({ nominal: '4 in', height: '9 ft', wind: '130 mph', exposure: 'B' });
    expect(found.result['cell']).toBe('#4 @ 34');
    expect(found.defaults.join()).toContain('bearing: side');
  });

  it('a waffle is from memory', () => {
    expect(answer({ ...WIND, nominal: '6 in', family: 'waffle-grid', bearing: 'side' }).result).toMatchObject({ cell: '#5 @ 37', status: 'from memory' });
  });

  it.each([
    { fields: { wind: '161 mph' }, code: 'site-beyond-method' },
    { fields: { exposure: 'D', wind: '126 mph' }, code: 'site-beyond-method' },
    { fields: { nominal: '6 in', wind: '160 mph' }, code: 'wall-beyond-tables' },
    { fields: { height: '11 ft' }, code: 'wall-beyond-tables' },
    { fields: { nominal: '6 in', family: 'screen-grid' }, code: 'wall-beyond-tables' },
  ])('$fields is $code, and no bars', ({ fields, code }) => expect(answer({ ...WIND, ...fields })).toMatchObject({ result: {}, findings: [{ code, severity: 'hold' }] }));
});

/** obc-2024 Tables 9.15.4.5.-A to -C and 9.20.17. */
describe('wall-bars: the metric code', () => {
  it('190 mm, 2.75 m, 2.3 m of ground: 10M @ 300', () => {
    const found = answer({ edition: 'obc-2024', nominal: '190 mm', height: '2.75 m', backfill: '2.3 m' });
    expect(found.result).toMatchObject({ cell: '10M @ 300', bar: '10M', status: 'found' });
    expect(si(found, 'spacing')).toBe(300);
  });

  it('above grade 10M @ 400, whatever the wind', () => {
    const found = answer({ edition: 'obc-2024', nominal: '150 mm', height: '2.7 m', wind: '40 m/s' });
    expect(found.result).toMatchObject({ cell: '10M @ 400' });
    expect(found.notes[0]).toContain('wind');
  });

  it.each([
    { fields: { nominal: '200 mm', backfill: '2 m' }, code: 'wall-beyond-tables' },
    { fields: { nominal: '150 mm', height: '3.1 m', backfill: '2 m' }, code: 'wall-beyond-tables' },
    { fields: { nominal: '190 mm', height: '2.4 m', backfill: '2.3 m' }, code: 'backfill-beyond-tables' },
    { fields: { nominal: '130 mm' }, code: 'wall-beyond-tables' },
    { fields: { nominal: '150 mm', family: 'screen-grid', backfill: '2 m' }, code: 'wall-beyond-tables' },
  ])('$fields is $code', ({ fields, code }) => expect(answer({ edition: 'obc-2024', height: '2.7 m', ...fields })).toMatchObject({ result: {}, findings: [{ code }] }));
});

describe('wall-bars: bad input', () => {
  it.each([
    { fields: {}, pointers: ['/backfill', '/height', '/nominal'] },
    { fields: { ...BASEMENT, height: '8 psi' }, pointers: ['/height'] },
    { fields: { ...BASEMENT, soil: 'clay' }, pointers: ['/soil'] },
    { fields: { ...BASEMENT, wind: '115 mph', bearing: 'top' }, pointers: ['/bearing', '/wind'] },
    { fields: { ...BASEMENT, family: 'waffle-grid', position: 'inside-face' }, pointers: ['/position'] },
    { fields: { ...BASEMENT, edition: 'irc-1998', alternateBar: '#2' }, pointers: ['/alternateBar', '/edition'] },
    { fields: { nominal: '6 in', height: '9 ft', wind: '115 mph', exposure: 'A' }, pointers: ['/exposure'] },
    { fields: { ...BASEMENT, edition: 'obc-2024', alternateBar: '#4' }, pointers: ['/alternateBar'] },
  ])('refuses $fields at $pointers', ({ fields, pointers }) => expect(refused(wallBarsCalculator, fields)).toEqual(pointers));
});
