import type { DeclaredJoint } from './schedule.js';
import type { WallDraft } from './wall-draft.js';
import { listedNear } from './near-marks.js';
import type { Walls } from './read-walls.js';

export type End = 'start' | 'end';
export type CornerJoint = Extract<DeclaredJoint, { joint: 'corner' }>;

/** Declared corners of walls, by wall and end; both partners are entered, with the turn as each of them walks it. */
export type Joins = ReadonlyMap<string, Readonly<Partial<Record<End, CornerJoint>>>>;

type JoinTable = Map<string, Partial<Record<End, CornerJoint>>>;

/**
 * Pairs the declared corners of walls and checks that partners agree.
 *
 * A corner is declared at one of its two ends or at both. A turn is walked in the wall's own direction, so the end of one wall and
 * the start of the next name the same turn, and two ends (or two starts) name opposite ones. Every disagreement is an error that
 * names both walls; a partner that is missing, in another storey, or taken by a third wall is named too.
 */
export function joinWalls({ marks, drafts }: Walls): Joins {
  const joins: JoinTable = new Map();
  for (const wall of drafts.values()) {
    for (const end of ['start', 'end'] as const) {
      const joint = wall[end];
      if (joint?.joint === 'corner') join(joins, { marks, drafts }, wall, end, joint);
    }
  }
  return joins;
}

function join(joins: JoinTable, walls: Walls, wall: WallDraft, end: End, joint: CornerJoint): void {
  const { wall: mark, end: partnerEnd } = joint.with;
  const here = `the ${end} of ${wall.mark}`;
  const there = `the ${partnerEnd} of ${mark}`;
  const partner = walls.drafts.get(mark);
  if (!partner) {
    if (!walls.marks.has(mark))
      wall.reader.fail(`${end}/with/wall`, `a wall of this schedule; ${mark} is none: ${listedNear(walls.marks, mark)}`, mark);
    return;
  }
  const fault = (fix: string, key: 'with/wall' | 'turn' = 'with/wall'): undefined =>
    wall.reader.fail(`${end}/${key}`, fix, `corner of ${here} with ${there}`);
  if (mark === wall.mark) return fault('a corner with another wall: a straight wall does not meet itself');
  if (partner.storey !== wall.storey)
    return fault(`a wall of the same storey: ${wall.mark} is in ${wall.storey}, ${mark} in ${partner.storey}`);
  if ((wall.arc || partner.arc) && !(wall.ends && partner.ends))
    return fault('the ends of both walls, from and to: an arc wall is not placed by turns');
  const answer = partner[partnerEnd];
  if (answer && !names(answer, wall.mark, end))
    return fault(`the same joint at both ends: ${here} says a corner with ${there}, which says ${inWords(answer)}`);
  const turn = end === partnerEnd ? -joint.turn || 0 : joint.turn;
  if (answer?.joint === 'corner' && answer.turn !== turn) {
    return fault(`turns that agree: ${here} says ${joint.turn}, so ${there} must say ${turn}, and it says ${answer.turn}`, 'turn');
  }
  const taken = joins.get(mark)?.[partnerEnd];
  if (taken && !names(taken, wall.mark, end))
    return fault(`an end that is free: ${there} is joined to the ${taken.with.end} of ${taken.with.wall} already`);
  enter(joins, wall.mark, end, joint);
  enter(joins, mark, partnerEnd, { joint: 'corner', turn, with: { wall: wall.mark, end } });
}

const names = (joint: DeclaredJoint, mark: string, end: End): boolean =>
  joint.joint === 'corner' && joint.with.wall === mark && joint.with.end === end;

const inWords = (joint: DeclaredJoint): string => {
  if (joint.joint === 'corner') return `a corner with the ${joint.with.end} of ${joint.with.wall}`;
  return joint.joint === 'tee' ? `a tee on ${joint.on}` : 'a free end';
};

function enter(joins: JoinTable, mark: string, end: End, joint: CornerJoint): void {
  joins.set(mark, { ...joins.get(mark), [end]: joint });
}
