import type { Nm } from '../quantity/length.js';
import type { FormUnit } from './course-units.js';
import type { UnitStretch } from './unit-stretches.js';

/** A stretch of forms of one kind in one course between legs, ends, jambs and forms of another kind. */
export interface Segment {
  readonly from: Nm;
  readonly to: Nm;
  /** Ends on a corner leg: the interlock there mates on the module only. */
  readonly fixedLeft: boolean;
  readonly fixedRight: boolean;
  /** Between a seam and the leg: only the piece at the leg may be cut. */
  readonly wholeAtSeam: boolean;
  readonly seamLeft: boolean;
  readonly seamRight: boolean;
  /** What the end pieces are longer on one face than on the axis, where they are cut on the skew. */
  readonly overLeft: Nm;
  readonly overRight: Nm;
  readonly unit: FormUnit;
}

/**
 * Parts a segment where forms of another kind begin and end.
 *
 * @param reach a sliver no longer than this is what rounding leaves, and belongs to its neighbour [nm]
 */
export function withUnits(segment: Segment, stretches: readonly UnitStretch[], reach: Nm): Segment[] {
  const { from, to } = segment;
  const own = stretches.filter((stretch) => stretch.from < to - reach && stretch.to > from + reach);
  const parts: { from: Nm; to: Nm; unit: FormUnit }[] = [];
  let left = from;
  for (const stretch of own) {
    const begin = stretch.from > left + reach ? stretch.from : left;
    const end = stretch.to < to - reach ? stretch.to : to;
    if (begin > left) parts.push({ from: left, to: begin, unit: 'straight' });
    parts.push({ from: begin, to: end, unit: stretch.unit });
    left = end;
  }
  if (left < to) parts.push({ from: left, to, unit: 'straight' });
  const trimmedLeft = { fixedLeft: false, overLeft: 0 };
  const trimmedRight = { fixedRight: false, overRight: 0 };
  return parts.map((part, index) => ({ ...segment, ...part, ...(index > 0 ? trimmedLeft : {}), ...(index < parts.length - 1 ? trimmedRight : {}) }));
}
