import { SI_SET } from './si-set.js';
import { US_CUSTOMARY_SET } from './us-customary-set.js';
import { chemistryCoefficient } from './chemistry-coefficient.js';
import { fullHeadNotes } from './full-head-notes.js';
import { fullHeadNotesSi } from './full-head-notes-si.js';
import { shownNumber as n } from '../../evidence/shown-number.js';
import { unitWeightCoefficient } from './unit-weight-coefficient.js';
import { unitWeightCoefficientSi } from './unit-weight-coefficient-si.js';
import type { EquationSet } from './equation-set.js';
import type { FreshConcreteWall, FreshConcreteWallSi } from './fresh-concrete-wall.js';
import type { TraceStep } from '../../evidence/trace.js';

/** A wall of fresh concrete, but for its rate of rise, with the equations it is asked by and in their units. */
export interface StandingWall {
  readonly set: EquationSet;
  readonly height: number;
  readonly concrete: number;
  readonly unitWeight: number;
  readonly Cw: TraceStep;
  readonly Cc: TraceStep;
  /** Why the full liquid head is asked for at a rate of rise; empty where it is not. */
  readonly fullHead: (R: number) => readonly string[];
}

/**
 * A wall for the US customary equations.
 *
 * @equation  Cw of w, Cc of cement and retarder
 * @param pour.heightFt h, placement height                     [ft]
 * @param pour.concreteF T, temperature of the concrete         [°F]
 * @param pour.unitWeightPcf w, unit weight                     [pcf]
 * @param pour.cement row of the chemistry table                [-]
 * @param pour.retarder any admixture that delays setting       [-]
 * @param pour.slumpIn slump                                    [in]
 * @returns   the wall with its coefficients and equations      [-]
 * @valid     w > 0
 * @source    aci-347-04 Tables 2.1 and 2.2, as printed in salman-lecture-3; Cc from memory
 * @example   pour.heightFt = 12, pour.concreteF = 80, pour.unitWeightPcf = 153,
 *            pour.cement = 'portland-i-ii-iii', pour.retarder = false, pour.slumpIn = 5 → Cw.value = 1.0552
 */
export function standingWall(pour: Omit<FreshConcreteWall, 'riseFtPerH'>): StandingWall {
  return {
    set: US_CUSTOMARY_SET,
    height: pour.heightFt,
    concrete: pour.concreteF,
    unitWeight: pour.unitWeightPcf,
    Cw: unitWeightStep(pour.unitWeightPcf),
    Cc: chemistryStep(pour),
    fullHead: (R) => fullHeadNotes(pour.slumpIn, R),
  };
}

/**
 * A wall for the SI equations; what was written in pcf or inches is held against the border of the US customary printing.
 *
 * @equation  Cw of ρ, Cc of cement and retarder
 * @param pour.heightM h, placement height                      [m]
 * @param pour.concreteC T, temperature of the concrete         [°C]
 * @param pour.unitWeightKgPerM3 ρ, unit weight as a mass       [kg/m3]
 * @param pour.unitWeightPcf only where written in pcf          [pcf]
 * @param pour.cement row of the chemistry table                [-]
 * @param pour.retarder any admixture that delays setting       [-]
 * @param pour.slumpMm slump                                    [mm]
 * @param pour.slumpIn only where written in inches             [in]
 * @returns   the wall with its coefficients and equations      [-]
 * @valid     ρ > 0
 * @source    aci-347-04 Tables 2.1 and 2.2, SI printing, from memory
 * @example   pour.heightM = 3, pour.concreteC = 20, pour.unitWeightKgPerM3 = 2552,
 *            pour.cement = 'portland-i-ii-iii', pour.retarder = false, pour.slumpMm = 120 → Cw.value = 1.1
 */
export function standingWallSi(pour: Omit<FreshConcreteWallSi, 'riseMPerH'>): StandingWall {
  const { slumpIn, slumpMm, unitWeightPcf, unitWeightKgPerM3 } = pour;
  return {
    set: SI_SET,
    height: pour.heightM,
    concrete: pour.concreteC,
    unitWeight: unitWeightKgPerM3,
    Cw: unitWeightPcf === undefined ? unitWeightStepSi(unitWeightKgPerM3) : unitWeightStep(unitWeightPcf),
    Cc: chemistryStep(pour),
    fullHead: (R) =>
      slumpIn === undefined ? fullHeadNotesSi(slumpMm, R) : [...fullHeadNotes(slumpIn, 0), ...fullHeadNotesSi(0, R)],
  };
}

const coefficient = (name: string, equation: string, substituted: string, value: number, source: string): TraceStep => ({
  name,
  equation,
  substituted,
  value,
  unit: '1',
  source,
});

function unitWeightStep(w: number): TraceStep {
  return coefficient('unit weight coefficient', 'Cw of w', `w = ${n(w)}`, unitWeightCoefficient(w), 'aci-347-04 Table 2.1');
}

function unitWeightStepSi(rho: number): TraceStep {
  const source = 'aci-347-04 Table 2.1, SI, from memory';
  return coefficient('unit weight coefficient', 'Cw of ρ', `ρ = ${n(rho)}`, unitWeightCoefficientSi(rho), source);
}

function chemistryStep({ cement, retarder }: Pick<FreshConcreteWall, 'cement' | 'retarder'>): TraceStep {
  const substituted = `${cement}, ${retarder ? 'retarder' : 'no retarder'}`;
  const value = chemistryCoefficient(cement, retarder);
  return coefficient('chemistry coefficient', 'Cc of cement and retarder', substituted, value, 'aci-347-04 Table 2.2');
}
