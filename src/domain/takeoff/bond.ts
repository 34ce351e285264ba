import { courseChoices, offersOver, type CourseChoice, type WaysMemory } from './bond-course.js';
import { asLayoutCost, compareNamed, FREE, type Cost, type LayoutCost } from './bond-cost.js';
import type { BondRange, Offer } from './bond-offers.js';
import type { BondRun } from './layout-kinds.js';
import type { LaidLine } from './layout-line.js';
import type { Seam } from './layout-seams.js';
import type { Placement } from './placements.js';

/** A line laid before: the end it was laid from, and the seam as seen from there. */
export interface RememberedLine {
  readonly laid: LaidLine;
  readonly turned: boolean;
  readonly seam: Seam | null;
}

/** What is remembered of lines of one range: layouts by all they depend on, and placements by segment. */
export type BondMemory = Map<string, RememberedLine> & { ways?: WaysMemory };

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

/** A partial layout: the placements of its last course and what lies below it. */
interface Carried {
  readonly cost: Cost;
  readonly picks: readonly Offer[];
  readonly below: Carried | null;
}

/** A carried layout with one more course: the best placement of every segment, but for one that takes another of its offers. */
interface Extended {
  readonly cost: Cost;
  readonly below: Carried;
  readonly best: readonly Offer[];
  readonly segment: number;
  readonly other: Offer | null;
}

const plus = (total: Cost, next: Cost): Cost => ({
  inCutOuts: total.inCutOuts + next.inCutOuts,
  breaks: total.breaks + next.breaks,
  forms: total.forms + next.forms,
  cuts: total.cuts + next.cuts,
  lostStagger: total.lostStagger + next.lostStagger,
  spread: total.spread + next.spread,
});

/** The cost with one offer in the place of another. */
const exchanged = (total: Cost, before: Cost, after: Cost): Cost => ({
  inCutOuts: total.inCutOuts - before.inCutOuts + after.inCutOuts,
  breaks: total.breaks - before.breaks + after.breaks,
  forms: total.forms - before.forms + after.forms,
  cuts: total.cuts - before.cuts + after.cuts,
  lostStagger: total.lostStagger - before.lostStagger + after.lostStagger,
  spread: total.spread - before.spread + after.spread,
});

function extend(below: Carried, offers: readonly (readonly Offer[])[], into: Extended[]): void {
  const best = offers.map((ranked) => ranked[0]!);
  const cost = best.reduce(plus, below.cost);
  into.push({ cost, below, best, segment: -1, other: null });
  offers.forEach((ranked, segment) => {
    for (const other of ranked.slice(1)) into.push({ cost: exchanged(cost, best[segment]!, other), below, best, segment, other });
  });
}

const picksOf = ({ best, segment, other }: Extended): readonly Offer[] => (other ? best.with(segment, other) : best);
const samePicks = (a: readonly Offer[], b: readonly Offer[]): boolean => a.every(({ way }, index) => way === b[index]!.way);

/** The cheapest layouts that differ in their last course: what lies below it no longer matters but for its cost. */
function cheapest(extended: Extended[], most: number): Carried[] {
  const kept: Carried[] = [];
  for (const layout of extended.sort((a, b) => compareNamed(a.cost, b.cost))) {
    const picks = picksOf(layout);
    if (!kept.some((other) => samePicks(other.picks, picks))) kept.push({ cost: layout.cost, picks, below: layout.below });
    if (kept.length === most) break;
  }
  return kept;
}

function chosenOf(top: Carried, courses: readonly CourseChoice[]): (readonly Placement[])[] {
  const chosen: (readonly Placement[])[] = [];
  let course = courses.length - 1;
  for (let layout: Carried = top; layout.below; layout = layout.below) {
    chosen.push(layout.picks.map(({ way }, index) => courses[course]![index]!.ways[way]!));
    course -= 1;
  }
  return chosen.reverse();
}

/**
 * Chooses the pieces of every course of a line, bottom up.
 *
 * Each course is laid over the joints of the course below and under the legs of the course above. A few layouts are carried from
 * course to course; the cheapest at the top is taken: fewest joints closer than the stagger, then fewest forms, fewest cuts, widest
 * stagger. A bond is broken only where every placement of a segment breaks it for every layout carried.
 *
 * @param kinds for each course the first one that is laid like it
 */
export function layCourses(runs: readonly BondRun[], kinds: readonly number[], range: BondRange, memory: WaysMemory, breadth: Breadth): LineLayout {
  const courses = courseChoices(runs, kinds, range, memory);
  let carried: Carried[] = [{ cost: FREE, picks: [], below: null }];
  courses.forEach((course, index) => {
    const extended: Extended[] = [];
    for (const layout of carried) extend(layout, offersOver(course, layout.picks, courses[index - 1] ?? [], breadth.offered, range), extended);
    carried = cheapest(extended, breadth.carried);
  });
  return { cost: asLayoutCost(carried[0]!.cost), chosen: chosenOf(carried[0]!, courses) };
}
