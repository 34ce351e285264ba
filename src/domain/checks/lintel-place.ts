import { designLintel, type LintelDesign } from './lintel-design.js';
import { inchesOf } from './strength-units.js';
import { inSi } from '../quantity/quantity.js';
import { INCH_BARS } from '../engineering/astm-a615/bars.js';
import { NM_PER_INCH, toMm } from '../quantity/length.js';
import { simplifiedDevelopment } from '../engineering/aci-318-14/simplified-development.js';
import { tensionLap } from '../engineering/aci-318-14/tension-lap.js';
import type { ConcreteOver } from './lintel-over-opening.js';
import type { LaidOpening } from '../takeoff/laid.js';
import type { LintelSection } from './lintel-section.js';

export const LINTEL_FC_PSI = 3000;
export const LINTEL_FY_PSI = 60_000;
const COVER_IN = 1.5;
/** Lintels of prescriptive walls are 8 to 24 in deep. irc-2018 R608.8, found in summaries. */
const SHALLOWEST_IN = 8;
const DEEPEST_IN = 24;
/** A clear span of four depths or less is a deep beam. aci-318-14 §9.9.1.1, from memory. */
const DEEP_SPAN_IN_DEPTHS = 4;
const TRIM_BAR = '#4';
/** Trim bars run at least this far past an opening. irc-2018 R608.8.1, found in summaries. */
const LEAST_PAST_IN = 24;
const SAME = 1e-9;

/**
 * Depth that a lintel is designed with: the greatest whole inch that leaves the span over four depths, within 8 and 24 in; a wall that is
 * shallower over the opening is taken as it is [in].
 */
export function lintelDepth(clearIn: number, leastIn: number): number {
  const ordinary = Math.ceil(clearIn / DEEP_SPAN_IN_DEPTHS - SAME) - 1;
  return Math.min(leastIn, Math.min(DEEPEST_IN, Math.max(SHALLOWEST_IN, ordinary)));
}

/** A lintel over one opening of a job, at the depth chosen for it. */
export function lintelOver(over: ConcreteOver, loadLbPerFt: number): { readonly section: LintelSection; readonly design: LintelDesign } {
  const spanIn = inchesOf(over.clear);
  const section: LintelSection = {
    widthIn: inchesOf(over.narrow.width), depthIn: lintelDepth(spanIn, inchesOf(over.least)), coverIn: COVER_IN, stirrup: '#3', legs: 2, fcPsi: LINTEL_FC_PSI, fyPsi: LINTEL_FY_PSI,
  };
  const stirruped = designLintel(section, spanIn, loadLbPerFt);
  if (stirruped.bars !== null) return { section, design: stirruped };
  // A narrow core has no room for bars inside a stirrup: a bar alone does where half the shear of the concrete is enough.
  const bare = { ...section, legs: 0 };
  const alone = designLintel(bare, spanIn, loadLbPerFt);
  return alone.bars === null ? { section, design: stirruped } : { section: bare, design: alone };
}

/** What is printed of a lintel: forces, bars, stirrups over the whole clear span, shares of the capacities. */
export function lintelResults({ depthIn }: LintelSection, { momentInLb, shearLb, bars, stirrups }: LintelDesign, clearMm: number): Readonly<Record<string, number | string>> {
  const forces = { depthMm: depthIn * 25.4, momentKnM: inSi('moment', 'ft·lb', momentInLb / 12), momentFtLb: momentInLb / 12, shearKn: inSi('force', 'lb', shearLb), shearLb };
  if (bars === null || stirrups === null) return { ...forces, bars: 'none fit', governs: 'opening-too-wide' };
  const { spacingIn } = stirrups;
  const spaced: Readonly<Record<string, number | string>> = spacingIn === null ? { stirrups: 'none' } : { stirrups: '#3', stirrupSpacingMm: spacingIn * 25.4, stirrupsOverMm: clearMm };
  const momentShare = momentInLb / bars.strengthInLb;
  return { ...forces, bars: `${bars.count}-${bars.bar}`, ...spaced, momentShare, shearOfConcreteShare: shearLb / stirrups.concreteLb, governs: `stirrups-${stirrups.kind}` };
}

/** Bars around an opening: one beside each jamb, one over the head where concrete is over it, one under a sill. */
export function trimBars({ sill }: LaidOpening, over: ConcreteOver): Readonly<Record<string, number | string>> {
  // A bar over the head has more than a foot of fresh concrete under it: the factor of top bars serves all of them.
  const lap = tensionLap(simplifiedDevelopment(INCH_BARS[TRIM_BAR].diameterIn, LINTEL_FC_PSI, LINTEL_FY_PSI, true, false), 'B');
  const past = Math.max(LEAST_PAST_IN, Math.ceil(lap - SAME));
  return { trimBar: TRIM_BAR, trimBesideEach: 1, trimAbove: over.least > 0 ? 1 : 0, trimBelow: sill > 0 ? 1 : 0, trimPastCornerMm: toMm(past * NM_PER_INCH) };
}
