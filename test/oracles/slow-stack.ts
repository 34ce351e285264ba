import type { Figures } from './heron-figures.js';

export interface SlowStack {
  readonly full: number;
  readonly strips: number;
  /** Height of a ripped top course, 0 for none [in]. */
  readonly ripped: number;
  readonly height: number;
  readonly deviation: number;
}

/**
 * Every stack there is within the tolerance, best first: all numbers of full courses and strips, with and without a ripped
 * top course of exactly what is missing. decisions.md 11.
 *
 * @param asked height of the wall [in]
 */
export function slowStacks(asked: number, figures: Figures): readonly SlowStack[] {
  const found: SlowStack[] = [];
  for (let full = 1; full * figures.courseHeight <= asked + figures.courseHeight; full++) {
    for (let strips = 0; strips <= full - 1; strips++) {
      const built = full * figures.courseHeight + strips * figures.strip;
      if (Math.abs(built - asked) <= figures.stackTolerance) found.push({ full, strips, ripped: 0, height: built, deviation: built - asked });
      const missing = asked - built;
      if (missing >= figures.minRip && missing < figures.courseHeight) found.push({ full, strips, ripped: missing, height: asked, deviation: 0 });
    }
  }
  const plain = (stack: SlowStack): number => (stack.ripped === 0 && stack.strips === 0 ? 0 : 1);
  const preferred = (stack: SlowStack): number => ((figures.stackPrefers === 'rip') === stack.ripped > 0 ? 0 : 1);
  const courses = (stack: SlowStack): number => stack.full + (stack.ripped > 0 ? 1 : 0);
  return found.sort((a, b) => plain(a) - plain(b) || preferred(a) - preferred(b) || a.strips - b.strips || courses(a) - courses(b));
}

export interface SlowCourse {
  readonly bottom: number;
  readonly top: number;
}

/** Courses from the bottom up, strips in the highest joints between two full courses, never under the ripped one [in]. */
export function slowCourses({ full, strips, ripped }: SlowStack, figures: Figures): readonly SlowCourse[] {
  const courses: SlowCourse[] = [];
  let at = 0;
  for (let n = 1; n <= full; n++) {
    courses.push({ bottom: at, top: at + figures.courseHeight });
    at += figures.courseHeight;
    const jointsAbove = full - 1 - n;
    if (n < full && jointsAbove < strips) at += figures.strip;
  }
  if (ripped > 0) courses.push({ bottom: at, top: at + ripped });
  return courses;
}
