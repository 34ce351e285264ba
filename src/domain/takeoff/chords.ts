import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { AxisArc } from './arc-axis.js';

/** A chord whose ends miss those of the arc by less than this is whole, and what is left of an arc below it is nothing. */
export const REST_REACH: Nm = 1_000;

export type ChordRange = Pick<FormRange, 'cutModule' | 'minPiece' | 'formLength'> & { readonly parameters: Pick<FormRange['parameters'], 'radiusGap'> };

/** Whole chords of a curve, measured on the concave foam face where the pieces touch. */
export interface Chords {
  readonly arc: AxisArc;
  /** Of the concave foam face; not positive where the wall is thicker than the curve [nm]. */
  readonly concaveRadius: number;
  /** Null where none fits the gap the range allows. */
  readonly chord: Nm | null;
  /** Wedge at the convex face between two whole chords; where none fits, between the shortest the range lets be cut. */
  readonly gap: number;
  /** One chord along the axis, not rounded. */
  readonly step: number;
}

/**
 * The longest chord a curve allows: a multiple of the cut module, no shorter than the smallest piece and no longer than a form.
 *
 * @equation gap = T·c / Ri ≤ allowed gap; a chord subtends 2·asin(c / (2·Ri))
 * @param thickness over both foam faces, T [nm]
 * @source statement of the project's decision 21 (geometry: the wedge between two chords opens by their angle over the thickness)
 * @example T = 11, c = 8, Ri = 120 → gap 0.733
 */
export function chordsOf(arc: AxisArc, thickness: Nm, range: ChordRange): Chords {
  const concaveRadius = arc.radius - thickness / 2;
  const { cutModule, minPiece, formLength } = range;
  const shortest = Math.ceil(minPiece / cutModule) * cutModule;
  const gapOf = (chord: Nm): number => (concaveRadius > 0 ? (thickness * chord) / concaveRadius : Infinity);
  // A billionth keeps a chord that fits exactly from failing by the last bit of a radius that was worked out.
  const most = Math.min(formLength, 2 * concaveRadius, ((range.parameters.radiusGap * concaveRadius) / thickness) * (1 + 1e-9));
  const chord = Math.floor(most / cutModule) * cutModule;
  if (!(chord >= shortest)) return { arc, concaveRadius, chord: null, gap: gapOf(shortest), step: 0 };
  return { arc, concaveRadius, chord, gap: gapOf(chord), step: 2 * Math.asin(chord / (2 * concaveRadius)) * arc.radius };
}

/** Radial joints between whole chords laid from one end of a stretch of the axis: from its beginning, or from its end. */
export function chordJoints({ chord, step, concaveRadius, arc }: Chords, from: Nm, to: Nm, way: 'from-start' | 'from-end'): Nm[] {
  if (chord === null || to <= from) return [];
  const reach = (REST_REACH * arc.radius) / concaveRadius;
  const count = Math.floor((to - from - reach) / step);
  const stations = Array.from({ length: Math.max(0, count) }, (_, index) => Math.round((index + 1) * step));
  return way === 'from-start' ? stations.map((past) => from + past) : stations.map((past) => to - past).reverse();
}

/**
 * Length of a piece between two radial joints: what is sawn.
 *
 * @equation l = 2·Ri·sin(angle / 2)
 * @source geometry
 */
export function chordLength({ arc, concaveRadius, chord }: Chords, from: Nm, to: Nm): Nm {
  const length = Math.round(2 * concaveRadius * Math.sin((to - from) / (2 * arc.radius)));
  return chord !== null && Math.abs(length - chord) <= REST_REACH ? chord : length;
}

/**
 * Parts of a stretch between its ends and the joints inside it. A joint that all but meets an end is that end.
 *
 * @param over what the end pieces are longer on their longer face; a piece that no form is long enough for is halved
 */
export function chordParts(chords: Chords, from: Nm, to: Nm, joints: readonly Nm[], over: { readonly left: Nm; readonly right: Nm }, formLength: Nm): { from: Nm; to: Nm; length: Nm }[] {
  const inside = joints.filter((at) => at - from > REST_REACH && to - at > REST_REACH);
  const stations = [from, ...inside, to];
  return stations.slice(1).flatMap((end, index) => {
    const start = stations[index]!;
    const extra = [index === 0 ? over.left : 0, index === stations.length - 2 ? over.right : 0] as const;
    const length = chordLength(chords, start, end) + extra[0] + extra[1];
    if (length <= formLength) return [{ from: start, to: end, length }];
    const middle = Math.round((start + end) / 2);
    return [
      { from: start, to: middle, length: chordLength(chords, start, middle) + extra[0] },
      { from: middle, to: end, length: chordLength(chords, middle, end) + extra[1] },
    ];
  });
}
