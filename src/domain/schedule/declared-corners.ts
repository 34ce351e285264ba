import type { CornerJoint, End, Joins } from './join-walls.js';
import { drawnTurn, endPoint, normal, otherEnd, TURN_AGREES, type Positions } from './plan-position.js';
import { MEETING_DISTANCE } from './schedule-limits.js';
import type { WallDraft } from './wall-draft.js';

type Drafts = ReadonlyMap<string, WallDraft>;

/** Walls of a ring that an error names. */
const NAMED_WALLS = 12;

/** Declared corners between two walls that both have coordinates, where the drawing says otherwise. */
export function checkDrawnCorners(drafts: Drafts, joins: Joins): void {
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
          `${end}/turn`,
          `the turn that is drawn: the coordinates of ${wall.mark} and ${partner.mark} turn by ${drawn.toFixed(1)}`,
          String(joint.turn),
        );
      }
    }
  }
}

/**
 * Tells the rings of walls whose declared turns do not bring them round: once round a ring is 360° to the left or to the right.
 *
 * Turns are taken to agree within half a degree, as those of a heptagon written to a tenth do.
 */
export function checkRings(drafts: Drafts, joins: Joins): void {
  const seen = new Set<string>();
  for (const first of drafts.values()) {
    if (seen.has(first.mark)) continue;
    const { walls, turn, closing } = walkRound(first, drafts, joins);
    walls.forEach((mark) => seen.add(mark));
    if (!closing || Math.abs(Math.abs(turn) - 360) <= TURN_AGREES) continue;
    const named = walls.slice(0, NAMED_WALLS).join(', ');
    const more = walls.length > NAMED_WALLS ? ` and ${walls.length - NAMED_WALLS} more` : '';
    const sum = Math.round(turn * 1e6) / 1e6;
    closing.wall.reader.fail(
      `${closing.end}/turn`,
      `turns that bring the ring of walls ${named}${more} round: they must sum to 360 or -360, and theirs sum to ${sum}`,
      `turns of ${sum} in all`,
    );
  }
}

interface Walk {
  readonly walls: readonly string[];
  /** Sum of the turns in walking direction. */
  readonly turn: number;
  /** The end at which the ring closes, of the two that meet there the one that declares it; null where the walk ends free. */
  readonly closing: { readonly wall: WallDraft; readonly end: End } | null;
}

/** Walks on from a wall's end until the walk comes back to its start or nothing follows. */
function walkRound(first: WallDraft, drafts: Drafts, joins: Joins): Walk {
  const walls = [first.mark];
  let turn = 0;
  let [wall, end]: [WallDraft, End] = [first, 'end'];
  for (;;) {
    const joint: CornerJoint | undefined = joins.get(wall.mark)?.[end];
    const partner: WallDraft | undefined = joint && drafts.get(joint.with.wall);
    if (!joint || !partner) return { walls, turn, closing: null };
    turn += end === 'end' ? joint.turn : -joint.turn;
    if (partner === first)
      return { walls, turn, closing: wall[end] === null ? { wall: first, end: joint.with.end } : { wall, end } };
    walls.push(partner.mark);
    [wall, end] = [partner, otherEnd(joint.with.end)];
  }
}

/** Declared corners at which a chain comes back to walls that have a place already, where these turn otherwise. */
export function checkPlacedCorners(drafts: Drafts, joins: Joins, positions: Positions): void {
  for (const wall of drafts.values()) {
    for (const end of ['start', 'end'] as const) {
      const joint = wall[end];
      const partner = joint?.joint === 'corner' ? drafts.get(joint.with.wall) : undefined;
      if (joint?.joint !== 'corner' || !partner || (wall.ends && partner.ends) || !joins.get(wall.mark)?.[end]) continue;
      const [own, other] = [positions.get(wall.mark), positions.get(partner.mark)];
      if (!own || !other) continue;
      const turn = drawnTurn(own, end, other, joint.with.end);
      if (Math.abs(normal(turn - joint.turn)) > TURN_AGREES)
        wall.reader.fail(
          `${end}/turn`,
          `the turn that the coordinates and the other turns leave: there ${wall.mark} and ${partner.mark} turn by ${turn.toFixed(1)}`,
          String(joint.turn),
        );
    }
  }
}
