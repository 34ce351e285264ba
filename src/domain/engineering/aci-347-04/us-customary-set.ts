import { EQUATION_A_HEIGHT_FT, EQUATION_A_RISE_FT_PER_H, EQUATION_B_RISE_FT_PER_H } from './limits.js';
import { hydrostaticDepth } from './hydrostatic-depth.js';
import { liquidHead } from './liquid-head.js';
import { minimumPressure } from './minimum-pressure.js';
import { outsideLimits } from './outside-limits.js';
import { pressureByEquationA } from './pressure-by-equation-a.js';
import { pressureByEquationB } from './pressure-by-equation-b.js';
import { shownNumber as n } from '../../evidence/shown-number.js';
import type { EquationSet } from './equation-set.js';

const source = 'aci-347-04 §2.2.2';

/** Pounds, feet, hours, °F: the constants of this set were read (salman-lecture-3), its limits too (hurd-2006). */
export const US_CUSTOMARY_SET: EquationSet = {
  pressureUnit: 'psf',
  lengthUnit: 'ft',
  riseUnit: 'ft/h',
  equationAHeight: EQUATION_A_HEIGHT_FT,
  equationARise: EQUATION_A_RISE_FT_PER_H,
  equationBRise: EQUATION_B_RISE_FT_PER_H,
  head: { equation: 'p = w · h', substituted: (w, h) => `${n(w)} · ${n(h)}`, of: liquidHead, source },
  minimum: { equation: 'p ≥ 600 · Cw', substituted: (Cw) => `600 · ${n(Cw)}`, of: minimumPressure, source },
  equationA: {
    equation: 'p = Cw · Cc · (150 + 9000 · R / T)',
    substituted: (Cw, Cc, R, T) => `${n(Cw)} · ${n(Cc)} · (150 + 9000 · ${n(R)} / ${n(T)})`,
    of: pressureByEquationA,
    source,
  },
  equationB: {
    equation: 'p = Cw · Cc · (150 + 43400 / T + 2800 · R / T)',
    substituted: (Cw, Cc, R, T) => `${n(Cw)} · ${n(Cc)} · (150 + 43400 / ${n(T)} + 2800 · ${n(R)} / ${n(T)})`,
    of: pressureByEquationB,
    source,
  },
  rateByA: {
    equation: 'R = T · (p / (Cw · Cc) − 150) / 9000',
    substituted: (p, Cw, Cc, T) => `${n(T)} · (${n(p)} / (${n(Cw)} · ${n(Cc)}) − 150) / 9000`,
    of: (p, Cw, Cc, T) => (T * (p / (Cw * Cc) - 150)) / 9000,
    source,
  },
  rateByB: {
    equation: 'R = (T · (p / (Cw · Cc) − 150) − 43400) / 2800',
    substituted: (p, Cw, Cc, T) => `(${n(T)} · (${n(p)} / (${n(Cw)} · ${n(Cc)}) − 150) − 43400) / 2800`,
    of: (p, Cw, Cc, T) => (T * (p / (Cw * Cc) - 150) - 43_400) / 2800,
    source,
  },
  depth: { equation: 'z = p / w', substituted: (p, w) => `${n(p)} / ${n(w)}`, of: hydrostaticDepth, source },
  bounded: 'p = min( max( equation, minimum ), w · h )',
  outside: outsideLimits,
};
