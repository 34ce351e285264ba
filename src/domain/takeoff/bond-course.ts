import type { Nm } from '../quantity/length.js';
import { cheapestOver, waysTable, type BondRange, type JointRow, type Offer, type Ways, type Zone } from './bond-offers.js';
import { formsOf, type Cost } from './bond-cost.js';
import type { BondRun } from './layout-kinds.js';
import { placementsOf } from './placements.js';
import type { Segment } from './runs.js';

/** A segment as the search sees it: the ways to fill it and what no choice moves. */
interface SegmentChoice {
  readonly segment: Segment;
  /** In order of forms, then cuts. */
  readonly ways: Ways;
  /** Fixed joints of the courses below and above that it may come near. */
  readonly fixed: readonly JointRow[];
  readonly zones: readonly Zone[];
  /** Segments of the course below whose joints it may come near. */
  readonly over: readonly number[];
  /** What it costs at least, whatever lies below: its cheapest placement between the fixed joints alone. */
  readonly least: Cost;
  /** Offers found before, by the placements below. */
  readonly known: Map<number, readonly Offer[]>;
}

/** A course between the courses below and above it: all that a choice of its placements depends on. */
export type CourseChoice = readonly SegmentChoice[];

/** Placements by what they depend on: segments of one length and kind share theirs. */
export type WaysMemory = Map<string | number, Ways>;

function waysKey({ from, to, fixedLeft, fixedRight, wholeAtSeam, seamLeft, overLeft, overRight }: Segment, ripped: boolean): string | number {
  const kind = +fixedLeft + 2 * +fixedRight + 4 * +wholeAtSeam + 8 * +seamLeft + 16 * +ripped;
  const key = (to - from) * 32 + kind;
  return overLeft === 0 && overRight === 0 ? key : `${key} ${overLeft} ${overRight}`;
}

function waysOf(segment: Segment, ripped: boolean, range: BondRange, memory: WaysMemory): Ways {
  const key = waysKey(segment, ripped);
  const known = memory.get(key);
  if (known) return known;
  const ways = waysTable(placementsOf(segment, ripped, range).sort((a, b) => a.forms - b.forms || a.cuts - b.cuts));
  memory.set(key, ways);
  return ways;
}

function segmentChoice(segment: Segment, run: BondRun, below: CourseChoice, fixed: readonly Nm[], range: BondRange, memory: WaysMemory): SegmentChoice {
  const [low, high] = [segment.from - range.formLength / 2, segment.to + range.formLength / 2];
  const over: number[] = [];
  below.forEach(({ segment: { from, to } }, index) => {
    if (to > low && from < high) over.push(index);
  });
  const near: JointRow[] = [];
  for (const from of fixed) if (from > low && from < high) near.push({ from, count: 1 });
  const ways = waysOf(segment, run.ripped, range, memory);
  const { forms, cuts } = ways.placements[0]!;
  const alone = near.length + run.forbidden.length === 0;
  const least = alone ? { faults: 0, forms: formsOf(forms, cuts), lostStagger: 0, spread: 0 } : cheapestOver(segment.from, ways, near, run.forbidden, 1, range)[0]!;
  return { segment, ways, fixed: near, zones: run.forbidden, over, least, known: new Map() };
}

/** The offers of every segment of a course over a layout of the course below, given by its placements there. */
export function offersOver(course: CourseChoice, below: readonly Offer[], belowCourse: CourseChoice, most: number, range: BondRange): (readonly Offer[])[] {
  const found: (readonly Offer[])[] = [];
  for (const { segment, ways, fixed, zones, over, known } of course) {
    let key = most;
    for (const index of over) key = key * belowCourse[index]!.ways.placements.length + below[index]!.way;
    let offers = known.get(key);
    if (!offers) {
      offers = cheapestOver(segment.from, ways, over.length === 0 ? fixed : [...fixed, ...over.map((index) => below[index]!)], zones, most, range);
      if (Number.isSafeInteger(key)) known.set(key, offers);
    }
    found.push(offers);
  }
  return found;
}

/**
 * The choices of every course of a line, bottom up; courses alike over and under courses alike are one choice, so that what was
 * found for the one holds for the other.
 *
 * @param kinds for each course the first one that is laid like it
 */
export function courseChoices(runs: readonly BondRun[], kinds: readonly number[], range: BondRange, memory: WaysMemory): CourseChoice[] {
  const choices: CourseChoice[] = [];
  for (let course = 0; course < runs.length; course += 1) {
    const alike = alikeBefore(kinds, course);
    if (alike >= 0) {
      choices.push(choices[alike]!);
      continue;
    }
    const run = runs[course]!;
    const fixed = [...(runs[course - 1]?.fixedJoints ?? []), ...(runs[course + 1]?.fixedJoints ?? [])];
    const below = choices[course - 1] ?? [];
    choices.push(run.segments.map((segment) => segmentChoice(segment, run, below, fixed, range, memory)));
  }
  return choices;
}

/** The first course of the kind that stands between courses of the same kinds; −1 where this is the first. */
function alikeBefore(kinds: readonly number[], course: number): number {
  for (let other = 0; other < course; other += 1) {
    if (kinds[other] === kinds[course] && kinds[other - 1] === kinds[course - 1] && kinds[other + 1] === kinds[course + 1]) return other;
  }
  return -1;
}
