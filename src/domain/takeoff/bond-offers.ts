import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { faultsOf, formsOf, type Cost } from './bond-cost.js';
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

const WAY_PARTS = 4;

/** The placements of a segment, and their numbers side by side for the inside of the search. */
export interface Ways {
  readonly placements: readonly Placement[];
  readonly table: Float64Array;
}

/** @param placements in order of forms, then cuts */
export function waysTable(placements: readonly Placement[]): Ways {
  const table = new Float64Array(placements.length * WAY_PARTS);
  placements.forEach(({ firstJoint, joints, forms, cuts, spread }, way) => {
    table[way * WAY_PARTS] = firstJoint;
    table[way * WAY_PARTS + 1] = joints;
    table[way * WAY_PARTS + 2] = formsOf(forms, cuts);
    table[way * WAY_PARTS + 3] = spread;
  });
  return { placements, table };
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

/** Most offers that are ever asked for. */
const MOST = 16;
const PARTS = 4;

/** The cheapest costs found so far, in order, as bare numbers: the search looks at far more placements than it offers. */
class Ranking {
  count = 0;
  private readonly ways = new Int32Array(MOST + 1);
  private readonly costs = new Float64Array((MOST + 1) * PARTS);

  /** Whether a cost with these parts is dearer than the offer at a place, or as dear. */
  private notCheaper(place: number, faults: number, forms: number, lostStagger: number, spread: number): boolean {
    const { costs } = this;
    const at = place * PARTS;
    if (faults !== costs[at]) return faults > costs[at]!;
    if (forms !== costs[at + 1]) return forms > costs[at + 1]!;
    if (lostStagger !== costs[at + 2]) return lostStagger > costs[at + 2]!;
    return spread >= costs[at + 3]!;
  }

  clear(): this {
    this.count = 0;
    return this;
  }

  /** Puts a placement in its place, equal ones behind, and drops the dearest where there are too many. */
  enter(most: number, way: number, faults: number, forms: number, lostStagger: number, spread: number): void {
    const { costs, ways } = this;
    let place = this.count;
    if (place === most && this.notCheaper(most - 1, faults, forms, lostStagger, spread)) return;
    if (place < most) this.count += 1;
    else place -= 1;
    for (; place > 0 && !this.notCheaper(place - 1, faults, forms, lostStagger, spread); place -= 1) {
      ways[place] = ways[place - 1]!;
      for (let at = place * PARTS; at < (place + 1) * PARTS; at += 1) costs[at] = costs[at - PARTS]!;
    }
    const at = place * PARTS;
    ways[place] = way;
    costs[at] = faults;
    costs[at + 1] = forms;
    costs[at + 2] = lostStagger;
    costs[at + 3] = spread;
  }

  /** Whether `most` placements that keep every bond were found, none with more forms or cuts than these. */
  isClosedTo(most: number, forms: number): boolean {
    const at = (most - 1) * PARTS;
    return this.count === most && this.costs[at] === 0 && forms > this.costs[at + 1]!;
  }

  offers(left: Nm, { placements }: Ways): Offer[] {
    const found: Offer[] = [];
    for (let place = 0, at = 0; place < this.count; place += 1, at += PARTS) {
      const { costs } = this;
      const way = this.ways[place]!;
      const { firstJoint, joints } = placements[way]!;
      found.push({ way, from: left + firstJoint, count: joints, faults: costs[at]!, forms: costs[at + 1]!, lostStagger: costs[at + 2]!, spread: costs[at + 3]! });
    }
    return found;
  }
}

/** Written over by every ranking: nothing outlives the call that fills them. */
const RANKING = new Ranking();
let ROWS = new Float64Array(64);

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
export function cheapestOver(left: Nm, ways: Ways, others: readonly JointRow[], zones: readonly Zone[], most: number, range: BondRange): Offer[] {
  const { formLength: form, minStagger } = range;
  const ranking = RANKING.clear();
  const half = form / 2;
  const { table } = ways;
  const rows = others.length;
  if (ROWS.length < 2 * rows) ROWS = new Float64Array(4 * rows);
  for (let row = 0; row < rows; row += 1) {
    ROWS[2 * row] = others[row]!.from - left;
    ROWS[2 * row + 1] = others[row]!.count;
  }
  for (let at = 0, way = 0; at < table.length; at += WAY_PARTS, way += 1) {
    const firstJoint = table[at]!;
    const count = table[at + 1]!;
    const forms = table[at + 2]!;
    if (ranking.isClosedTo(most, forms)) break;
    let breaks = 0;
    let stagger = half;
    for (let row = 0; row < 2 * rows; row += 2) {
      const apart = firstJoint - ROWS[row]!;
      const shift = Math.floor(apart / form + 0.5);
      const overlap = Math.min(count, ROWS[row + 1]! - shift) - Math.max(0, -shift);
      if (overlap <= 0) continue;
      const distance = Math.abs(apart - shift * form);
      if (distance < stagger) stagger = distance;
      if (distance < minStagger) breaks += overlap;
    }
    const inCutOuts = zones.length === 0 ? 0 : jointsInside(left + firstJoint, count, zones, form);
    ranking.enter(most, way, faultsOf(inCutOuts, breaks), forms, half - stagger, table[at + 3]!);
  }
  return ranking.offers(left, ways);
}
