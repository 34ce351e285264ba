import type { Nm } from '../quantity/length.js';
import { checkStandingTee, type DeclaredTee } from './declared-tees.js';
import type { Joins } from './join-walls.js';
import { beside, drawnPosition, fromStart, otherEnd, type Position, type Positions } from './plan-position.js';
import type { Wall } from './schedule.js';
import type { ScheduleContext } from './schedule-context.js';
import { branchPosition } from './tee-place.js';
import { placedWall, walkedAgainst } from './walking-directions.js';
import { wallBody, type WallBody } from './wall-bodies.js';
import { wallChains, type WallChain } from './wall-chains.js';
import type { WallDraft } from './wall-draft.js';

export interface WallsToPlace {
  readonly drafts: ReadonlyMap<string, WallDraft>;
  readonly joins: Joins;
  readonly tees: readonly DeclaredTee[];
  readonly context: ScheduleContext;
}

/** Free ground between two chains that are placed by themselves. */
const CHAIN_MARGIN: Nm = 10_000_000_000;

/**
 * Gives every wall its ends. Walls with coordinates keep them; the others follow from the wall they are joined to by length and turn,
 * or stand on the side of the wall that their tee names.
 *
 * A chain that hangs on nothing starts at its first row's wall, along x, clear of everything placed before it, so that separate
 * chains never touch. A chain whose last end does not come back to its first keeps the gap: that is for the take-off to find.
 * Positions are exact at turns of 90° and carry the rounding of a sine elsewhere. Chains that hang on each other in a ring have no
 * place and are told; a wall's place is then missing.
 */
export function placeWalls(plan: WallsToPlace): Positions {
  const placing = new Placing(plan);
  placing.drawn();
  placing.chainsByThemselves();
  placing.tellRings();
  return placing.placed;
}

/** The walls of the schedule, once every one has its place. */
export const placedWalls = ({ drafts, joins }: WallsToPlace, positions: Positions): readonly Wall[] =>
  [...drafts.values()].map((draft) => placedWall(draft, positions, joins));

/** Tells every declared tee that does not stand where it is declared to, now that all walls have their places. */
export function checkTees({ drafts, joins, tees, context }: WallsToPlace, positions: Positions): void {
  if (tees.length === 0) return;
  const against = walkedAgainst(drafts.values(), positions, joins, coreWidthIn(context));
  const standing = (wall: WallDraft) => {
    const [position, body] = [positions.get(wall.mark), wallBody(wall, context)];
    return position && body && { position, body, reversed: against.has(wall.mark) };
  };
  for (const tee of tees) {
    const [through, branch] = [standing(tee.through), standing(tee.branch)];
    if (through && branch) checkStandingTee(tee, through, branch);
  }
}

const coreWidthIn =
  ({ coreWidths }: ScheduleContext) =>
  (core: string): Nm =>
    coreWidths?.get(core) ?? 0;

/** Places found so far; every wall gets its place once. */
class Placing {
  readonly placed = new Map<string, Position>();
  private readonly chains: ReadonlyMap<string, WallChain>;
  private readonly teesOn = new Map<string, DeclaredTee[]>();

  constructor(private readonly plan: WallsToPlace) {
    this.chains = wallChains(plan.drafts, plan.joins, plan.tees);
    for (const tee of plan.tees) {
      const known = this.teesOn.get(tee.through.mark);
      if (known) known.push(tee);
      else this.teesOn.set(tee.through.mark, [tee]);
    }
  }

  /** Walls with coordinates, all that is joined to them, and all that hangs on these. */
  drawn(): void {
    for (const { mark, ends } of this.plan.drafts.values()) if (ends) this.placed.set(mark, drawnPosition(ends));
    for (const mark of [...this.placed.keys()]) this.follow(mark);
    if (this.plan.tees.length > 0) this.hang([...this.plan.drafts.values()].filter(({ mark }) => this.placed.has(mark)));
  }

  /** Chains that hang on nothing, each with all that hangs on it. */
  chainsByThemselves(): void {
    let clearX = rightmost(this.placed);
    for (const chain of new Set(this.chains.values())) {
      const [first] = chain.walls;
      if (!first || this.placed.has(first.mark) || chain.tees.length > 0) continue;
      const reach = this.reachOf(chain);
      const from = { x: this.placed.size === 0 ? 0 : Math.ceil(clearX + reach) + CHAIN_MARGIN, y: 0 };
      this.placed.set(first.mark, fromStart(from, 0, first.length));
      this.follow(first.mark);
      this.hang(chain.walls);
      clearX = from.x + reach;
    }
  }

  tellRings(): void {
    for (const { walls, tees } of new Set(this.chains.values())) {
      const [tee] = tees;
      if (!tee || walls.some(({ mark }) => this.placed.has(mark))) continue;
      const { branch, end, through } = tee;
      branch.reader.fail(
        end,
        `from and to coordinates for one of the walls: ${branch.mark} hangs on ${through.mark}, and ${through.mark} has no place of its own but by what hangs on it`,
        `tee on ${through.mark}`,
      );
    }
  }

  /** Walks from a placed wall to walls that are not placed yet: on from its end first, so that a ring misses itself where it closes. */
  private follow(first: string): void {
    const { drafts, joins } = this.plan;
    for (const side of ['end', 'start'] as const) {
      let [mark, end] = [first, side as 'start' | 'end'];
      for (;;) {
        const position = this.placed.get(mark);
        const joint = joins.get(mark)?.[end];
        const partner = joint && drafts.get(joint.with.wall);
        if (!position || !joint || !partner || this.placed.has(partner.mark)) break;
        this.placed.set(partner.mark, beside(position, end, joint.turn, joint.with.end, partner.length));
        [mark, end] = [partner.mark, otherEnd(joint.with.end)];
      }
    }
  }

  /** Places the chains whose tees name these walls, then those that name walls of these chains, and so on. */
  private hang(placed: readonly WallDraft[]): void {
    for (let walls = placed; walls.length > 0; ) {
      const tees = walls.flatMap(({ mark }) => this.teesOn.get(mark) ?? []);
      if (tees.length === 0) return;
      const against = this.against(walls);
      walls = tees.flatMap((tee) => {
        const chain = this.chains.get(tee.branch.mark);
        if (!chain || this.placed.has(tee.branch.mark) || !this.standOn(tee, chain, against.has(tee.through.mark))) return [];
        return chain.walls;
      });
    }
  }

  /** The chain first stands alone, to see which way it is walked, then square on its through wall. */
  private standOn({ branch, end, through, joint }: DeclaredTee, chain: WallChain, throughReversed: boolean): boolean {
    const bodies = [through, branch].map((wall) => wallBody(wall, this.plan.context)) as [WallBody | null, WallBody | null];
    const position = this.placed.get(through.mark);
    if (!position || !bodies[0] || !bodies[1]) return false;
    this.placed.set(branch.mark, fromStart({ x: 0, y: 0 }, 0, branch.length));
    this.follow(branch.mark);
    const reversed = this.against(chain.walls).has(branch.mark);
    for (const { mark } of chain.walls) this.placed.delete(mark);
    const standing = { position, body: bodies[0], reversed: throughReversed };
    this.placed.set(branch.mark, branchPosition(standing, joint, { end, length: branch.length, body: bodies[1], reversed }));
    this.follow(branch.mark);
    return true;
  }

  private against(walls: readonly WallDraft[]): ReadonlySet<string> {
    return walkedAgainst(walls, this.placed, this.plan.joins, coreWidthIn(this.plan.context));
  }

  /** Nothing of a chain or of what hangs on it lies further from its start than all of it is long, walls' thicknesses included. */
  private reachOf(first: WallChain): number {
    const seen = new Set([first]);
    let reach = 0;
    for (const { walls, length } of seen) {
      reach += length;
      for (const tee of walls.flatMap(({ mark }) => this.teesOn.get(mark) ?? [])) {
        const hanging = this.chains.get(tee.branch.mark);
        if (hanging) seen.add(hanging);
        for (const wall of [tee.branch, tee.through]) reach += wallBody(wall, this.plan.context)?.thickness ?? 0;
      }
    }
    return reach;
  }
}

/** Right-hand bound of everything placed; an arc bulges by no more than its length. */
function rightmost(placed: Positions): number {
  let bound = Number.NEGATIVE_INFINITY;
  for (const { from, to } of placed.values())
    bound = Math.max(bound, Math.max(from.x, to.x) + Math.hypot(to.x - from.x, to.y - from.y));
  return Number.isFinite(bound) ? bound : 0;
}
