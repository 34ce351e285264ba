import { courseChoices, offersOver, type CourseChoice, type WaysMemory } from './bond-course.js';
import { asLayoutCost, type Cost, type LayoutCost } from './bond-cost.js';
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
interface Carried extends Cost {
  readonly picks: readonly Offer[];
  readonly below: Carried | null;
}

const NOTHING_LAID: Carried = { faults: 0, forms: 0, lostStagger: 0, spread: 0, picks: [], below: null };

/** Whether the placements of a layout are those of a row of best offers with one offer in the place of another. */
function samePicks(picks: readonly Offer[], best: readonly Offer[], segment: number, other: Offer | null): boolean {
  for (let index = 0; index < picks.length; index += 1) {
    if (picks[index]!.way !== (index === segment ? other! : best[index]!).way) return false;
  }
  return true;
}

/** Whether a cost in its parts is more than another, or by `orEqual` as much. */
function isMore(faults: number, forms: number, lostStagger: number, spread: number, than: Cost, orEqual: boolean): boolean {
  if (faults !== than.faults) return faults > than.faults;
  if (forms !== than.forms) return forms > than.forms;
  if (lostStagger !== than.lostStagger) return lostStagger > than.lostStagger;
  return orEqual ? spread >= than.spread : spread > than.spread;
}

/**
 * The cheapest layouts that differ in their last course: what lies below it no longer matters but for its cost. Of layouts that cost the
 * same those found first go first.
 */
class Cheapest {
  readonly kept: Carried[] = [];

  /** @param limit what costs more is of no use */
  constructor(
    private readonly most: number,
    private readonly limit: Cost | null,
  ) {}

  /** Whether nothing that costs as much can enter any more. */
  shuts(faults: number, forms: number, lostStagger: number, spread: number): boolean {
    const { kept, limit, most } = this;
    if (limit !== null && isMore(faults, forms, lostStagger, spread, limit, false)) return true;
    return kept.length === most && isMore(faults, forms, lostStagger, spread, kept[most - 1]!, true);
  }

  /** A layout over one below: the best placement of every segment, but for one that takes another of its offers. */
  enter(below: Carried, faults: number, forms: number, lostStagger: number, spread: number, best: readonly Offer[], segment: number, other: Offer | null): void {
    const { kept } = this;
    for (let alike = 0; alike < kept.length; alike += 1) {
      if (!samePicks(kept[alike]!.picks, best, segment, other)) continue;
      if (isMore(faults, forms, lostStagger, spread, kept[alike]!, true)) return;
      kept.splice(alike, 1);
      break;
    }
    if (kept.length === this.most) kept.pop();
    const picks = other ? best.with(segment, other) : best;
    let place = kept.length;
    kept.push({ faults, forms, lostStagger, spread, picks, below });
    const entered = kept[place]!;
    for (; place > 0 && !isMore(faults, forms, lostStagger, spread, kept[place - 1]!, true); place -= 1) kept[place] = kept[place - 1]!;
    kept[place] = entered;
  }
}

/** What a course costs at least. */
function leastOf(course: CourseChoice): Cost {
  let [faults, forms, lostStagger, spread] = [0, 0, 0, 0];
  for (const { least } of course) {
    faults += least.faults;
    forms += least.forms;
    lostStagger += least.lostStagger;
    spread += least.spread;
  }
  return { faults, forms, lostStagger, spread };
}

/** What is left of a cost for the courses up to each course when those above it cost as little as they can. */
function limitsBelow(dearest: Cost, least: readonly Cost[]): Cost[] {
  let { faults, forms, lostStagger, spread } = dearest;
  const limits: Cost[] = [];
  for (const course of least.toReversed()) {
    limits.push({ faults, forms, lostStagger, spread });
    faults -= course.faults;
    forms -= course.forms;
    lostStagger -= course.lostStagger;
    spread -= course.spread;
  }
  return limits.reverse();
}

/** Lays one more course over a layout. Offers stand in order of cost: where one is too dear, so are those behind it. */
function extend(below: Carried, offers: readonly (readonly Offer[])[], cheapest: Cheapest): void {
  const best: Offer[] = [];
  let { faults, forms, lostStagger, spread } = below;
  for (let segment = 0; segment < offers.length; segment += 1) {
    const offer = offers[segment]![0]!;
    best.push(offer);
    faults += offer.faults;
    forms += offer.forms;
    lostStagger += offer.lostStagger;
    spread += offer.spread;
  }
  if (cheapest.shuts(faults, forms, lostStagger, spread)) return;
  cheapest.enter(below, faults, forms, lostStagger, spread, best, -1, null);
  for (let segment = 0; segment < offers.length; segment += 1) {
    const ranked = offers[segment]!;
    const first = best[segment]!;
    for (let rank = 1; rank < ranked.length; rank += 1) {
      const other = ranked[rank]!;
      const [f, n] = [faults - first.faults + other.faults, forms - first.forms + other.forms];
      const [l, s] = [lostStagger - first.lostStagger + other.lostStagger, spread - first.spread + other.spread];
      if (cheapest.shuts(f, n, l, s)) break;
      cheapest.enter(below, f, n, l, s, best, segment, other);
    }
  }
}

function chosenOf(top: Carried, courses: readonly CourseChoice[]): (readonly Placement[])[] {
  const chosen: (readonly Placement[])[] = [];
  let course = courses.length - 1;
  for (let layout: Carried = top; layout.below; layout = layout.below) {
    chosen.push(layout.picks.map(({ way }, index) => courses[course]![index]!.ways.placements[way]!));
    course -= 1;
  }
  return chosen.reverse();
}

/** The search itself; null where every layout it finds costs more than the dearest that is of use. */
function search(courses: readonly CourseChoice[], least: readonly Cost[], range: BondRange, { carried: most, offered }: Breadth, dearest: Cost | null): Carried | null {
  const limits = dearest && limitsBelow(dearest, least);
  let carried: readonly Carried[] = [NOTHING_LAID];
  for (let index = 0; index < courses.length; index += 1) {
    const course = courses[index]!;
    const below = courses[index - 1] ?? [];
    const cheapest = new Cheapest(most, limits && limits[index]!);
    const { faults, forms, lostStagger, spread } = least[index]!;
    for (const layout of carried) {
      if (cheapest.shuts(layout.faults + faults, layout.forms + forms, layout.lostStagger + lostStagger, layout.spread + spread)) break;
      extend(layout, offersOver(course, layout.picks, below, offered, range), cheapest);
    }
    carried = cheapest.kept;
    if (carried.length === 0) return null;
  }
  return carried[0]!;
}

/**
 * Chooses the pieces of every course of a line, bottom up.
 *
 * Each course is laid over the joints of the course below and under the legs of the course above. A few layouts are carried from
 * course to course; the cheapest at the top is taken: fewest joints closer than the stagger, then fewest forms, fewest cuts, widest
 * stagger. A bond is broken only where every placement of a segment breaks it for every layout carried.
 *
 * Layouts that must come to cost more than one already known are not carried on: what they would be laid over with costs its least at
 * the least. The cheapest layout is the same as if they were, since whatever follows from them costs more too.
 *
 * @param kinds for each course the first one that is laid like it
 * @param dearest a layout that costs more is of no use
 * @returns the cheapest layout found; null where all of them cost more than that
 */
export function layCourses(runs: readonly BondRun[], kinds: readonly number[], range: BondRange, memory: WaysMemory, breadth: Breadth, dearest: Cost | null = null): LineLayout | null {
  const courses = courseChoices(runs, kinds, range, memory);
  const least = courses.map(leastOf);
  const narrow = search(courses, least, range, { ...breadth, carried: 1 }, dearest);
  // Carrying one layout may find a cheaper one than carrying many: then nothing is as cheap, and the search goes on without it.
  const found = (narrow && search(courses, least, range, breadth, narrow)) ?? search(courses, least, range, breadth, dearest);
  return found && { cost: asLayoutCost(found), chosen: chosenOf(found, courses) };
}
