import { standingWall, standingWallSi, type StandingWall } from './standing-wall.js';
import type { FreshConcreteWall, FreshConcreteWallSi, OutsideMethod } from './fresh-concrete-wall.js';
import type { PrintedFormula } from './equation-set.js';
import type { TraceStep } from '../../evidence/trace.js';

export type Governs = 'equation-a' | 'equation-b' | 'minimum' | 'liquid-head';

interface Governed {
  readonly kind: 'pressure';
  readonly governs: Governs;
  readonly notes: readonly string[];
  readonly trace: readonly TraceStep[];
}

export interface WallFormPressure extends Governed {
  /** Greatest lateral pressure [psf]. */
  readonly pressurePsf: number;
  /** Depth over which the concrete acts as a liquid [ft]. */
  readonly hydrostaticDepthFt: number;
}

export interface WallFormPressureSi extends Governed {
  /** Greatest lateral pressure [kPa]. */
  readonly pressureKpa: number;
  /** Depth over which the concrete acts as a liquid [m]. */
  readonly hydrostaticDepthM: number;
}

/** A pressure in the units of its wall's equations. */
interface Evaluated extends Governed {
  readonly pressure: number;
  readonly depth: number;
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
  const answer = evaluate(standingWall(pour), pour.riseFtPerH);
  if (answer.kind === 'outside-method') return answer;
  const { pressure, depth, ...governed } = answer;
  return { ...governed, pressurePsf: pressure, hydrostaticDepthFt: depth };
}

/**
 * `wallFormPressure` by the SI printing of the standard: its constants, its limits, its minimum.
 *
 * @equation  p = min( max( Eq. A or Eq. B, 30 · Cw ), ρ · g · h )
 * @param pour.heightM h, placement height                      [m]
 * @param pour.riseMPerH R, rate of rise                        [m/h]
 * @param pour.concreteC T, temperature of the concrete         [°C]
 * @param pour.unitWeightKgPerM3 ρ, unit weight as a mass       [kg/m3]
 * @param pour.unitWeightPcf only where written in pcf          [pcf]
 * @param pour.cement row of the chemistry table                [-]
 * @param pour.retarder any admixture that delays setting       [-]
 * @param pour.slumpMm slump                                    [mm]
 * @param pour.slumpIn only where written in inches             [in]
 * @returns   pressureKpa, what governs, the liquid depth, the trace [kPa]
 * @valid     placed from the top, internal vibration to ≤ 1.2 m; 40 ≤ °F ≤ 95 where an equation is used
 * @source    aci-347-04 §2.2.2, SI printing, from memory; nunnally Eq. 12-1B and 12-2B print T + 18
 * @example   pour.heightM = 3, pour.riseMPerH = 2, pour.concreteC = 20, pour.unitWeightKgPerM3 = 2400,
 *            pour.cement = 'portland-i-ii-iii', pour.retarder = false, pour.slumpMm = 120 → pressureKpa = 48.73
 */
export function wallFormPressureSi(pour: FreshConcreteWallSi): WallFormPressureSi | OutsideMethod {
  const answer = evaluate(standingWallSi(pour), pour.riseMPerH);
  if (answer.kind === 'outside-method') return answer;
  const { pressure, depth, ...governed } = answer;
  return { ...governed, pressureKpa: pressure, hydrostaticDepthM: depth };
}

function evaluate(wall: StandingWall, R: number): Evaluated | OutsideMethod {
  const { set, height: h, concrete: T, unitWeight: w, Cw, Cc } = wall;
  const head = step('liquid head', set.head, [w, h], set.pressureUnit);
  const notes = wall.fullHead(R);
  if (notes.length > 0) return answered(wall, head.value, 'liquid-head', notes, [head]);
  const outside = set.outside(T);
  if (outside.length > 0) return { kind: 'outside-method', outside };

  const byA = R < set.equationARise && h <= set.equationAHeight;
  const numbers = [Cw.value, Cc.value, R, T] as const;
  const equation = byA
    ? step('equation A', set.equationA, numbers, set.pressureUnit)
    : step('equation B', set.equationB, numbers, set.pressureUnit);
  const least = step('minimum', set.minimum, [Cw.value], set.pressureUnit);
  const unbounded = Math.max(equation.value, least.value);
  const pressure = Math.min(unbounded, head.value);
  const byEquation = byA ? 'equation-a' : 'equation-b';
  const governs = unbounded >= head.value ? 'liquid-head' : equation.value >= least.value ? byEquation : 'minimum';
  return answered(wall, pressure, governs, [], [Cw, Cc, equation, least, head]);
}

function answered(
  { set, unitWeight }: StandingWall,
  pressure: number,
  governs: Governs,
  notes: readonly string[],
  steps: readonly TraceStep[],
): Evaluated {
  const depth = step('liquid depth', set.depth, [pressure, unitWeight], set.lengthUnit);
  const bounded = {
    name: 'form pressure',
    equation: set.bounded,
    substituted: governs,
    value: pressure,
    unit: set.pressureUnit,
    source: set.head.source,
  };
  return { kind: 'pressure', pressure, depth: depth.value, governs, notes, trace: [...steps, bounded, depth] };
}

function step<Numbers extends readonly number[]>(
  name: string,
  { equation, substituted, of, source }: PrintedFormula<Numbers>,
  numbers: Numbers,
  unit: string,
): TraceStep {
  return { name, equation, substituted: substituted(...numbers), value: of(...numbers), unit, source };
}
