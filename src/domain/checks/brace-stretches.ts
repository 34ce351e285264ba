import { alongLine, type BraceLine, type OpenSpan } from './brace-lines.js';
import type { Junction } from '../takeoff/laid.js';
import type { Nm } from '../quantity/length.js';

/** Why a brace stands where it stands. */
export type BraceReason = 'corner' | 'hinged-corner' | 'free-end' | 'tee' | 'opening' | 'radius-wall' | 'between';

/** One end of a stretch: what it ends at, and how far inside it a brace cannot stand. */
interface StretchEnd {
  readonly at: Nm;
  readonly reason: BraceReason;
  readonly clear: Nm;
}

/** Forms that run on without corner, end, tee or interrupting opening, in axis stations of the user's direction. */
export interface BraceStretch {
  readonly from: StretchEnd;
  readonly to: StretchEnd;
}

/**
 * The stretches of a line of walls that are braced each by itself: from the first form's end to the last one's, parted at tees and at the
 * openings that interrupt a course. A course that is only notched is not interrupted.
 *
 * @source statement of the project's decisions 13, 16, 20 and 30
 */
export function braceStretches(line: BraceLine): readonly BraceStretch[] {
  const first = { at: line.first, reason: endReason(line.start), clear: 0 };
  const last = { at: line.last, reason: endReason(line.end), clear: 0 };
  const whole = interruptions(line).reduce<readonly BraceStretch[]>(without, [{ from: first, to: last }]);
  return teesOn(line).reduce(partedAt, whole).filter(({ from, to }) => to.at > from.at);
}

/** What openings take out of whole courses, over all courses together. */
const interruptions = ({ walls }: BraceLine): readonly OpenSpan[] =>
  merged(walls.flatMap((member) => member.wall.courses.flatMap(({ voids }) => voids.map((span) => alongLine(member, span)))), (last, from) => from <= last);

/** In order, as one where they meet. */
function merged(spans: readonly OpenSpan[], meet: (last: Nm, from: Nm) => boolean): readonly OpenSpan[] {
  const known: OpenSpan[] = [];
  for (const { from, to } of [...spans].sort((a, b) => a.from - b.from)) {
    const last = known.at(-1);
    if (last && meet(last.to, from)) known[known.length - 1] = { from: last.from, to: Math.max(last.to, to) };
    else known.push({ from, to });
  }
  return known;
}

const without = (stretches: readonly BraceStretch[], { from, to }: OpenSpan): readonly BraceStretch[] =>
  stretches.flatMap((stretch): readonly BraceStretch[] => {
    if (to <= stretch.from.at || from >= stretch.to.at) return [stretch];
    const jamb = (at: Nm): StretchEnd => ({ at, reason: 'opening', clear: 0 });
    return [{ ...stretch, to: jamb(from) }, { ...stretch, from: jamb(to) }].filter((part) => part.to.at > part.from.at);
  });

const partedAt = (stretches: readonly BraceStretch[], tee: StretchEnd): readonly BraceStretch[] =>
  stretches.flatMap((stretch) => (tee.at > stretch.from.at && tee.at < stretch.to.at ? [{ ...stretch, to: tee }, { ...stretch, from: tee }] : [stretch]));

/** Tees that stand along the line and not at its ends; one for those that share its cut-out, on either side or in other levels. */
const teesOn = ({ first, last, cuts }: BraceLine): readonly StretchEnd[] =>
  merged(cuts.filter(({ from, to }) => from > first && to < last), (end, from) => from < end)
    .map(({ from, to }) => ({ at: Math.round((from + to) / 2), reason: 'tee', clear: Math.ceil((to - from) / 2) }));

const endReason = (junction: Junction | null): BraceReason => (junction === null ? 'free-end' : reasonOf(junction));

function reasonOf({ kind, unit }: Junction): BraceReason {
  if (kind === 'free-end') return 'free-end';
  if (kind === 'tee' || kind === 'crossing') return 'tee';
  if (kind === 'straight') return 'between';
  return unit === 'corner-hinged' ? 'hinged-corner' : 'corner';
}
