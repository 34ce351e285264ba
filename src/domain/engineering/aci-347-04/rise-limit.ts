import type { FreshConcreteWall, OutsideMethod } from './fresh-concrete-wall.js';
import type { TraceStep } from '../../evidence/trace.js';
import { chemistryCoefficient } from './chemistry-coefficient.js';
import { EQUATION_A_HEIGHT_FT, EQUATION_A_RISE_FT_PER_H, EQUATION_B_RISE_FT_PER_H, SLUMP_LIMIT_IN } from './limits.js';
import { liquidHead } from './liquid-head.js';
import { minimumPressure } from './minimum-pressure.js';
import { outsideLimits } from './outside-limits.js';
import { shownNumber as n } from '../../evidence/shown-number.js';
import { unitWeightCoefficient } from './unit-weight-coefficient.js';

/**
 * How fast a wall may rise under a form's rating.
 *
 * `limit`: the pressure at this rate is the rating (`highest-rate`: it is below it, but any faster the full liquid head counts,
 * which is over it). `any-rate`: not even the full liquid head is over the rating. `no-rate`: over the rating however slowly.
 */
export type RiseLimit =
  | {
      readonly kind: 'limit';
      readonly riseFtPerH: number;
      readonly governs: 'equation-a' | 'equation-b' | 'highest-rate';
      readonly trace: readonly TraceStep[];
    }
  | { readonly kind: 'any-rate'; readonly governs: 'liquid-head'; readonly trace: readonly TraceStep[] }
  | {
      readonly kind: 'no-rate';
      readonly governs: 'slump' | 'minimum' | 'equation-b';
      readonly leastPsf: number;
      readonly trace: readonly TraceStep[];
    };

/**
 * Fastest rate of rise at which the pressure of `wallFormPressure` stays within a form's rating; closed form.
 *
 * @equation  R = T · (p / (Cw · Cc) − 150) / 9000, or R = (T · (p / (Cw · Cc) − 150) − 43 400) / 2800 over 14 ft or over 7 ft/h
 * @param rating p, rated pressure of the form                  [psf]
 * @param pour.heightFt h, placement height                     [ft]
 * @param pour.concreteF T, temperature of the concrete         [°F]
 * @param pour.unitWeightPcf w, unit weight                     [pcf]
 * @param pour.cement row of the chemistry table                [-]
 * @param pour.retarder any admixture that delays setting       [-]
 * @param pour.slumpIn slump                                    [in]
 * @returns   riseFtPerH, or that any rate or no rate will do   [ft/h]
 * @valid     placed from the top, internal vibration to ≤ 4 ft; 40 ≤ T ≤ 95 where an equation is used
 * @source    aci-347-04 §2.2.2, as printed in salman-lecture-3 and hurd-2006, solved for R
 * @example   rating = 825, pour.heightFt = 12, pour.concreteF = 80, pour.unitWeightPcf = 150,
 *            pour.cement = 'portland-i-ii-iii', pour.retarder = false, pour.slumpIn = 5 → riseFtPerH = 6.000
 */
export function riseLimit(rating: number, pour: Omit<FreshConcreteWall, 'riseFtPerH'>): RiseLimit | OutsideMethod {
  const head = liquidHead(pour.unitWeightPcf, pour.heightFt);
  const headStep = step('liquid head', 'p = w · h', `${n(pour.unitWeightPcf)} · ${n(pour.heightFt)}`, head, 'psf');
  if (head <= rating) return { kind: 'any-rate', governs: 'liquid-head', trace: [headStep] };
  if (pour.slumpIn > SLUMP_LIMIT_IN) return { kind: 'no-rate', governs: 'slump', leastPsf: head, trace: [headStep] };
  const outside = outsideLimits(pour.concreteF);
  if (outside.length > 0) return { kind: 'outside-method', outside };

  const Cw = unitWeightCoefficient(pour.unitWeightPcf);
  const Cc = chemistryCoefficient(pour.cement, pour.retarder);
  const least = minimumPressure(Cw);
  const leastStep = step('minimum', 'p ≥ 600 · Cw', `600 · ${n(Cw)}`, least, 'psf');
  if (least > rating) return { kind: 'no-rate', governs: 'minimum', leastPsf: least, trace: [headStep, leastStep] };
  return byEquation(rating, pour.heightFt, pour.concreteF, Cw, Cc, [headStep, leastStep]);
}

function byEquation(p: number, h: number, T: number, Cw: number, Cc: number, before: readonly TraceStep[]): RiseLimit {
  const slow = (T * (p / (Cw * Cc) - 150)) / 9000;
  const slowStep = step(
    'rate by equation A',
    'R = T · (p / (Cw · Cc) − 150) / 9000',
    `${n(T)} · (${n(p)} / (${n(Cw)} · ${n(Cc)}) − 150) / 9000`,
    slow,
    'ft/h',
  );
  if (h <= EQUATION_A_HEIGHT_FT && slow < EQUATION_A_RISE_FT_PER_H) {
    return { kind: 'limit', riseFtPerH: slow, governs: 'equation-a', trace: [...before, slowStep] };
  }
  const fast = (T * (p / (Cw * Cc) - 150) - 43_400) / 2800;
  const fastStep = step(
    'rate by equation B',
    'R = (T · (p / (Cw · Cc) − 150) − 43400) / 2800',
    `(${n(T)} · (${n(p)} / (${n(Cw)} · ${n(Cc)}) − 150) − 43400) / 2800`,
    fast,
    'ft/h',
  );
  const trace = [...before, fastStep];
  if (fast <= 0) return { kind: 'no-rate', governs: 'equation-b', leastPsf: Cw * Cc * (150 + 43_400 / T), trace };
  if (fast > EQUATION_B_RISE_FT_PER_H)
    return { kind: 'limit', riseFtPerH: EQUATION_B_RISE_FT_PER_H, governs: 'highest-rate', trace };
  return { kind: 'limit', riseFtPerH: fast, governs: 'equation-b', trace };
}

function step(name: string, equation: string, substituted: string, value: number, unit: string): TraceStep {
  return { name, equation, substituted, value, unit, source: 'aci-347-04 §2.2.2' };
}
