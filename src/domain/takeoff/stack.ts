import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { Stack } from './laid.js';

/** Parameters of the range that decide a height stack. */
export type StackRange = Pick<FormRange, 'courseHeight' | 'stripHeight'> & {
  readonly parameters: Pick<FormRange['parameters'], 'stackTolerance' | 'minRip' | 'stackPrefers'>;
};

/** One horizontal layer of a stack, bottom up. */
export interface Layer {
  readonly kind: 'course' | 'strip';
  /** Number of the course, or of the course the strip lies on; from 1. */
  readonly course: number;
  readonly bottom: Nm;
  readonly height: Nm;
  readonly ripped: boolean;
}

const LISTED = 6;

const isPlain = (stack: Stack): boolean => stack.ripped === null && stack.strips === 0;
const kindOf = (stack: Stack): 'rip' | 'strips' => (stack.ripped === null ? 'strips' : 'rip');

/**
 * Every stack that could stand for an asked height: n full courses, a strips (a ≤ n − 1: never first, last or adjacent),
 * and perhaps one course ripped to what is missing. Strips lie between full courses only, so none is under the ripped one.
 */
function candidates(asked: Nm, { courseHeight, stripHeight, parameters }: StackRange): Stack[] {
  const found: Stack[] = [];
  const most = Math.floor(asked / courseHeight) + 1;
  for (let full = 1; full <= most; full += 1) {
    for (let strips = 0; strips <= (stripHeight === null ? 0 : full - 1); strips += 1) {
      const height = full * courseHeight + strips * (stripHeight ?? 0);
      const deviation = height - asked;
      if (deviation > courseHeight) break;
      if (Math.abs(deviation) <= courseHeight) found.push({ courses: full, strips, ripped: null, height, deviation });
      const missing = asked - height;
      if (missing >= parameters.minRip && missing < courseHeight) {
        found.push({ courses: full + 1, strips, ripped: missing, height: asked, deviation: 0 });
      }
    }
  }
  return found;
}

/**
 * The stack for an asked height and the next best ones.
 *
 * Within tolerance: plain courses first, then the preferred kind, fewest strips, fewest courses. Outside it: the smallest
 * deviation. `withinTolerance` false means that no stack meets the height (finding `height-not-coursed`).
 *
 * @source decisions 11 of the project; tolerances are common practice, no source
 */
export function solveStack(asked: Nm, range: StackRange): { chosen: Stack; alternatives: Stack[]; withinTolerance: boolean } {
  const { stackTolerance, stackPrefers } = range.parameters;
  const within = (stack: Stack): boolean => Math.abs(stack.deviation) <= stackTolerance;
  const rank = (stack: Stack): number => (isPlain(stack) ? 0 : kindOf(stack) === stackPrefers ? 1 : 2);
  const byDeviation = (a: Stack, b: Stack): number =>
    Math.abs(a.deviation) - Math.abs(b.deviation) || rank(a) - rank(b) || a.strips - b.strips || a.courses - b.courses || b.deviation - a.deviation;
  const all = candidates(asked, range);
  const kept = all
    .filter(within)
    .sort((a, b) => rank(a) - rank(b) || a.strips - b.strips || a.courses - b.courses || Math.abs(a.deviation) - Math.abs(b.deviation));
  const chosen = kept[0] ?? [...all].sort(byDeviation)[0];
  if (!chosen) throw new RangeError(`no course fits a wall ${asked} nm high`);
  const alternatives = all.filter((stack) => stack !== chosen).sort(byDeviation).slice(0, LISTED);
  return { chosen, alternatives, withinTolerance: kept.length > 0 };
}

/** The layers of a stack bottom up; strips take the highest bed joints between full courses, where the pressure is least. */
export function layersOf(stack: Stack, range: Pick<FormRange, 'courseHeight' | 'stripHeight'>): Layer[] {
  const full = stack.ripped === null ? stack.courses : stack.courses - 1;
  const layers: Layer[] = [];
  let bottom: Nm = 0;
  for (let course = 1; course <= stack.courses; course += 1) {
    const ripped = course > full;
    const height = ripped ? stack.ripped! : range.courseHeight;
    layers.push({ kind: 'course', course, bottom, height, ripped });
    bottom += height;
    const joint = full - course;
    if (joint >= 1 && joint <= stack.strips) {
      layers.push({ kind: 'strip', course, bottom, height: range.stripHeight!, ripped: false });
      bottom += range.stripHeight!;
    }
  }
  return layers;
}
