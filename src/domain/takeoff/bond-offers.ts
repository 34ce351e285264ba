import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { compareNamed, type Cost } from './bond-cost.js';
import type { Placement, PlacementRange } from './placements.js';

export type BondRange = PlacementRange & Pick<FormRange, 'minStagger'>;

/** Joints one form apart from `from` on: those of a placement, or a single one that no choice moves. */
export interface JointRow {
  readonly from: Nm;
  readonly count: number;
}

export interface Zone {
  readonly from: Nm;
  readonly to: Nm;
}

/** A placement with what it costs over given joints; `way` is its place among the segment's placements. */
export interface Offer extends Cost, JointRow {
  readonly way: number;
}

/** How many of the joints of a row lie strictly inside any of the zones, each zone for itself. */
function jointsInside(from: Nm, count: number, zones: readonly Zone[], form: Nm): number {
  let inside = 0;
  for (const zone of zones) {
    const first = Math.max(0, Math.floor((zone.from - from) / form) + 1);
    const last = Math.min(count - 1, Math.ceil((zone.to - from) / form) - 1);
    inside += Math.max(0, last - first + 1);
  }
  return inside;
}

/** Puts an offer in its place among those found, equal ones behind, and drops the dearest where there are too many. */
function enter(offers: Offer[], offer: Offer, most: number): void {
  let place = offers.length;
  while (place > 0 && compareNamed(offer, offers[place - 1]!) < 0) place -= 1;
  offers.splice(place, 0, offer);
  if (offers.length > most) offers.pop();
}

/**
 * The cheapest placements of a segment between the joints below and above it, cheapest first.
 *
 * Rows have one pitch, so a joint of one has at most one joint of the other within half a form: the offset of two rows gives the
 * distance of all their pairs at once, their overlap how many there are.
 *
 * @param left   station of the segment's left end
 * @param ways   its placements in order of forms and cuts: where as many as are offered keep every bond, dearer ones need no look
 * @param others joints of the courses below and above, by row
 * @param zones  where no joint may fall
 * @param most   how many are offered
 */
export function cheapestOver(left: Nm, ways: readonly Placement[], others: readonly JointRow[], zones: readonly Zone[], most: number, range: BondRange): Offer[] {
  const { formLength: form, minStagger } = range;
  const offers: Offer[] = [];
  for (let way = 0; way < ways.length; way += 1) {
    const { firstJoint, joints: count, forms, cuts, spread } = ways[way]!;
    const last = offers.length < most ? null : offers[most - 1]!;
    if (last && last.inCutOuts === 0 && last.breaks === 0 && (forms > last.forms || (forms === last.forms && cuts > last.cuts))) break;
    const from = left + firstJoint;
    let breaks = 0;
    let stagger = form / 2;
    for (let index = 0; index < others.length; index += 1) {
      const other = others[index]!;
      const shift = Math.floor((from - other.from) / form + 0.5);
      const overlap = Math.min(count, other.count - shift) - Math.max(0, -shift);
      if (overlap <= 0) continue;
      const distance = Math.abs(from - other.from - shift * form);
      if (distance < stagger) stagger = distance;
      if (distance < minStagger) breaks += overlap;
    }
    const inCutOuts = zones.length === 0 ? 0 : jointsInside(from, count, zones, form);
    if (last && (inCutOuts - last.inCutOuts || breaks - last.breaks || forms - last.forms || cuts - last.cuts || form / 2 - stagger - last.lostStagger || spread - last.spread) >= 0) continue;
    enter(offers, { way, from, count, inCutOuts, breaks, forms, cuts, lostStagger: form / 2 - stagger, spread }, most);
  }
  return offers;
}
