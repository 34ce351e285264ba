import { concreteShear } from '../aci-318-14/concrete-shear.js';
import { plainConcreteMoment } from '../aci-318-14/plain-concrete-moment.js';
import { soilWallFoot, soilWallMoment } from '../statics/soil-wall-moment.js';
import { steelForMoment } from '../aci-318-14/steel-for-moment.js';
import { tensionStrain, TENSION_CONTROLLED_STRAIN } from '../aci-318-14/tension-strain.js';

const FC_PSI = 2500;
const FY_PSI = 60_000;
const SOIL_FACTOR = 1.6;
const PHI = 0.9;
const SHEAR_PHI = 0.75;
/** The plain concrete reduction that parts the tables' cells; ACI 318-14 has 0.60. */
const PLAIN_PHI = 0.65;
const WIDEST_IN = 48;

/** Bars by number: diameter [in], area [in²]. */
const BARS: Readonly<Record<number, readonly [number, number]>> = { 4: [0.5, 0.2], 5: [0.625, 0.31], 6: [0.75, 0.44] };

/** Width and depth of the concrete that works with a bar at the center, a core each foot [in]; inferred from the cells of the tables. */
const CENTRES: Readonly<Record<number, readonly [b: number, d: number]>> = { 2: [12, 2.75], 3: [12, 3.75], 4: [12, 4.75], 5: [6.25, 2.5], 6: [7, 3.5], 7: [5.5, 2.75] };
const COVER_IN = 1.25;
const FORM_LOSS_IN = 0.5;

/** What the rule behind the wall tables says of one of their rows. */
export interface StrengthRule {
  /** Factored moment of a foot of wall [ft·lb]. */
  readonly momentFtLb: number;
  /** Bars in a foot of wall [in²]; null where no amount is enough. */
  readonly steelIn2: number | null;
  /** Exact, at most 48 in; null with the steel. */
  readonly spacingIn: number | null;
  /** Plain concrete carries the moment. Only told of flat walls. */
  readonly plain: boolean;
  /** The bars would strain less than 0.005, or the shear at the foot is over that of the concrete. */
  readonly design: boolean;
}

/**
 * The rule that gives the printed cells of the basement wall tables: a simple span under 1.6 times the soil, designed by the concrete code.
 *
 * It is a cross-check beside a cell, never instead of it: which minimum of steel and which core the tables were calculated with was
 * inferred from their cells.
 *
 * @equation  Mu = 1.6 · M; φ · As · fy · ( d − a / 2 ) = Mu; As' = min( max( As, 200 · b · d / fy ), 4 / 3 · As ); s = 12 · Ab / As' ≤ 48 in
 * @param table number of the table in R404.1.2                 [-]
 * @param nominal nominal thickness                             [in]
 * @param bar number of the bar                                 [-]
 * @param soil lateral load                                     [psf/ft]
 * @param backfill height of the unbalanced backfill            [ft]
 * @param height unsupported height                             [ft]
 * @returns   moment, steel, spacing, and what the rule says of plain concrete and of design [-]
 * @valid     bars 4 to 6; Grade 60, 2500 psi; backfill ≤ height
 * @source    statics; aci-318-14 §22.2; fitted to irc-2018 Table R404.1.2(8)
 * @example   table = 8, nominal = 8, bar = 5, soil = 60, backfill = 6, height = 9 → spacingIn = 39.2
 */
export function strengthRule(table: number, nominal: number, bar: number, soil: number, backfill: number, height: number): StrengthRule {
  const [diameter, area] = BARS[bar] ?? [Number.NaN, Number.NaN];
  const thickness = nominal - FORM_LOSS_IN;
  const [b, d] = CENTRES[table] ?? [12, thickness - COVER_IN - diameter / 2];
  const momentFtLb = SOIL_FACTOR * soilWallMoment(soil, backfill, height);
  const flat = table === 8 || table <= 4;
  const plain = flat && momentFtLb * 12 <= plainConcreteMoment(12, thickness, FC_PSI, PLAIN_PHI);
  const needed = steelForMoment(momentFtLb * 12, d, b, FC_PSI, FY_PSI, PHI);
  if (needed === null) return { momentFtLb, steelIn2: null, spacingIn: null, plain, design: true };
  const steelIn2 = Math.min(Math.max(needed, (200 * b * d) / FY_PSI), (4 / 3) * needed);
  const shear = SOIL_FACTOR * soilWallFoot(soil, backfill, height) > SHEAR_PHI * concreteShear(b, d, FC_PSI, 1);
  const brittle = tensionStrain(steelIn2, d, b, FC_PSI, FY_PSI) < TENSION_CONTROLLED_STRAIN;
  return { momentFtLb, steelIn2, spacingIn: Math.min(WIDEST_IN, (12 * area) / steelIn2), plain, design: shear || brittle };
}
