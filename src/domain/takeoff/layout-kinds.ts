import type { CourseRun, Segment } from './runs.js';

/** What the layout of a course depends on. */
export type BondRun = Pick<CourseRun, 'ripped' | 'segments' | 'fixedJoints' | 'forbidden'>;

const sameSegment = (a: Segment, b: Segment): boolean =>
  a.from === b.from && a.to === b.to && a.fixedLeft === b.fixedLeft && a.fixedRight === b.fixedRight && a.wholeAtSeam === b.wholeAtSeam &&
  a.seamLeft === b.seamLeft && a.seamRight === b.seamRight && a.overLeft === b.overLeft && a.overRight === b.overRight;

/** Whether two courses are laid alike, given the same courses below and above. */
export function sameCourse(a: BondRun, b: BondRun): boolean {
  if (a.ripped !== b.ripped || a.segments.length !== b.segments.length || a.fixedJoints.length !== b.fixedJoints.length || a.forbidden.length !== b.forbidden.length) return false;
  for (let index = 0; index < a.segments.length; index += 1) if (!sameSegment(a.segments[index]!, b.segments[index]!)) return false;
  for (let index = 0; index < a.fixedJoints.length; index += 1) if (a.fixedJoints[index] !== b.fixedJoints[index]) return false;
  for (let index = 0; index < a.forbidden.length; index += 1) {
    if (a.forbidden[index]!.from !== b.forbidden[index]!.from || a.forbidden[index]!.to !== b.forbidden[index]!.to) return false;
  }
  return true;
}

/** For each course the first one that is laid like it. */
export function kindsOf(runs: readonly BondRun[]): number[] {
  const kinds: number[] = [];
  runs.forEach((run, course) => {
    let kind = 0;
    while (kind < course && !(kinds[kind] === kind && sameCourse(runs[kind]!, run))) kind += 1;
    kinds.push(kind);
  });
  return kinds;
}

const segmentKey = (part: Segment): string =>
  `${part.from} ${part.to} ${part.overLeft} ${part.overRight} ${+part.fixedLeft}${+part.fixedRight}${+part.wholeAtSeam}${+part.seamLeft}${+part.seamRight}`;

/** The courses of a line with something done to each kind of course once. */
export function eachKind<T>(runs: readonly BondRun[], kinds: readonly number[], make: (run: BondRun) => T): T[] {
  const made: T[] = [];
  kinds.forEach((kind, course) => made.push(kind === course ? make(runs[course]!) : made[kind]!));
  return made;
}

/** All that the layout of a line depends on, as one word: lines of one key are laid with the same pieces. */
export function lineKey(runs: readonly BondRun[], kinds: readonly number[]): string {
  let key = kinds.join(' ');
  kinds.forEach((kind, course) => {
    if (kind !== course) return;
    const { ripped, segments, fixedJoints, forbidden } = runs[course]!;
    key += `|${+ripped}`;
    for (const segment of segments) key += `;${segmentKey(segment)}`;
    for (const at of fixedJoints) key += `,${at}`;
    for (const { from, to } of forbidden) key += `.${from} ${to}`;
  });
  return key;
}
