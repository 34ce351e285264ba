import { celsiusToFahrenheit } from '../../quantity/us-customary.js';
import { EQUATION_A_HEIGHT_M, EQUATION_A_RISE_M_PER_H, EQUATION_B_RISE_M_PER_H } from './limits-si.js';
import { hydrostaticDepthSi } from './hydrostatic-depth-si.js';
import { liquidHeadSi } from './liquid-head-si.js';
import { minimumPressureSi } from './minimum-pressure-si.js';
import { outsideLimits } from './outside-limits.js';
import { pressureByEquationASi } from './pressure-by-equation-a-si.js';
import { pressureByEquationBSi } from './pressure-by-equation-b-si.js';
import { shownNumber as n } from '../../evidence/shown-number.js';
import { STANDARD_GRAVITY as g } from './standard-gravity.js';
import type { EquationSet } from './equation-set.js';

const source = 'aci-347-04 §2.2.2, SI, from memory';
const sourceA = `${source}; nunnally Eq. 12-1B prints T + 18`;
const sourceB = `${source}; nunnally Eq. 12-2B prints 1154 and T + 18`;

/** Kilopascals, metres, hours, °C: the constants of this set are from memory; where nunnally prints others, the steps say so. */
export const SI_SET: EquationSet = {
  pressureUnit: 'kPa',
  lengthUnit: 'm',
  riseUnit: 'm/h',
  equationAHeight: EQUATION_A_HEIGHT_M,
  equationARise: EQUATION_A_RISE_M_PER_H,
  equationBRise: EQUATION_B_RISE_M_PER_H,
  head: {
    equation: 'p = ρ · g · h / 1000',
    substituted: (rho, h) => `${n(rho)} · ${g} · ${n(h)} / 1000`,
    of: liquidHeadSi,
    source: 'aci-347-04 §2.2.2',
  },
  minimum: { equation: 'p ≥ 30 · Cw', substituted: (Cw) => `30 · ${n(Cw)}`, of: minimumPressureSi, source },
  equationA: {
    equation: 'p = Cw · Cc · (7.2 + 785 · R / (T + 17.8))',
    substituted: (Cw, Cc, R, T) => `${n(Cw)} · ${n(Cc)} · (7.2 + 785 · ${n(R)} / (${n(T)} + 17.8))`,
    of: pressureByEquationASi,
    source: sourceA,
  },
  equationB: {
    equation: 'p = Cw · Cc · (7.2 + 1156 / (T + 17.8) + 244 · R / (T + 17.8))',
    substituted: (Cw, Cc, R, T) =>
      `${n(Cw)} · ${n(Cc)} · (7.2 + 1156 / (${n(T)} + 17.8) + 244 · ${n(R)} / (${n(T)} + 17.8))`,
    of: pressureByEquationBSi,
    source: sourceB,
  },
  rateByA: {
    equation: 'R = (T + 17.8) · (p / (Cw · Cc) − 7.2) / 785',
    substituted: (p, Cw, Cc, T) => `(${n(T)} + 17.8) · (${n(p)} / (${n(Cw)} · ${n(Cc)}) − 7.2) / 785`,
    of: (p, Cw, Cc, T) => ((T + 17.8) * (p / (Cw * Cc) - 7.2)) / 785,
    source: sourceA,
  },
  rateByB: {
    equation: 'R = ((T + 17.8) · (p / (Cw · Cc) − 7.2) − 1156) / 244',
    substituted: (p, Cw, Cc, T) => `((${n(T)} + 17.8) · (${n(p)} / (${n(Cw)} · ${n(Cc)}) − 7.2) − 1156) / 244`,
    of: (p, Cw, Cc, T) => ((T + 17.8) * (p / (Cw * Cc) - 7.2) - 1156) / 244,
    source: sourceB,
  },
  depth: {
    equation: 'z = 1000 · p / (ρ · g)',
    substituted: (p, rho) => `1000 · ${n(p)} / (${n(rho)} · ${g})`,
    of: hydrostaticDepthSi,
    source: 'aci-347-04 §2.2.2',
  },
  bounded: 'p = min( max( equation, minimum ), ρ · g · h / 1000 )',
  outside: (T) => outsideLimits(celsiusToFahrenheit(T)),
};
