import { designLintel, type LintelDesign } from './lintel-design.js';
import { inchesOf } from './strength-units.js';
import { inSi } from '../quantity/quantity.js';
import type { ConcreteOver } from './lintel-over-opening.js';
import type { LintelSection } from './lintel-section.js';

export const LINTEL_FC_PSI = 3000;
export const LINTEL_FY_PSI = 60_000;
export const LINTEL_COVER_IN = 1.5;
/** Lintels of prescriptive walls are 8 to 24 in deep. irc-2018 R608.8, found in summaries. */
const SHALLOWEST_IN = 8;
const DEEPEST_IN = 24;
/** A clear span of four depths or less is a deep beam. aci-318-14 §9.9.1.1, from memory. */
const DEEP_SPAN_IN_DEPTHS = 4;
const SAME = 1e-9;

/**
 * Depth that a lintel is designed with: the greatest whole inch that leaves the span over four depths, within 8 and 24 in; a wall that is
 * shallower over the opening is taken as it is [in].
 */
export function lintelDepth(clearIn: number, leastIn: number): number {
  const ordinary = Math.ceil(clearIn / DEEP_SPAN_IN_DEPTHS - SAME) - 1;
  return Math.min(leastIn, Math.min(DEEPEST_IN, Math.max(SHALLOWEST_IN, ordinary)));
}

/** Whether a clear span is at most four depths: a deep beam. aci-318-14 §9.9.1.1, from memory. */
const isDeep = (clearIn: number, depthIn: number): boolean => clearIn <= DEEP_SPAN_IN_DEPTHS * depthIn + SAME;

/** A lintel over one opening of a job, at the depth chosen for it. */
export function lintelOver(over: ConcreteOver, loadLbPerFt: number): { readonly section: LintelSection; readonly design: LintelDesign } {
  const spanIn = inchesOf(over.clear);
  const section: LintelSection = {
    widthIn: inchesOf(over.narrow.width), depthIn: lintelDepth(spanIn, inchesOf(over.least)), coverIn: LINTEL_COVER_IN, stirrup: '#3', legs: 2, fcPsi: LINTEL_FC_PSI, fyPsi: LINTEL_FY_PSI,
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
  const deep: Readonly<Record<string, string>> = isDeep(clearMm / 25.4, depthIn) ? { deepBeam: 'yes' } : {};
  const momentShare = momentInLb / bars.strengthInLb;
  return { ...forces, ...deep, by: 'aci-318-14', bars: `${bars.count}-${bars.bar}`, ...spaced, momentShare, shearOfConcreteShare: shearLb / stirrups.concreteLb, governs: `stirrups-${stirrups.kind}` };
}
