import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';
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

export interface OpenSpan {
  readonly from: Nm;
  readonly to: Nm;
}

/**
 * The stretches of a wall that are braced each by itself: from the first form's end to the last one's, parted at tees and at the openings that
 * interrupt a course. A course that is only notched is not interrupted.
 *
 * @source statement of the project's decisions 16, 20 and 30
 */
export function braceStretches(storey: LaidStorey, wall: LaidWall): readonly BraceStretch[] {
  const first = { at: wall.trimStart, reason: endReason(storey, wall.startJunction), clear: 0 };
  const last = { at: wall.length - wall.trimEnd, reason: endReason(storey, wall.endJunction), clear: 0 };
  const whole = interruptions(wall).reduce<readonly BraceStretch[]>(without, [{ from: first, to: last }]);
  return teesOn(storey, wall).reduce(partedAt, whole).filter(({ from, to }) => to.at > from.at);
}

/** What openings take out of whole courses, over all courses together, in order and merged where they meet. */
export function interruptions({ courses }: LaidWall): readonly OpenSpan[] {
  const spans = courses.flatMap(({ voids }) => voids).sort((a, b) => a.from - b.from);
  return spans.reduce<readonly OpenSpan[]>((merged, { from, to }) => {
    const last = merged.at(-1);
    if (!last || from > last.to) return [...merged, { from, to }];
    return [...merged.slice(0, -1), { from: last.from, to: Math.max(last.to, to) }];
  }, []);
}

const without = (stretches: readonly BraceStretch[], { from, to }: OpenSpan): readonly BraceStretch[] =>
  stretches.flatMap((stretch): readonly BraceStretch[] => {
    if (to <= stretch.from.at || from >= stretch.to.at) return [stretch];
    const jamb = (at: Nm): StretchEnd => ({ at, reason: 'opening', clear: 0 });
    return [{ ...stretch, to: jamb(from) }, { ...stretch, from: jamb(to) }].filter((part) => part.to.at > part.from.at);
  });

const partedAt = (stretches: readonly BraceStretch[], tee: StretchEnd): readonly BraceStretch[] =>
  stretches.flatMap((stretch) => (tee.at > stretch.from.at && tee.at < stretch.to.at ? [{ ...stretch, to: tee }, { ...stretch, from: tee }] : [stretch]));

/** Tees that stand along the wall and not at its ends; one for those that share its cut-out, on either side or in other levels. */
function teesOn({ junctions }: LaidStorey, wall: LaidWall): readonly StretchEnd[] {
  const cuts = junctions.flatMap(({ tee }) => (tee && tee.through === wall.mark ? [{ from: tee.cutFrom, to: tee.cutTo }] : []));
  const inside = cuts.filter(({ from, to }) => from > wall.trimStart && to < wall.length - wall.trimEnd).sort((a, b) => a.from - b.from);
  const merged = inside.reduce<readonly OpenSpan[]>((known, cut) => {
    const last = known.at(-1);
    if (!last || cut.from >= last.to) return [...known, cut];
    return [...known.slice(0, -1), { from: last.from, to: Math.max(last.to, cut.to) }];
  }, []);
  return merged.map(({ from, to }) => ({ at: Math.round((from + to) / 2), reason: 'tee', clear: Math.ceil((to - from) / 2) }));
}

function endReason({ junctions }: LaidStorey, id: string): BraceReason {
  const junction = junctions.find((candidate) => candidate.id === id);
  return junction === undefined ? 'free-end' : reasonOf(junction);
}

function reasonOf({ kind, unit }: Junction): BraceReason {
  if (kind === 'free-end') return 'free-end';
  if (kind === 'tee' || kind === 'crossing') return 'tee';
  if (kind === 'straight') return 'between';
  return unit === 'corner-hinged' ? 'hinged-corner' : 'corner';
}
