import { standingWall, standingWallSi, type StandingWall } from './standing-wall.js';
import type { FreshConcreteWall, FreshConcreteWallSi, OutsideMethod } from './fresh-concrete-wall.js';
import type { PrintedFormula } from './equation-set.js';
import type { TraceStep } from '../../evidence/trace.js';

/** What ends the rate: see `RiseLimit`. */
export type RiseGoverns = 'equation-a' | 'equation-a-range' | 'equation-b' | 'highest-rate';

interface AnyRate {
  readonly kind: 'any-rate';
  readonly governs: 'liquid-head';
  readonly trace: readonly TraceStep[];
}

interface Limited {
  readonly kind: 'limit';
  readonly governs: RiseGoverns;
  readonly trace: readonly TraceStep[];
}

interface NoRate {
  readonly kind: 'no-rate';
  readonly governs: 'slump' | 'minimum' | 'equation-b';
  readonly trace: readonly TraceStep[];
}

/**
 * How fast a wall may rise under a form's rating.
 *
 * `limit`: the pressure at this rate is the rating. It is below it for `highest-rate` (any faster the full liquid head counts, which
 * is over it) and `equation-a-range` (from the next rate on Eq. B counts, which is over it; only in the SI printing, whose equations
 * do not meet). `any-rate`: not even the full liquid head is over the rating. `no-rate`: over the rating however slowly.
 */
export type RiseLimit =
  | (Limited & { readonly riseFtPerH: number })
  | AnyRate
  | (NoRate & { readonly leastPsf: number });

/** The same in SI units. */
export type RiseLimitSi =
  | (Limited & { readonly riseMPerH: number })
  | AnyRate
  | (NoRate & { readonly leastKpa: number });

/** The same in the units of the wall's equations. */
type Solved = (Limited & { readonly rise: number }) | AnyRate | (NoRate & { readonly least: number }) | OutsideMethod;

/** The end of Eq. A's range does not belong to it: what stands just before it, as near as a result is printed. */
const JUST_UNDER = 1 - 1e-9;

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
  const solved = solve(rating, standingWall(pour));
  if (solved.kind === 'limit') {
    const { rise, ...rest } = solved;
    return { ...rest, riseFtPerH: rise };
  }
  if (solved.kind !== 'no-rate') return solved;
  const { least, ...rest } = solved;
  return { ...rest, leastPsf: least };
}

/**
 * `riseLimit` by the SI printing of the standard: turns `wallFormPressureSi` round.
 *
 * @equation  R = (T + 17.8) · (p / (Cw · Cc) − 7.2) / 785, or R = ((T + 17.8) · (p / (Cw · Cc) − 7.2) − 1156) / 244 over 4.2 m or
 *            over 2.1 m/h
 * @param rating p, rated pressure of the form                  [kPa]
 * @param pour.heightM h, placement height                      [m]
 * @param pour.concreteC T, temperature of the concrete         [°C]
 * @param pour.unitWeightKgPerM3 ρ, unit weight as a mass       [kg/m3]
 * @param pour.unitWeightPcf only where written in pcf          [pcf]
 * @param pour.cement row of the chemistry table                [-]
 * @param pour.retarder any admixture that delays setting       [-]
 * @param pour.slumpMm slump                                    [mm]
 * @param pour.slumpIn only where written in inches             [in]
 * @returns   riseMPerH, or that any rate or no rate will do    [m/h]
 * @valid     placed from the top, internal vibration to ≤ 1.2 m; 40 ≤ °F ≤ 95 where an equation is used
 * @source    aci-347-04 §2.2.2, SI printing, from memory; nunnally Eq. 12-1B and 12-2B print T + 18; solved for R
 * @example   rating = 46.95, pour.heightM = 3, pour.concreteC = 21.45, pour.unitWeightKgPerM3 = 2400,
 *            pour.cement = 'portland-i-ii-iii', pour.retarder = false, pour.slumpMm = 120 → riseMPerH = 1.9875
 */
export function riseLimitSi(rating: number, pour: Omit<FreshConcreteWallSi, 'riseMPerH'>): RiseLimitSi | OutsideMethod {
  const solved = solve(rating, standingWallSi(pour));
  if (solved.kind === 'limit') {
    const { rise, ...rest } = solved;
    return { ...rest, riseMPerH: rise };
  }
  if (solved.kind !== 'no-rate') return solved;
  const { least, ...rest } = solved;
  return { ...rest, leastKpa: least };
}

function solve(rating: number, wall: StandingWall): Solved {
  const { set } = wall;
  const head = step('liquid head', set.head, [wall.unitWeight, wall.height], set.pressureUnit);
  if (head.value <= rating) return { kind: 'any-rate', governs: 'liquid-head', trace: [head] };
  if (wall.fullHead(0).length > 0) return { kind: 'no-rate', governs: 'slump', least: head.value, trace: [head] };
  const outside = set.outside(wall.concrete);
  if (outside.length > 0) return { kind: 'outside-method', outside };

  const least = step('minimum', set.minimum, [wall.Cw.value], set.pressureUnit);
  if (least.value > rating) return { kind: 'no-rate', governs: 'minimum', least: least.value, trace: [head, least] };
  return byEquation(rating, wall, [head, least]);
}

function byEquation(p: number, wall: StandingWall, before: readonly TraceStep[]): Solved {
  const { set, concrete: T } = wall;
  const [Cw, Cc] = [wall.Cw.value, wall.Cc.value];
  const slow = step('rate by equation A', set.rateByA, [p, Cw, Cc, T], set.riseUnit);
  const low = wall.height <= set.equationAHeight;
  if (low && slow.value < set.equationARise) {
    return { kind: 'limit', rise: slow.value, governs: 'equation-a', trace: [...before, slow] };
  }
  const fast = step('rate by equation B', set.rateByB, [p, Cw, Cc, T], set.riseUnit);
  const trace = [...before, fast];
  if (low && fast.value < set.equationARise * JUST_UNDER) {
    return { kind: 'limit', rise: set.equationARise * JUST_UNDER, governs: 'equation-a-range', trace: [...before, slow, fast] };
  }
  if (fast.value <= 0) return { kind: 'no-rate', governs: 'equation-b', least: set.equationB.of(Cw, Cc, 0, T), trace };
  if (fast.value > set.equationBRise) return { kind: 'limit', rise: set.equationBRise, governs: 'highest-rate', trace };
  return { kind: 'limit', rise: fast.value, governs: 'equation-b', trace };
}

function step<Numbers extends readonly number[]>(
  name: string,
  { equation, substituted, of, source }: PrintedFormula<Numbers>,
  numbers: Numbers,
  unit: string,
): TraceStep {
  return { name, equation, substituted: substituted(...numbers), value: of(...numbers), unit, source };
}
