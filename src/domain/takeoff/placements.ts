import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { Segment } from './runs.js';

/** Shares of a form are counted in this unit, which every 1/k up to k = 12 divides. */
export const FORM_SHARE = 27_720;

/**
 * One way to fill a segment with forms: at most a starter and a closure are cut, everything between is whole, so the joints stand
 * one form apart. Places are counted from the segment's left end: segments of one length share their placements.
 */
export interface Placement {
  /** From the segment's left end to the first joint; nothing where there is none. */
  readonly firstJoint: Nm;
  readonly joints: number;
  /** Forms this takes, in `FORM_SHARE`: whole ones, and the share of a form each cut piece is likely to take. */
  readonly forms: number;
  readonly cuts: number;
  /** Sum of the squares of the cut pieces in tenths of a millimetre: decides between placements otherwise equal. */
  readonly spread: number;
}

export type PlacementRange = Pick<FormRange, 'formLength' | 'cutModule' | 'minPiece' | 'interlock'>;

function shareOf(piece: Nm, form: Nm): number {
  return piece >= form ? FORM_SHARE : Math.round(FORM_SHARE / Math.floor(form / piece));
}

/** Length on the longer face: what the pieces are cut from. */
const faceLength = (segment: Segment): Nm => segment.to - segment.from + segment.overLeft + segment.overRight;

const squared = (piece: Nm): number => Math.round(piece / 100_000) ** 2;

/** One piece fills the segment. */
function single(length: Nm, ripped: boolean, form: Nm): Placement {
  const whole = length >= form;
  return { firstJoint: 0, joints: 0, forms: ripped ? FORM_SHARE : shareOf(length, form), cuts: whole ? 0 : 1, spread: whole ? 0 : squared(length) };
}

function placement(segment: Segment, length: Nm, first: Nm, last: Nm, ripped: boolean, form: Nm): Placement {
  const between = Math.round((length - first - last) / form);
  const cut = [first, last].filter((piece) => piece < form);
  const apart = shareOf(first, form) + shareOf(last, form);
  const together = cut.length === 2 && first + last <= form ? FORM_SHARE : Infinity;
  return {
    firstJoint: first - segment.overLeft,
    joints: between + 1,
    forms: ripped ? (2 + between) * FORM_SHARE : between * FORM_SHARE + Math.min(apart, together),
    cuts: cut.length,
    spread: cut.reduce((sum, piece) => sum + squared(piece), 0),
  };
}

/**
 * Every way to fill a segment: the first piece in steps of the cut module, whole forms, and what is left as the last piece.
 *
 * Joints stay on the module of the leg they run from; a trimmed end (jamb, free end, tee) takes whatever is left of the module.
 * No piece is below the range's minimum, unless the whole segment is.
 */
export function placementsOf(segment: Segment, ripped: boolean, range: PlacementRange): Placement[] {
  const { formLength, cutModule, minPiece } = range;
  const length = faceLength(segment);
  if (length <= formLength) return [single(length, ripped, formLength)];
  const fromRight = segment.fixedRight && !segment.fixedLeft;
  const found: Placement[] = [];
  for (let lead = formLength; lead >= minPiece; lead -= cutModule) {
    const rest = (length - lead) % formLength || formLength;
    if (rest < minPiece) continue;
    const [first, last] = fromRight ? [rest, lead] : [lead, rest];
    if (first <= segment.overLeft || last <= segment.overRight) continue;
    if (segment.wholeAtSeam && (segment.seamLeft ? first : last) !== formLength) continue;
    found.push(placement(segment, length, first, last, ripped, formLength));
  }
  if (found.length > 0 || !segment.wholeAtSeam) return found;
  return placementsOf({ ...segment, wholeAtSeam: false }, ripped, range);
}

/** Stations of a placement's joints in its segment, in order. */
export function jointsOf(segment: Segment, { firstJoint, joints }: Placement, form: Nm): Nm[] {
  return Array.from({ length: joints }, (_, index) => segment.from + firstJoint + index * form);
}

/** Pieces of a placement in order of station; together they are the segment. */
export function piecesOf(segment: Segment, placed: Placement, form: Nm): { from: Nm; to: Nm }[] {
  const edges = [segment.from, ...jointsOf(segment, placed, form), segment.to];
  return edges.slice(1).map((to, index) => ({ from: edges[index]!, to }));
}

/** The remainder of a run between two legs past whole modules; 0 where the interlock mates everywhere. */
export function offModule(segment: Segment, range: PlacementRange): Nm {
  if (!segment.fixedLeft || !segment.fixedRight || range.interlock === 'continuous') return 0;
  return (segment.to - segment.from) % range.cutModule;
}
