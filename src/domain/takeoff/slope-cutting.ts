import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { heightAt, stretchAbove, type Gable } from './gables.js';

/** A piece cut to a slope, as it lies on the saw bench: lengths at its heights in a form of the course height. */
export interface SlopeShape {
  /** Length at the bottom edge: what it takes of a form by itself. */
  readonly length: Nm;
  /** Up to `low` it has its whole length, at `high` it has `topLength`, between them the slope runs straight. */
  readonly low: Nm;
  readonly high: Nm;
  readonly topLength: Nm;
  /** Seen with the walk; a piece under a peak falls to both sides. */
  readonly rises: 'ahead' | 'back' | 'peak';
  /** Of one face [nm²]. */
  readonly area: number;
}

/**
 * The shape of a piece in a course of a gable; null where the whole course stands over its whole length.
 *
 * @param from,to axis stations in walking direction
 * @param bottom,height of the course, above the stack's top
 */
export function slopeShape(gable: Gable, from: Nm, to: Nm, bottom: Nm, height: Nm): SlopeShape | null {
  const left = (at: number): number => Math.min(height, Math.max(0, heightAt(gable, at) - bottom));
  const ends = [left(from), left(to)] as const;
  if (ends[0] === height && ends[1] === height) return null;
  const peak = gable.peak > from && gable.peak < to;
  const high = peak ? left(gable.peak) : Math.max(...ends);
  const whole = stretchAbove(gable, bottom + height);
  const topLength = high < height ? 0 : Math.max(0, Math.min(to, whole.to) - Math.max(from, whole.from));
  const breaks = [from, ...[whole.from, gable.peak, whole.to].filter((at) => at > from && at < to), to].sort((a, b) => a - b);
  const area = breaks.slice(1).reduce((sum, at, index) => sum + ((at - breaks[index]!) * (left(at) + left(breaks[index]!))) / 2, 0);
  const rises = peak ? 'peak' : ends[0] < ends[1] ? 'ahead' : 'back';
  return { length: to - from, low: Math.min(...ends), high, topLength, rises, area };
}

function lengthAt({ length, low, high, topLength }: SlopeShape, y: number): number {
  if (y <= low) return length;
  if (y > high) return 0;
  return length + ((topLength - length) * (y - low)) / (high - low);
}

/**
 * Length of form that two pieces of opposite slopes take together, one of them turned upside down: their slanted edges lie side by
 * side, so at each height the two lengths add up.
 *
 * @source geometry; both lengths are piecewise straight, so the largest sum stands at a break of one of them
 */
export function nestedLength(a: SlopeShape, turned: SlopeShape, courseHeight: Nm): Nm {
  const breaks = [0, a.low, a.high, courseHeight, courseHeight - turned.low, courseHeight - turned.high];
  return Math.ceil(Math.max(...breaks.filter((y) => y >= 0).map((y) => lengthAt(a, y) + lengthAt(turned, courseHeight - y))) - 1e-6);
}

export interface SlopedPiece {
  readonly id: string;
  readonly slope: SlopeShape;
}

/** What is sawn as one length: a piece by itself, or two side by side along their slants, one of them upside down. */
export interface SawnLength {
  readonly id: string;
  readonly length: Nm;
  readonly parts: readonly SawnPart[];
}

/** `turned`: sawn upside down; `reversed`: and end for end, as a piece of the same slope is. */
export interface SawnPart {
  readonly id: string;
  readonly offset: Nm;
  readonly turned: boolean;
  readonly reversed: boolean;
}

/** The slant of a piece that rises with the walk is at its left, so its partner lies there; of one that falls, at its right. */
function sideBySide(piece: SlopedPiece, other: SlopedPiece, length: Nm): SawnLength {
  const reversed = piece.slope.rises === other.slope.rises;
  const partnerLeft = piece.slope.rises === 'ahead';
  const own: SawnPart = { id: piece.id, offset: partnerLeft ? length - piece.slope.length : 0, turned: false, reversed: false };
  const partner: SawnPart = { id: other.id, offset: partnerLeft ? 0 : length - other.slope.length, turned: true, reversed };
  return { id: `${piece.id}+${other.id}`, length, parts: partnerLeft ? [partner, own] : [own, partner] };
}

/**
 * Pairs the sloped pieces of one storey and unit: longest first, each with the piece that it saves most with and of these the one that
 * leaves least over, of the opposite slope (turned upside down) or of its own (turned upside down and end for end). Where the range's
 * forms cannot be turned nothing is paired.
 */
export function sawnLengths(pieces: readonly SlopedPiece[], range: Pick<FormRange, 'formLength' | 'courseHeight' | 'reversible'>): SawnLength[] {
  const alone = ({ id, slope }: SlopedPiece): SawnLength => ({ id, length: slope.length, parts: [{ id, offset: 0, turned: false, reversed: false }] });
  if (!range.reversible) return pieces.map(alone);
  const byLength = (a: SlopedPiece, b: SlopedPiece): number => b.slope.length - a.slope.length || (a.id < b.id ? -1 : 1);
  const left = new Set(pieces.filter(({ slope }) => slope.rises !== 'peak').sort(byLength));
  const sawn: SawnLength[] = [];
  for (const piece of left) {
    left.delete(piece);
    let best: { other: SlopedPiece; length: Nm; saved: Nm } | null = null;
    for (const other of left) {
      const length = nestedLength(piece.slope, other.slope, range.courseHeight);
      const saved = piece.slope.length + other.slope.length - length;
      const better = !best || saved > best.saved || (saved === best.saved && other.slope.area > best.other.slope.area);
      if (length <= range.formLength && saved > 0 && better) best = { other, length, saved };
    }
    if (best) left.delete(best.other);
    sawn.push(best ? sideBySide(piece, best.other, best.length) : alone(piece));
  }
  return [...sawn, ...pieces.filter(({ slope }) => slope.rises === 'peak').map(alone)];
}

/** A length that no way of sawing can do without: the piece's area by the height of a form. */
export const leastLength = ({ area }: SlopeShape, { courseHeight }: Pick<FormRange, 'courseHeight'>): Nm => Math.max(1, Math.floor(area / courseHeight));
