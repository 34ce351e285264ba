import type { Nm } from '../quantity/length.js';
import type { Joins } from './join-walls.js';
import { normaliseLines } from './line-normalisation.js';
import { endPoint, type Positions } from './plan-position.js';
import type { DeclaredJoint, Wall } from './schedule.js';
import type { WallDraft } from './wall-draft.js';

/** A draft with its place, and the joints its schedule declared for it. */
export function placedWall({ reader: _, ends, ...draft }: WallDraft, positions: Positions, joins: Joins): Wall {
  const position = positions.get(draft.mark);
  if (!position) throw new Error(`wall ${draft.mark} was not placed`);
  const jointAt = (end: 'start' | 'end'): DeclaredJoint | null =>
    draft[end] ?? (ends ? null : (joins.get(draft.mark)?.[end] ?? { joint: 'free' }));
  const joints = { start: jointAt('start'), end: jointAt('end') };
  const line = { from: endPoint(position, 'start'), to: endPoint(position, 'end') };
  return { ...draft, ...line, ...joints, ...(ends ? {} : { placed: true as const }) };
}

/**
 * Marks of the walls that are walked against their from→to: the building lies on the left of every loop, and an open chain follows
 * its first row's wall (decision 2). Walls without a place are left out, and so are arcs, as in the take-off's own lines.
 *
 * @param drafts in the order of their rows
 */
export function walkedAgainst(
  drafts: Iterable<WallDraft>,
  positions: Positions,
  joins: Joins,
  coreWidth: (core: string) => Nm,
): ReadonlySet<string> {
  const storeys = new Map<string, Wall[]>();
  for (const draft of drafts) {
    if (draft.arc || !positions.has(draft.mark)) continue;
    const wall = placedWall(draft, positions, joins);
    const known = storeys.get(wall.storey);
    if (known) known.push(wall);
    else storeys.set(wall.storey, [wall]);
  }
  const against = new Set<string>();
  for (const walls of storeys.values())
    normaliseLines(walls, coreWidth).reversed.forEach((reversed, index) => {
      if (reversed) against.add((walls[index] as Wall).mark);
    });
  return against;
}
