import type { DeclaredTee } from './declared-tees.js';
import type { Joins } from './join-walls.js';
import type { WallDraft } from './wall-draft.js';

/** Walls joined to each other by declared corners, in the order of their rows. */
export interface WallChain {
  readonly walls: readonly WallDraft[];
  /** A wall of it has coordinates, so that all of them have a place. */
  readonly drawn: boolean;
  /** Its tees on walls of other chains: any of them places it. */
  readonly tees: readonly DeclaredTee[];
  readonly length: number;
}

/** The chains of a schedule by each of their walls' marks; chains come in the order of their first rows. */
export function wallChains(
  drafts: ReadonlyMap<string, WallDraft>,
  joins: Joins,
  tees: readonly DeclaredTee[],
): ReadonlyMap<string, WallChain> {
  const members = new Map<string, Set<string>>();
  for (const mark of drafts.keys()) {
    if (members.has(mark)) continue;
    const chain = new Set([mark]);
    for (const each of chain) {
      members.set(each, chain);
      for (const joint of Object.values(joins.get(each) ?? {})) if (drafts.has(joint.with.wall)) chain.add(joint.with.wall);
    }
  }
  const hanging = new Map<Set<string>, DeclaredTee[]>();
  for (const tee of tees) {
    const own = members.get(tee.branch.mark) as Set<string>;
    if (own.has(tee.through.mark)) continue;
    const known = hanging.get(own);
    if (known) known.push(tee);
    else hanging.set(own, [tee]);
  }
  const walls = new Map<Set<string>, WallDraft[]>();
  for (const draft of drafts.values()) {
    const own = members.get(draft.mark) as Set<string>;
    const known = walls.get(own);
    if (known) known.push(draft);
    else walls.set(own, [draft]);
  }
  const chains = new Map([...walls].map(([own, each]) => [own, chainOf(each, hanging.get(own) ?? [])]));
  return new Map([...members].map(([mark, own]) => [mark, chains.get(own) as WallChain]));
}

const chainOf = (walls: readonly WallDraft[], tees: readonly DeclaredTee[]): WallChain => ({
  walls,
  drawn: walls.some(({ ends }) => ends !== null),
  tees,
  length: walls.reduce((total, wall) => total + wall.length, 0),
});
