import { describe, expect, it } from '@jest/globals';
import { lintelCalculator } from '../../../src/domain/checks/lintel-calculator.js';
import { answered, refused, si, us } from './answered.js';

const answer = (fields: Readonly<Record<string, unknown>>) => answered(lintelCalculator, fields);
const LINTEL = { span: '6 ft', core: '6 in', depth: '16 in', loads: '1500 lb/ft', fc: '3000 psi', fy: '60 ksi' };

/** Worked by hand by aci-318-14 (formulas held in test/published/aci-318.test.ts); the combinations are from memory. */
describe('lintel by ACI 318', () => {
  it('1500 lb/ft over 6 ft: 6750 ft·lb and 4500 lb; 1-#4 carries 12 134 ft·lb; least stirrups at 6 in', () => {
    const found = answer(LINTEL);
    expect([us(found, 'moment'), us(found, 'shear'), found.result['bars'], found.result['stirrups']]).toEqual([6750, 4500, '1-#4', '#3 @ 6']);
    expect(us(found, 'd')).toBeCloseTo(13.875, 9);
    expect(us(found, 'strength')).toBeCloseTo((0.9 * 0.2 * 60_000 * (13.875 - 0.7843137 / 2)) / 12, 2);
    expect(found.governs).toBe('stirrups-least');
    expect(found.notes.join()).toContain('taken as factored');
  });

  it('6000 lb/ft: 27 000 ft·lb and 18 000 lb; 1-#7; d / 2 rounds the stirrups down to 6 in', () => {
    const found = answer({ ...LINTEL, loads: '6000 lb/ft' });
    expect([us(found, 'moment'), us(found, 'shear'), found.result['bars'], found.result['stirrups'], found.governs]).toEqual([27_000, 18_000, '1-#7', '#3 @ 6', 'stirrups-shear']);
  });

  /** Vu 1000 lb is under half of φVc = 6840 lb. */
  it('a light load takes no stirrups, and the newer edition is named', () => {
    const found = answer({ ...LINTEL, span: '4 ft', loads: '500 lb/ft' });
    expect(found.result).toMatchObject({ bars: '1-#4', stirrups: 'none' });
    expect(found.notes.join()).toContain('2019');
  });

  /** Own weight 150 · 6 · 16 / 144 = 100; D 500, L 300, S 200: 1.2 · 500 + 1.6 · 200 + 300 = 1220. */
  it('a load that is not given is listed as none', () => {
    expect(answer({ ...LINTEL, loads: { dead: '400 lb/ft' } }).defaults).toEqual(expect.arrayContaining(['loads, live: none', 'loads, snow: none']));
  });

  it('loads as they are: own weight added, factored', () => {
    const found = answer({ ...LINTEL, loads: { dead: '400 lb/ft', live: '300 lb/ft', snow: '200 lb/ft' } });
    expect(us(found, 'moment')).toBeCloseTo((1220 * 36) / 8, 9);
    expect(found.trace.slice(0, 2).map(({ value }) => value)).toEqual([100, 1220]);
  });

  it('the same in metric units', () => {
    const found = answer({ span: '1.8288 m', core: '152.4 mm', depth: '406.4 mm', loads: '21.89085 kN/m', fc: '20.684272 MPa', fy: '413.68544 MPa' });
    expect(us(found, 'moment')).toBeCloseTo(6750, 1);
    expect(si(found, 'moment')).toBeCloseTo(9.1518, 3);
    expect(found.result['bars']).toBe('1-#4');
  });

  it('what no bars carry is a hold, with the forces', () => {
    const found = answer({ ...LINTEL, span: '18 ft', depth: '8 in', loads: '3000 lb/ft' });
    expect(found).toMatchObject({ governs: 'opening-too-wide', findings: [{ code: 'opening-too-wide', severity: 'hold', numbers: { spanFt: 18 } }] });
    expect(found.result['bars']).toBeUndefined();
    expect(us(found, 'moment')).toBe((3000 * 18 ** 2) / 8);
  });

  it('bars over 80 ksi have no answer', () => expect(answer({ ...LINTEL, fy: '100 ksi' })).toMatchObject({ result: {}, governs: 'outside-method' }));
});

/** obc-2024 Tables 9.20.17.4.-A to -C. */
describe('lintel by the metric code', () => {
  const OBC = { method: 'obc-2024', span: '1.5 m', core: '140 mm', depth: '300 mm', supports: 'roof', snow: '3.33 kPa' };

  it('1.50 m under a roof with 3.33 kPa: 1-10M just reaches, with stirrups', () => {
    expect(answer(OBC)).toMatchObject({ result: { bars: '1-10M', stirrups: '10M @ d/2', status: 'found', longestSpan: { si: { value: 1500, unit: 'mm' } } }, findings: [] });
  });

  it('a wider opening takes the next bars, from memory and said', () => {
    const found = answer({ ...OBC, span: '2 m' });
    expect(found.result).toMatchObject({ bars: '1-15M', status: 'from memory' });
    expect(found.notes[0]).toContain('from memory');
  });

  it.each([
    { fields: { span: '3 m' }, numbers: { spanM: 3, limitM: 2.18 } },
    { fields: { core: '170 mm' }, numbers: { coreMm: 170 } },
    { fields: { snow: '4 kPa' }, numbers: { snowKpa: 4 } },
    { fields: { depth: '180 mm' }, numbers: { depthMm: 180 } },
  ])('$fields is beyond the tables', ({ fields, numbers }) => expect(answer({ ...OBC, ...fields })).toMatchObject({ result: {}, findings: [{ code: 'opening-too-wide', numbers }] }));
});

describe('lintel: bad input', () => {
  it.each([
    { fields: {}, pointers: ['/core', '/depth', '/fc', '/loads', '/span'] },
    { fields: { ...LINTEL, loads: '1500 psf' }, pointers: ['/loads'] },
    { fields: { ...LINTEL, loads: {} }, pointers: ['/loads'] },
    { fields: { ...LINTEL, loads: { dead: '-4 lb/ft', wind: '3 lb/ft' } }, pointers: ['/loads/dead', '/loads/wind'] },
    { fields: { ...LINTEL, snow: '1.5 kPa', cover: '7 in' }, pointers: ['/cover', '/snow'] },
    { fields: { ...LINTEL, method: 'guess', span: '8 psi' }, pointers: ['/method', '/span'] },
    { fields: { method: 'obc-2024', span: '1 m', core: '140 mm', depth: '300 mm' }, pointers: ['/snow', '/supports'] },
  ])('refuses $fields at $pointers', ({ fields, pointers }) => expect(refused(lintelCalculator, fields)).toEqual(pointers));
});
