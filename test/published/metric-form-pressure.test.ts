import { describe, expect, it } from '@jest/globals';
import { classPressure } from '../../src/domain/engineering/din-18218-2010/class-pressure.js';
import { formPressure108 } from '../../src/domain/engineering/ciria-108/form-pressure.js';
import { selfCompactingPressure } from '../../src/domain/engineering/din-18218-2010/self-compacting-pressure.js';
import { settingFactor } from '../../src/domain/engineering/din-18218-2010/setting-factor.js';
import { temperatureFactor } from '../../src/domain/engineering/ciria-108/temperature-factor.js';
import { expectPrinted, itIsAsPublished, num, publishedRows, type Inputs } from './published-rows.js';
import type { Consistency } from '../../src/domain/engineering/din-18218-2010/consistency.js';

const ciria = (i: Inputs): number =>
  formPressure108(num(i, 'D'), num(i, 'c1'), num(i, 'c2'), temperatureFactor(num(i, 'T')), num(i, 'R'), num(i, 'H')) ?? Number.NaN;

describe('CIRIA 108', () => {
  itIsAsPublished(publishedRows('ciria-108/worked-examples'), {
    K: (i) => temperatureFactor(num(i, 'T')),
    P: ciria,
    head: (i) => num(i, 'D') * num(i, 'H'),
    zone: (i) => ciria(i) / num(i, 'D'),
  });

  it('C1 · √R over the height of the form: no equation', () => {
    expect(formPressure108(25, 1, 0.3, 1, 9.1, 3)).toBeNull();
    expect(formPressure108(25, 1, 0.3, 1, 9, 3)).toBe(75);
  });

  /** Pages that print P = 1.2 · D · R · E, or a least pressure of 25 kPa, are wrong. */
  it('has no least pressure', () => expect(formPressure108(25, 1, 0.3, 1, 0.04, 1)).toBeLessThan(25));
});

const consistency = (i: Inputs): Consistency => String(i['consistency']) as Consistency;

describe('DIN 18218', () => {
  itIsAsPublished(publishedRows('din-18218-2010/pressures'), {
    scc: (i) => selfCompactingPressure(num(i, 'v'), num(i, 'tE'), num(i, 'gamma')),
    class: (i) => classPressure(consistency(i) as Exclude<Consistency, 'SCC'>, num(i, 'v'), settingFactor(consistency(i), num(i, 'tE'))),
    K1: (i) => settingFactor(consistency(i), num(i, 'tE')),
  });

  /** Eq. (1), found, against the rounded form 25 + 33 · v · K1, from memory: 0.26 · 5 · 25 = 32.5. */
  it('the found equation of self-compacting concrete is the remembered one, which rounds 32.5 to 33', () => {
    for (const v of [1, 2, 3]) expectPrinted(selfCompactingPressure(v, 5, 25) + 0.5 * v, String(25 + 33 * v));
    expect(selfCompactingPressure(2, 10, 25) - 25).toBe(32.5 * 2 * settingFactor('SCC', 10));
  });

  it('slow concrete has a least pressure', () => {
    expect([classPressure('F1', 0.1, 1), classPressure('F5', 0.1, 1), selfCompactingPressure(0.01, 5, 25)]).toEqual([25, 30, 30]);
  });
});
