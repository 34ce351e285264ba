import type { FreshConcreteWall, OutsideMethod } from './fresh-concrete-wall.js';
import type { TraceStep } from '../../evidence/trace.js';
import { chemistryCoefficient } from './chemistry-coefficient.js';
import { EQUATION_A_HEIGHT_FT, EQUATION_A_RISE_FT_PER_H } from './limits.js';
import { fullHeadNotes } from './full-head-notes.js';
import { hydrostaticDepth } from './hydrostatic-depth.js';
import { liquidHead } from './liquid-head.js';
import { minimumPressure } from './minimum-pressure.js';
import { outsideLimits } from './outside-limits.js';
import { pressureByEquationA } from './pressure-by-equation-a.js';
import { pressureByEquationB } from './pressure-by-equation-b.js';
import { shownNumber as n } from '../../evidence/shown-number.js';
import { unitWeightCoefficient } from './unit-weight-coefficient.js';

export type Governs = 'equation-a' | 'equation-b' | 'minimum' | 'liquid-head';

export interface WallFormPressure {
  readonly kind: 'pressure';
  /** Greatest lateral pressure [psf]. */
  readonly pressurePsf: number;
  /** Depth over which the concrete acts as a liquid [ft]. */
  readonly hydrostaticDepthFt: number;
  readonly governs: Governs;
  readonly notes: readonly string[];
  readonly trace: readonly TraceStep[];
}

/**
 * Greatest lateral pressure of fresh concrete on a wall form, with every limit of the standard applied.
 *
 * Slump over 7 in or R over 15 ft/h: full liquid head, with a note. Otherwise Eq. A (R < 7 and h ≤ 14) or Eq. B, not less than
 * the minimum, not more than the liquid head. Outside the temperature span there is no answer: `outside-method`.
 *
 * @equation  p = min( max( Eq. A or Eq. B, 600 · Cw ), w · h )
 * @param pour.heightFt h, placement height                     [ft]
 * @param pour.riseFtPerH R, rate of rise                       [ft/h]
 * @param pour.concreteF T, temperature of the concrete         [°F]
 * @param pour.unitWeightPcf w, unit weight                     [pcf]
 * @param pour.cement row of the chemistry table                [-]
 * @param pour.retarder any admixture that delays setting       [-]
 * @param pour.slumpIn slump                                    [in]
 * @returns   pressurePsf, what governs, the liquid depth, the trace [psf]
 * @valid     placed from the top, internal vibration to ≤ 4 ft; 40 ≤ T ≤ 95 where an equation is used
 * @source    aci-347-04 §2.2.2, as printed in salman-lecture-3 and hurd-2006
 * @example   pour.heightFt = 12, pour.riseFtPerH = 6, pour.concreteF = 80, pour.unitWeightPcf = 150,
 *            pour.cement = 'portland-i-ii-iii', pour.retarder = false, pour.slumpIn = 5 → pressurePsf = 825.0
 */
export function wallFormPressure(pour: FreshConcreteWall): WallFormPressure | OutsideMethod {
  const head = liquidHead(pour.unitWeightPcf, pour.heightFt);
  const headStep = step('liquid head', 'p = w · h', `${n(pour.unitWeightPcf)} · ${n(pour.heightFt)}`, head, 'psf');
  const notes = fullHeadNotes(pour.slumpIn, pour.riseFtPerH);
  if (notes.length > 0) return answer(head, 'liquid-head', notes, [headStep], pour.unitWeightPcf);
  const outside = outsideLimits(pour.concreteF);
  if (outside.length > 0) return { kind: 'outside-method', outside };

  const Cw = unitWeightCoefficient(pour.unitWeightPcf);
  const Cc = chemistryCoefficient(pour.cement, pour.retarder);
  const coefficients = [
    step('unit weight coefficient', 'Cw of w', `w = ${n(pour.unitWeightPcf)}`, Cw, '1', 'aci-347-04 Table 2.1'),
    step(
      'chemistry coefficient',
      'Cc of cement and retarder',
      `${pour.cement}, ${pour.retarder ? 'retarder' : 'no retarder'}`,
      Cc,
      '1',
      'aci-347-04 Table 2.2',
    ),
  ];
  const equation =
    pour.riseFtPerH < EQUATION_A_RISE_FT_PER_H && pour.heightFt <= EQUATION_A_HEIGHT_FT
      ? equationA(Cw, Cc, pour)
      : equationB(Cw, Cc, pour);
  const least = minimumPressure(Cw);
  const leastStep = step('minimum', 'p ≥ 600 · Cw', `600 · ${n(Cw)}`, least, 'psf');
  const unbounded = Math.max(equation.step.value, least);
  const pressure = Math.min(unbounded, head);
  const governs: Governs = unbounded >= head ? 'liquid-head' : equation.step.value >= least ? equation.governs : 'minimum';
  return answer(pressure, governs, [], [...coefficients, equation.step, leastStep, headStep], pour.unitWeightPcf);
}

function equationA(
  Cw: number,
  Cc: number,
  { riseFtPerH: R, concreteF: T }: FreshConcreteWall,
): { governs: Governs; step: TraceStep } {
  const substituted = `${n(Cw)} · ${n(Cc)} · (150 + 9000 · ${n(R)} / ${n(T)})`;
  return {
    governs: 'equation-a',
    step: step('equation A', 'p = Cw · Cc · (150 + 9000 · R / T)', substituted, pressureByEquationA(Cw, Cc, R, T), 'psf'),
  };
}

function equationB(
  Cw: number,
  Cc: number,
  { riseFtPerH: R, concreteF: T }: FreshConcreteWall,
): { governs: Governs; step: TraceStep } {
  const substituted = `${n(Cw)} · ${n(Cc)} · (150 + 43400 / ${n(T)} + 2800 · ${n(R)} / ${n(T)})`;
  return {
    governs: 'equation-b',
    step: step(
      'equation B',
      'p = Cw · Cc · (150 + 43400 / T + 2800 · R / T)',
      substituted,
      pressureByEquationB(Cw, Cc, R, T),
      'psf',
    ),
  };
}

function answer(
  pressurePsf: number,
  governs: Governs,
  notes: readonly string[],
  steps: readonly TraceStep[],
  w: number,
): WallFormPressure {
  const depth = hydrostaticDepth(pressurePsf, w);
  const trace = [
    ...steps,
    step('form pressure', 'p = min( max( equation, minimum ), w · h )', governs, pressurePsf, 'psf'),
    step('liquid depth', 'z = p / w', `${n(pressurePsf)} / ${n(w)}`, depth, 'ft'),
  ];
  return { kind: 'pressure', pressurePsf, hydrostaticDepthFt: depth, governs, notes, trace };
}

function step(
  name: string,
  equation: string,
  substituted: string,
  value: number,
  unit: string,
  source = 'aci-347-04 §2.2.2',
): TraceStep {
  return { name, equation, substituted, value, unit, source };
}
