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
interface Carried extends Cost {
  readonly picks: readonly Offer[];
  readonly below: Carried | null;
}

/** Whether a is dearer than b, or as dear. */
const notCheaper = (a: Cost, b: Cost): boolean => compareNamed(a, b) >= 0;

/** Whether the placements of a layout are those of a row of best offers with one offer in the place of another. */
function samePicks(picks: readonly Offer[], best: readonly Offer[], segment: number, other: Offer | null): boolean {
  for (let index = 0; index < picks.length; index += 1) {
    if (picks[index]!.way !== (index === segment ? other! : best[index]!).way) return false;
  }
  return true;
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
  shuts(cost: Cost): boolean {
    if (this.limit && compareNamed(cost, this.limit) > 0) return true;
    return this.kept.length === this.most && notCheaper(cost, this.kept[this.most - 1]!);
  }

  /** A layout over one below: the best placement of every segment, but for one that takes another of its offers. */
  enter(below: Carried, cost: Cost, best: readonly Offer[], segment: number, other: Offer | null): void {
    const { kept } = this;
    const alike = kept.findIndex(({ picks }) => samePicks(picks, best, segment, other));
    if (alike >= 0) {
      if (notCheaper(cost, kept[alike]!)) return;
      kept.splice(alike, 1);
    }
    let place = kept.length;
    while (place > 0 && compareNamed(cost, kept[place - 1]!) < 0) place -= 1;
    const { inCutOuts, breaks, forms, cuts, lostStagger, spread } = cost;
    kept.splice(place, 0, { inCutOuts, breaks, forms, cuts, lostStagger, spread, picks: other ? best.with(segment, other) : best, below });
    if (kept.length > this.most) kept.pop();
  }
}

/** The same cost to be written over: the inside of the search makes no new ones. */
type Running = { -readonly [part in keyof Cost]: number };

function set(running: Running, cost: Cost): void {
  running.inCutOuts = cost.inCutOuts;
  running.breaks = cost.breaks;
  running.forms = cost.forms;
  running.cuts = cost.cuts;
  running.lostStagger = cost.lostStagger;
  running.spread = cost.spread;
}

function add(running: Running, cost: Cost, times: 1 | -1): void {
  running.inCutOuts += times * cost.inCutOuts;
  running.breaks += times * cost.breaks;
  running.forms += times * cost.forms;
  running.cuts += times * cost.cuts;
  running.lostStagger += times * cost.lostStagger;
  running.spread += times * cost.spread;
}

/** What is left of a cost for the courses up to each course when those above it cost as little as they can. */
function limitsBelow(dearest: Cost, courses: readonly CourseChoice[]): Cost[] {
  const running: Running = { ...dearest };
  const limits: Cost[] = [];
  for (const course of courses.toReversed()) {
    limits.push({ ...running });
    for (const { least } of course) add(running, least, -1);
  }
  return limits.reverse();
}

/** Lays one more course over a layout. Offers stand in order of cost: where one is too dear, so are those behind it. */
function extend(below: Carried, offers: readonly (readonly Offer[])[], running: Running, cheapest: Cheapest): void {
  const best = offers.map((ranked) => ranked[0]!);
  set(running, below);
  for (const offer of best) add(running, offer, 1);
  if (cheapest.shuts(running)) return;
  cheapest.enter(below, running, best, -1, null);
  for (let segment = 0; segment < offers.length; segment += 1) {
    const ranked = offers[segment]!;
    for (let rank = 1; rank < ranked.length; rank += 1) {
      const other = ranked[rank]!;
      add(running, best[segment]!, -1);
      add(running, other, 1);
      const shut = cheapest.shuts(running);
      if (!shut) cheapest.enter(below, running, best, segment, other);
      add(running, other, -1);
      add(running, best[segment]!, 1);
      if (shut) break;
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
function search(courses: readonly CourseChoice[], range: BondRange, { carried: most, offered }: Breadth, dearest: Cost | null): Carried | null {
  const limits = dearest && limitsBelow(dearest, courses);
  const running: Running = { ...FREE };
  let carried: readonly Carried[] = [{ ...FREE, picks: [], below: null }];
  for (let index = 0; index < courses.length; index += 1) {
    const course = courses[index]!;
    const below = courses[index - 1] ?? [];
    const cheapest = new Cheapest(most, limits && limits[index]!);
    for (const layout of carried) {
      set(running, layout);
      for (const { least } of course) add(running, least, 1);
      if (cheapest.shuts(running)) break;
      extend(layout, offersOver(course, layout.picks, below, offered, range), running, cheapest);
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
  const narrow = search(courses, range, { ...breadth, carried: 1 }, dearest);
  // Carrying one layout may find a cheaper one than carrying many: then nothing is as cheap, and the search goes on without it.
  const found = (narrow && search(courses, range, breadth, narrow)) ?? search(courses, range, breadth, dearest);
  return found && { cost: asLayoutCost(found), chosen: chosenOf(found, courses) };
}
