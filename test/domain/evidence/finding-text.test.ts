import { describe, expect, it } from '@jest/globals';
import { SEVERITY, finding, type FindingCode } from '../../../src/domain/evidence/finding.js';
import { findingPlaceText, findingText } from '../../../src/domain/evidence/finding-text.js';
import { lengthWords } from '../../../src/domain/evidence/length-words.js';
import { numberWords } from '../../../src/domain/evidence/number-words.js';

const codes = Object.keys(SEVERITY) as FindingCode[];

describe('findingText', () => {
  it.each(codes)('%s is one sentence with all its numbers', (code) => {
    const text = findingText(finding(code, { numbers: { turnDeg: 67.5, lengthMm: 304.8, core: '6' } }));
    expect(text).toMatch(/^[A-Z].+: turn 67\.5°, length 1'-0", core 6\.$/);
    expect(text).not.toMatch(/undefined|null|NaN|[a-z][A-Z]/);
    expect(findingText(finding(code))).toMatch(/^[A-Z][^:]*\.$|^[A-Z].*:.*\.$/);
  });

  it('no two codes read alike', () => {
    expect(new Set(codes.map((code) => findingText(finding(code)))).size).toBe(codes.length);
  });

  it('says what presses, what is allowed and how fast it may go', () => {
    const numbers = { core: '6', pressurePsf: 921.43, ratedPsf: 750, riseFtPerH: 6, riseLimitFtPerH: 4.6667 };
    const found = finding('pressure-over-rating', { storey: 'S1', numbers });
    expect(findingText(found, 'in')).toContain(': core 6, pressure 921 psf (44.1 kPa), rated 750 psf (35.9 kPa), rate of rise 6 ft/h (1.83 m/h), fastest allowed 4.67 ft/h (1.42 m/h).');
    expect(findingText(found, 'm')).toContain(': core 6, pressure 44.1 kPa (921 psf), rated 35.9 kPa (750 psf), rate of rise 1.83 m/h (6 ft/h), fastest allowed 1.42 m/h (4.67 ft/h).');
  });
});

describe('a full liquid head', () => {
  it('says which limit was passed, and by how much', () => {
    const found = finding('full-liquid-head', { storey: 'S1', numbers: { slumpIn: 7.87401574803, limitIn: 7, pressurePsf: 1200, core: '6' } });
    expect(findingText(found, 'mm')).toMatch(/counted as a liquid over its whole height: slump 200 mm \(7\.87 in\), slump limit 178 mm \(7 in\), pressure 57\.5 kPa \(1200 psf\), core 6\.$/);
  });
});

describe('what limits the rate of rise', () => {
  it.each([
    ['equation-a', 'limited by the pressure equation for slow filling'],
    ['equation-a-range', 'limited by the fastest rate the pressure equation for slow filling is for'],
    ['equation-b', 'limited by the pressure equation for fast filling or high walls'],
    ['highest-rate', 'limited by the fastest rate the pressure equations are for'],
    ['minimum', 'limited by the least pressure a form is designed for'],
    ['liquid-head', 'limited by the full liquid head of the concrete'],
    ['lift-height', 'limited by the lift height'],
    ['slump', 'limited by the slump of the concrete'],
    ['6', 'limited by 6'],
  ])('%s: %s', (value, words) => expect(numberWords('riseLimitBy', value, 'in')).toBe(words));
});

describe('a seam', () => {
  it('stands above itself only in the courses that run from corner to corner, as the drawings show it', () =>
    expect(findingText(finding('seam'))).toMatch(/above itself in every course that runs from corner to corner\.$/));
});

describe('findingPlaceText', () => {
  it('names storey, walls, course and station', () => {
    const found = finding('tee-skewed', { storey: 'S1', walls: ['A', 'B', 'C'], course: 2, atMm: 3810 });
    expect(findingPlaceText(found, 'ft')).toBe('storey S1, walls A, B and C, course 2, at 12\'-6" along its axis');
    expect(findingPlaceText(found, 'm')).toBe('storey S1, walls A, B and C, course 2, at 3810 mm along its axis');
  });

  it('is empty for the whole job', () => expect(findingPlaceText(finding('pour-not-stated'))).toBe(''));
});

describe('lengthWords', () => {
  it.each([
    { mm: 0, us: '0"', si: '0 mm' },
    { mm: 25.4, us: '1"', si: '25 mm' },
    { mm: 12.7, us: '1/2"', si: '13 mm' },
    { mm: 304.8, us: '1\'-0"', si: '305 mm' },
    { mm: 3822.7, us: '12\'-6 1/2"', si: '3823 mm' },
    { mm: 308, us: '1\'-0 1/8"', si: '308 mm' },
    { mm: 304.7, us: '1\'-0"', si: '305 mm' },
    { mm: 150, us: '5 29/32"', si: '150 mm' },
    { mm: -47.625, us: '-1 7/8"', si: '-48 mm' },
  ])('$mm mm reads $us and $si', ({ mm, us, si }) => {
    expect(lengthWords(mm, 'in')).toBe(us);
    expect(lengthWords(mm, 'mm')).toBe(si);
  });
});

describe('numberWords', () => {
  it.each([
    { key: 'concreteF', value: 30, words: 'concrete 30 °F (-1.1 °C)' },
    { key: 'missing', value: 'rise, concrete', words: 'not stated rise, concrete' },
    { key: 'footingFixBy', value: 'track', words: 'footing fix by track' },
    { key: 'count', value: 3, words: 'count 3' },
    { key: 'forceLb', value: 399.9, words: 'force 400 lb (1.78 kN)' },
    { key: 'slumpIn', value: 8, words: 'slump 8 in (203 mm)' },
    { key: 'limitFtPerH', value: 15, words: 'limit of the rate 15 ft/h (4.57 m/h)' },
    { key: 'soilKnPerM3', value: 7.069, words: 'soil 7.07 kN/m³' },
    { key: 'heightFt', value: 12, words: 'height 12 ft (3.66 m)' },
    { key: 'soilPsfPerFt', value: 45, words: 'soil 45 psf/ft' },
    { key: 'windMph', value: 170, words: 'wind 170 mph' },
    { key: 'yieldPsi', value: 60_000, words: 'yield 60000 psi' },
    { key: 'spanM', value: 2.22508, words: 'span 2.23 m' },
  ])('$key $value reads $words', ({ key, value, words }) => expect(numberWords(key, value, 'in')).toBe(words));

  it('tells a core that changes up a wall from one that changes along it', () => {
    expect(findingText(finding('core-change', { wall: 'A', numbers: { core: '10', otherCore: '6', flush: 'outside' } }))).toContain('changes up this wall');
    expect(findingText(finding('core-change', { wall: 'A', numbers: { core: '10', otherCore: '6', turnDeg: 0 } }))).toContain('Two cores meet here');
  });
});
