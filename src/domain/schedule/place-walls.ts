import type { Nm } from '../quantity/length.js';
import type { End, Joins } from './join-walls.js';
import type { DeclaredJoint, Wall } from './schedule.js';
import { MEETING_DISTANCE } from './schedule-limits.js';
import type { WallDraft } from './wall-draft.js';

interface Point {
  readonly x: number;
  readonly y: number;
}
interface Position {
  readonly from: Point;
  readonly to: Point;
  /** Direction from→to [deg], 0 along x, counter-clockwise. */
  readonly heading: number;
}

/** Free ground between two chains that are placed by themselves. */
const CHAIN_MARGIN: Nm = 10_000_000_000;
/** Declared turn against the drawn one [deg]. */
const TURN_AGREES = 0.5;

/**
 * Gives every wall its ends. Walls with coordinates keep them; the others follow from the wall they are joined to by length and turn.
 *
 * A chain without any coordinates starts at its first row's wall, along x, clear of everything placed before it, so that separate
 * chains never touch. A chain whose last end does not come back to its first keeps the gap: that is for the take-off to find.
 * Positions are exact at turns of 90° and carry the rounding of a sine elsewhere.
 */
export function placeWalls(drafts: ReadonlyMap<string, WallDraft>, joins: Joins): readonly Wall[] {
  const placed = new Map<string, Position>();
  for (const draft of drafts.values()) {
    if (draft.ends) placed.set(draft.mark, { ...draft.ends, heading: headingOf(draft.ends.from, draft.ends.to) });
  }
  for (const mark of [...placed.keys()]) follow(mark, drafts, joins, placed);
  let clearX = rightmost(placed);
  for (const draft of drafts.values()) {
    if (placed.has(draft.mark)) continue;
    const reach = chainLength(draft.mark, drafts, joins);
    const from = { x: placed.size === 0 ? 0 : Math.ceil(clearX + reach) + CHAIN_MARGIN, y: 0 };
    placed.set(draft.mark, fromStart(from, 0, draft.length));
    follow(draft.mark, drafts, joins, placed);
    clearX = from.x + reach;
  }
  return [...drafts.values()].map((draft) => finished(draft, placed.get(draft.mark), joins));
}

/** Declared corners between two walls that both have coordinates, where the drawing says otherwise. */
export function checkDrawnCorners(drafts: ReadonlyMap<string, WallDraft>, joins: Joins): void {
  for (const wall of drafts.values()) {
    for (const end of ['start', 'end'] as const) {
      const joint = wall[end];
      const partner = joint?.joint === 'corner' ? drafts.get(joint.with.wall) : undefined;
      if (joint?.joint !== 'corner' || !wall.ends || !partner?.ends || wall.arc || partner.arc || !joins.get(wall.mark)?.[end])
        continue;
      const [a, b] = [endPoint(wall.ends, end), endPoint(partner.ends, joint.with.end)];
      const gap = Math.hypot(a.x - b.x, a.y - b.y);
      if (gap >= MEETING_DISTANCE) {
        wall.reader.fail(
          end,
          `ends that meet: the ${end} of ${wall.mark} and the ${joint.with.end} of ${partner.mark} lie ${wall.reader.print(Math.round(gap))} apart`,
          'declared corner',
        );
        continue;
      }
      const drawn = drawnTurn(wall.ends, end, partner.ends, joint.with.end);
      if (Math.abs(normal(drawn - joint.turn)) > TURN_AGREES) {
        wall.reader.fail(
          end,
          `the turn that is drawn: the coordinates of ${wall.mark} and ${partner.mark} turn by ${drawn.toFixed(1)}`,
          String(joint.turn),
        );
      }
    }
  }
}

type Ends = { readonly from: Point; readonly to: Point };
const endPoint = (ends: Ends, end: End): Point => (end === 'start' ? ends.from : ends.to);

/** Turn at an end of a wall, walked in that wall's own direction. */
function drawnTurn(wall: Ends, end: End, partner: Ends, partnerEnd: End): number {
  const own = headingOf(wall.from, wall.to);
  const other = headingOf(partner.from, partner.to) + (end === partnerEnd ? 180 : 0);
  return normal(end === 'end' ? other - own : own - other);
}

/** Walks from a placed wall to walls that are not placed yet: on from its end first, so that a ring misses itself where it closes. */
function follow(first: string, drafts: ReadonlyMap<string, WallDraft>, joins: Joins, placed: Map<string, Position>): void {
  for (const side of ['end', 'start'] as const) {
    let [mark, end]: [string, End] = [first, side];
    for (;;) {
      const position = placed.get(mark);
      const joint = joins.get(mark)?.[end];
      const partner = joint && drafts.get(joint.with.wall);
      if (!position || !joint || !partner || placed.has(partner.mark)) break;
      placed.set(partner.mark, beside(position, end, joint.turn, joint.with.end, partner.length));
      [mark, end] = [partner.mark, joint.with.end === 'start' ? 'end' : 'start'];
    }
  }
}

/** The position of a wall joined by its `partnerEnd` to an `end` of a placed one. */
function beside(position: Position, end: End, turn: number, partnerEnd: End, length: Nm): Position {
  const corner = endPoint(position, end);
  const leaving = end === 'end' ? position.heading + turn : position.heading + 180 - turn;
  if (partnerEnd === 'start') return fromStart(corner, normal(leaving), length);
  const heading = normal(leaving + 180);
  const { x, y } = direction(heading);
  return { from: { x: corner.x - x * length, y: corner.y - y * length }, to: corner, heading };
}

function fromStart(from: Point, heading: number, length: Nm): Position {
  const { x, y } = direction(heading);
  return { from, to: { x: from.x + x * length, y: from.y + y * length }, heading };
}

function chainLength(first: string, drafts: ReadonlyMap<string, WallDraft>, joins: Joins): number {
  const seen = new Set([first]);
  let total = 0;
  for (const mark of seen) {
    total += drafts.get(mark)?.length ?? 0;
    for (const joint of Object.values(joins.get(mark) ?? {})) if (drafts.has(joint.with.wall)) seen.add(joint.with.wall);
  }
  return total;
}

/** Right-hand bound of everything placed; an arc bulges by no more than its length. */
function rightmost(placed: ReadonlyMap<string, Position>): number {
  let bound = Number.NEGATIVE_INFINITY;
  for (const { from, to } of placed.values())
    bound = Math.max(bound, Math.max(from.x, to.x) + Math.hypot(to.x - from.x, to.y - from.y));
  return Number.isFinite(bound) ? bound : 0;
}

/** Where coordinates speak an undeclared end stays undeclared; a wall placed by its joints ends free where nothing joins it. */
function finished({ reader: _, ends, ...draft }: WallDraft, position: Position | undefined, joins: Joins): Wall {
  if (!position) throw new Error(`wall ${draft.mark} was not placed`);
  const jointAt = (end: End): DeclaredJoint | null =>
    draft[end] ?? (ends ? null : (joins.get(draft.mark)?.[end] ?? { joint: 'free' }));
  return { ...draft, from: position.from, to: position.to, start: jointAt('start'), end: jointAt('end') };
}

/** Cosine and sine, exact along the axes. */
function direction(heading: number): Point {
  const quarter = normal(heading);
  if (quarter === 0) return { x: 1, y: 0 };
  if (quarter === 90) return { x: 0, y: 1 };
  if (quarter === 180) return { x: -1, y: 0 };
  if (quarter === -90) return { x: 0, y: -1 };
  return { x: Math.cos((quarter * Math.PI) / 180), y: Math.sin((quarter * Math.PI) / 180) };
}

const headingOf = (from: Point, to: Point): number => (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;

/** An angle brought into (-180, 180]. */
function normal(degrees: number): number {
  const turned = ((degrees % 360) + 360) % 360;
  return turned > 180 ? turned - 360 : turned;
}
