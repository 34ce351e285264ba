import { describe, expect, it } from '@jest/globals';
import { QUESTION_NUMBERS } from '../../../src/domain/ticket/question-numbers.js';
import { SEVERITY, finding, type FindingCode } from '../../../src/domain/evidence/finding.js';
import { questionKey } from '../../../src/domain/ticket/question-key.js';

type Numbers = Readonly<Record<string, number | string>>;
const key = (code: FindingCode, numbers: Numbers, place = {}): string => questionKey(finding(code, { numbers, ...place }));

describe('questionKey', () => {
  it('is the code with the deciding numbers, the turn to a tenth of a degree', () => {
    expect(key('turn-not-made', { turnDeg: 112.4, core: '6' })).toBe('turn-not-made turnDeg=112.4 core=6');
    expect(key('radius-wall', { radiusMm: 6096, core: '8' })).toBe('radius-wall radiusMm=6096.0 core=8');
  });

  it.each<{ what: string; a: Numbers; b: Numbers; same: boolean }>([
    { what: 'a hundredth of a degree', a: { turnDeg: 112.41, core: '6' }, b: { turnDeg: 112.39, core: '6' }, same: true },
    { what: 'a tenth of a degree', a: { turnDeg: 112.4, core: '6' }, b: { turnDeg: 112.5, core: '6' }, same: false },
    { what: 'left and right', a: { turnDeg: 112.4, core: '6' }, b: { turnDeg: -112.4, core: '6' }, same: true },
    { what: 'the core', a: { turnDeg: 112.4, core: '6' }, b: { turnDeg: 112.4, core: '8' }, same: false },
    { what: 'a number that decides nothing', a: { turnDeg: 112.4, core: '6', legMm: 5 }, b: { turnDeg: 112.4, core: '6', legMm: 6 }, same: true },
  ])('$what: same question $same', ({ a, b, same }) => {
    expect(key('turn-not-made', a) === key('turn-not-made', b)).toBe(same);
  });

  it('does not look at the place', () => {
    expect(key('turn-acute', { turnDeg: 130, core: '6' }, { storey: 'S1', wall: 'A', atMm: 5 })).toBe(key('turn-acute', { turnDeg: 130, core: '6' }, { storey: 'S2', wall: 'K' }));
  });

  it('takes every number where every number decides, in one order', () => {
    expect(key('outside-method', { method: 'ACI 347-04', core: '6', concreteF: 30 })).toBe('outside-method concreteF=30.0 core=6 method=ACI 347-04');
    expect(key('outside-method', { core: '6', concreteF: 30, method: 'ACI 347-04' })).toBe('outside-method concreteF=30.0 core=6 method=ACI 347-04');
  });

  it('keeps a pressure apart from another that an answer did not see', () => {
    const over = (pressurePsf: number) => key('pressure-over-rating', { pressurePsf, ratedPsf: 750, core: '6' });
    expect(over(900.2)).toBe(over(900.4));
    expect(over(900)).not.toBe(over(901));
  });

  it('has a row for every code', () => {
    expect(Object.keys(QUESTION_NUMBERS).sort()).toEqual(Object.keys(SEVERITY).sort());
  });
});
