import type { Nm } from '../quantity/length.js';
import { placementsOf, type Placement, type PlacementRange } from './placements.js';
import type { CourseRun, Segment } from './runs.js';

export type BondRange = PlacementRange & { readonly minStagger: Nm };

/** What a choice costs, in the order in which it is compared: tee cut-outs and bond first, then forms, cuts, lost stagger, evenness. */
export type LayoutCost = readonly [inCutOuts: number, breaks: number, forms: number, cuts: number, lostStagger: number, spread: number];

export interface LineLayout {
  readonly cost: LayoutCost;
  /** The chosen placement of every segment, by course. */
  readonly chosen: readonly (readonly Placement[])[];
}

/** How many partial layouts are carried from course to course, and how many placements a segment offers each of them. */
export interface Breadth {
  readonly carried: number;
  readonly offered: number;
}

export const USUAL: Breadth = { carried: 6, offered: 3 };
/** For lines where the usual breadth leaves a bond broken. */
export const WIDE: Breadth = { carried: 48, offered: 12 };

export function compareCost(a: LayoutCost, b: LayoutCost): number {
  for (let index = 0; index < a.length; index += 1) {
    const difference = a[index]! - b[index]!;
    if (difference !== 0) return difference;
  }
  return 0;
}

const sum = (a: LayoutCost, b: LayoutCost): LayoutCost => [a[0] + b[0], a[1] + b[1], a[2] + b[2], a[3] + b[3], a[4] + b[4], a[5] + b[5]];
const FREE: LayoutCost = [0, 0, 0, 0, 0, 0];

/** Distance to the nearest of sorted stations; Infinity where there is none. */
function nearest(sorted: readonly Nm[], at: Nm): Nm {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return Math.min(low < sorted.length ? sorted[low]! - at : Infinity, low > 0 ? at - sorted[low - 1]! : Infinity);
}

/**
 * Cost of one placement between the joints below it and the joints no choice moves above it. A joint in a tee's cut-out or within
 * one web of it is dearer than any broken bond (decision 9).
 */
function costOf(placement: Placement, below: readonly Nm[], above: readonly Nm[], forbidden: CourseRun['forbidden'], range: BondRange): LayoutCost {
  const most = range.formLength / 2;
  let inCutOuts = 0;
  let breaks = 0;
  let stagger = most;
  for (const joint of placement.joints) {
    const toBelow = nearest(below, joint);
    const toAbove = nearest(above, joint);
    if (toBelow < range.minStagger) breaks += 1;
    if (toAbove < range.minStagger) breaks += 1;
    for (const zone of forbidden) if (joint > zone.from && joint < zone.to) inCutOuts += 1;
    stagger = Math.min(stagger, toBelow, toAbove);
  }
  return [inCutOuts, breaks, placement.forms, placement.cuts, most - stagger, placement.spread];
}

interface Carried {
  readonly cost: LayoutCost;
  /** All joints of the last course but the seam, sorted. */
  readonly joints: readonly Nm[];
  readonly placements: readonly Placement[];
  readonly below: Carried | null;
}

const byStation = (a: Nm, b: Nm): number => a - b;

/** The joints of a course that the bond counts: fixed ones and the placements' own; seams are exempt. */
export function bondJoints(run: CourseRun, placements: readonly Placement[]): Nm[] {
  return [...run.fixedJoints, ...placements.flatMap((placement) => placement.joints)].sort(byStation);
}

interface Offer {
  readonly placement: Placement;
  readonly cost: LayoutCost;
}

/** Ranked offers by what they depend on: courses repeat, and so do walls. */
export type BondMemory = Map<string, readonly (readonly Offer[])[]>;

const REMEMBERED = 20_000;

/** What a course of a line is laid by, apart from the joints below. */
function courseKey(run: CourseRun, above: readonly Nm[]): string {
  const segments = run.segments.map(
    (part) => `${part.from} ${part.to} ${+part.fixedLeft}${+part.fixedRight}${+part.wholeAtSeam}${+part.seamLeft} ${part.overLeft} ${part.overRight}`,
  );
  return `${+run.ripped}|${segments.join(';')}|${run.forbidden.map(({ from, to }) => `${from} ${to}`).join(';')}|${above.join(' ')}`;
}

/** Best placements of every segment over given joints, cheapest first. */
function offersOver(below: readonly Nm[], run: CourseRun, above: readonly Nm[], range: BondRange, offered: number): readonly (readonly Offer[])[] {
  return run.segments.map((segment) =>
    placementsOf(segment, run.ripped, range)
      .map((placement) => ({ placement, cost: costOf(placement, below, above, run.forbidden, range) }))
      .sort((a, b) => compareCost(a.cost, b.cost))
      .slice(0, offered),
  );
}

/** A carried layout with one more course, before its joints are gathered. */
type Extended = Omit<Carried, 'joints'>;

/** A layout with the best placement of every segment, and the same with one segment changed to its next best. */
function extend(carried: Carried, offers: readonly (readonly Offer[])[]): Extended[] {
  const layout = (picks: readonly Offer[]): Extended => ({
    cost: picks.reduce((total, pick) => sum(total, pick.cost), carried.cost),
    placements: picks.map((pick) => pick.placement),
    below: carried,
  });
  const best = offers.map((ranked) => ranked[0]!);
  const others = offers.flatMap((ranked, segment) => ranked.slice(1).map((offer) => best.map((pick, index) => (index === segment ? offer : pick))));
  return [best, ...others].map(layout);
}

/** The cheapest layouts that differ in their joints: what lies below the last course no longer matters but for its cost. */
function cheapest(extended: readonly Extended[], run: CourseRun, most: number): Carried[] {
  const kept = new Map<string, Carried>();
  for (const layout of [...extended].sort((a, b) => compareCost(a.cost, b.cost))) {
    const joints = bondJoints(run, layout.placements);
    const key = joints.join(' ');
    if (!kept.has(key)) kept.set(key, { ...layout, joints });
    if (kept.size === most) break;
  }
  return [...kept.values()];
}

/**
 * Chooses the pieces of every course of a line, bottom up.
 *
 * Each course is laid over the joints of the course below and under the legs of the course above. A few layouts are carried from
 * course to course; the cheapest at the top is taken: fewest joints closer than the stagger, then fewest forms, fewest cuts, widest
 * stagger. A bond is broken only where every placement of a segment breaks it for every layout carried.
 */
export function layCourses(runs: readonly CourseRun[], range: BondRange, memory: BondMemory, breadth: Breadth): LineLayout {
  if (memory.size > REMEMBERED) memory.clear();
  let carried: Carried[] = [{ cost: FREE, joints: [], placements: [], below: null }];
  runs.forEach((run, course) => {
    const above = [...(runs[course + 1]?.fixedJoints ?? [])].sort(byStation);
    const courseIs = courseKey(run, above);
    const offers = (below: readonly Nm[]): readonly (readonly Offer[])[] => {
      const key = `${breadth.offered}|${courseIs}|${below.join(' ')}`;
      const known = memory.get(key) ?? offersOver(below, run, above, range, breadth.offered);
      memory.set(key, known);
      return known;
    };
    carried = cheapest(carried.flatMap((layout) => extend(layout, offers(layout.joints))), run, breadth.carried);
  });
  const chosen: (readonly Placement[])[] = [];
  for (let layout: Carried | null = carried[0]!; layout.below; layout = layout.below) chosen.unshift(layout.placements);
  return { cost: carried[0]!.cost, chosen };
}

/** The same course seen from its other end; `length` is where station 0 comes to lie. */
export function mirroredRun(run: CourseRun, length: Nm): CourseRun {
  const flip = ({ from, to }: { from: Nm; to: Nm }): { from: Nm; to: Nm } => ({ from: length - to, to: length - from });
  const leg = (piece: CourseRun['startLeg']): CourseRun['startLeg'] => piece && { ...piece, ...flip(piece) };
  return {
    ...run,
    ...flip(run),
    startLeg: leg(run.endLeg),
    endLeg: leg(run.startLeg),
    closureStart: run.closureEnd && { ...run.closureEnd, at: length - run.closureEnd.at },
    closureEnd: run.closureStart && { ...run.closureStart, at: length - run.closureStart.at },
    voids: run.voids.map((gap) => ({ ...gap, ...flip(gap) })).reverse(),
    segments: run.segments.map(mirroredSegment(length)).reverse(),
    fixedJoints: run.fixedJoints.map((at) => length - at).reverse(),
    forbidden: run.forbidden.map(flip).reverse(),
  };
}

const mirroredSegment = (length: Nm) => (segment: Segment): Segment => ({
  from: length - segment.to,
  to: length - segment.from,
  fixedLeft: segment.fixedRight,
  fixedRight: segment.fixedLeft,
  wholeAtSeam: segment.wholeAtSeam,
  seamLeft: segment.seamRight,
  seamRight: segment.seamLeft,
  overLeft: segment.overRight,
  overRight: segment.overLeft,
});

/** Lengths of the pieces of a placement, in order of station. */
export function piecesOf(segment: Segment, placement: Placement): { from: Nm; to: Nm }[] {
  const edges = [segment.from, ...placement.joints, segment.to];
  return edges.slice(1).map((to, index) => ({ from: edges[index]!, to }));
}
