import { concreteShear } from '../engineering/aci-318-14/concrete-shear.js';
import { flexuralStrength } from '../engineering/aci-318-14/flexural-strength.js';
import { INCH_BARS, type InchBarName } from '../engineering/astm-a615/bars.js';
import { leastSteel } from '../engineering/aci-318-14/least-steel.js';
import { steelForMoment } from '../engineering/aci-318-14/steel-for-moment.js';
import { stirrupSpacing } from '../engineering/aci-318-14/stirrup-spacing.js';
import { TENSION_CONTROLLED_STRAIN, tensionStrain } from '../engineering/aci-318-14/tension-strain.js';

const FLEXURE_PHI = 0.9;
const SHEAR_PHI = 0.75;
/** Clear distance between bars of a layer, at least. aci-318-14 §25.2.1, from memory [in]. */
const LEAST_CLEAR_IN = 1;

/** Concrete and steel of a lintel, in the units of the equations. */
export interface LintelSection {
  readonly widthIn: number;
  readonly depthIn: number;
  readonly coverIn: number;
  readonly stirrup: InchBarName;
  /** 0 where no stirrup stands: the cover is then that of the bars. */
  readonly legs: number;
  readonly fcPsi: number;
  readonly fyPsi: number;
}

/** Bars that carry a moment. */
export interface LintelBars {
  readonly count: number;
  readonly bar: InchBarName;
  readonly areaIn2: number;
  /** From the top of the lintel to the middle of the bars [in]. */
  readonly dIn: number;
  readonly strengthInLb: number;
}

/** One or two bars of one size in one layer, lightest first. */
const CHOICES: readonly (readonly [count: number, bar: InchBarName])[] = ([1, 2] as const)
  .flatMap((count) => (['#4', '#5', '#6', '#7', '#8'] as const).map((bar) => [count, bar] as const))
  .sort(([a, first], [b, second]) => a * INCH_BARS[first].areaIn2 - b * INCH_BARS[second].areaIn2 || a - b);

/** The lightest bars that carry a moment, fit the width, and strain enough; null where none do. */
export function lintelBars(section: LintelSection, momentInLb: number): LintelBars | null {
  for (const [count, bar] of CHOICES) {
    const found = barsOf(section, count, bar);
    if (found !== null && carries(section, found, momentInLb)) return found;
  }
  return null;
}

function barsOf({ widthIn: b, depthIn, coverIn, stirrup, legs, fcPsi, fyPsi }: LintelSection, count: number, bar: InchBarName): LintelBars | null {
  const { diameterIn: db, areaIn2 } = INCH_BARS[bar];
  const tie = legs === 0 ? 0 : INCH_BARS[stirrup].diameterIn;
  const needed = 2 * (coverIn + tie) + count * db + (count - 1) * Math.max(LEAST_CLEAR_IN, db);
  const dIn = depthIn - coverIn - tie - db / 2;
  if (needed > b + 1e-9 || dIn <= 0) return null;
  return { count, bar, areaIn2: count * areaIn2, dIn, strengthInLb: flexuralStrength(count * areaIn2, dIn, b, fcPsi, fyPsi, FLEXURE_PHI) };
}

function carries({ widthIn: b, fcPsi, fyPsi }: LintelSection, { areaIn2, dIn, strengthInLb }: LintelBars, momentInLb: number): boolean {
  const needed = steelForMoment(momentInLb, dIn, b, fcPsi, fyPsi, FLEXURE_PHI);
  if (needed === null || strengthInLb < momentInLb) return false;
  const least = Math.min(leastSteel(b, dIn, fcPsi, fyPsi), (4 / 3) * needed);
  return areaIn2 >= least && tensionStrain(areaIn2, dIn, b, fcPsi, fyPsi) >= TENSION_CONTROLLED_STRAIN;
}

/** Stirrups for a shear: `none`, a spacing in whole inches, or `too-small` where the section cannot carry it. */
export interface LintelStirrups {
  readonly kind: 'none' | 'least' | 'shear' | 'too-small';
  readonly spacingIn: number | null;
  /** Design shear of the concrete alone, φ · Vc [lb]. */
  readonly concreteLb: number;
}

/** Vertical stirrups of a section with these bars. */
export function lintelStirrups({ widthIn: b, stirrup, legs, fcPsi, fyPsi }: LintelSection, dIn: number, shearLb: number): LintelStirrups {
  const concrete = concreteShear(b, dIn, fcPsi, 1);
  const concreteLb = SHEAR_PHI * concrete;
  if (shearLb <= concreteLb / 2) return { kind: 'none', spacingIn: null, concreteLb };
  const left = Math.max(0, shearLb / SHEAR_PHI - concrete);
  const spacing = stirrupSpacing(left, legs * INCH_BARS[stirrup].areaIn2, Math.min(fyPsi, 60_000), b, dIn, fcPsi);
  // Closer than two inches concrete no longer passes between the stirrups: common practice.
  const whole = spacing === null ? 0 : Math.floor(spacing + 1e-9);
  if (whole < 2) return { kind: 'too-small', spacingIn: null, concreteLb };
  return { kind: left > 0 ? 'shear' : 'least', spacingIn: whole, concreteLb };
}
