import type { Nm } from '../quantity/length.js';
import type { LaidCourse, LaidWall, Piece } from '../takeoff/laid.js';
import { courseOf } from './laid-places.js';
import { arrivingEnd } from './mitred-corners.js';
import type { Segment } from './segments.js';

/** Both ends of every stretch, where what runs along a wall begins and stops; stretches that touch are one. */
export function endsOf(segments: readonly Segment[]): readonly Nm[] {
  const begun = new Set(segments.map(({ from }) => from));
  const ended = new Set(segments.map(({ to }) => to));
  return segments.flatMap(({ from, to }) => [from, to]).filter((at) => !(begun.has(at) && ended.has(at)));
}

export const middleOf = ({ from, to }: Segment): Nm => Math.round((from + to) / 2);

/** Where a wall arrives at the corner whose unit stands in its course `n`: the node of that course. */
export function cornerStation(arriving: LaidWall, n: number): Nm {
  const course = courseOf(arriving, n);
  return arrivingEnd(arriving) === 'start' ? course.from : course.to;
}

/** The end of the forms that a closure closes: it sits inside them, flush with a free end or with a jamb. */
export function closedEnd({ openings }: LaidWall, course: LaidCourse, { from, to }: Pick<Piece, 'from' | 'to'>): Nm {
  return from === course.from || openings.some(({ formsTo }) => formsTo === from) ? from : to;
}
