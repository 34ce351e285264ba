import { coreOfCourse } from '../takeoff/index.js';
import { heightAt, type Gable } from '../takeoff/gables.js';
import type { Core } from '../range/range.js';
import type { LaidGable, LaidOpening, LaidWall } from '../takeoff/laid.js';
import type { Nm } from '../quantity/length.js';

/** The concrete over an opening of a laid wall [nm]. */
export interface ConcreteOver {
  /** Between the closures where they line the opening, otherwise the hole (decision 16). */
  readonly clear: Nm;
  /** From the head to the next opening above, or to the least height of the wall over the opening; 0 where nothing is above. */
  readonly least: Nm;
  /** From the head to the greatest height of the wall over the opening: what weighs on the lintel. */
  readonly greatest: Nm;
  /** The narrowest and widest of the cores from the head up. */
  readonly narrow: Core;
  readonly wide: Core;
}

/** What stands over an opening in its own storey; a wall poured on it later is a load and no depth. */
export function concreteOver(wall: LaidWall, opening: LaidOpening): ConcreteOver {
  const [low, high] = topOver(wall, opening);
  const above = wall.openings.filter(({ from, to, sill }) => from < opening.to && to > opening.from && sill >= opening.head);
  const cores = wall.courses.filter(({ bottom, height }) => bottom + height > opening.head).map(({ n }) => coreOfCourse(wall, n));
  const byWidth = (cores.length > 0 ? cores : [wall.core]).toSorted((a, b) => a.width - b.width);
  return {
    clear: opening.formsTo - opening.formsFrom,
    least: Math.max(0, Math.min(low, ...above.map(({ sill }) => sill)) - opening.head),
    greatest: Math.max(0, high - opening.head),
    narrow: byWidth[0]!,
    wide: byWidth.at(-1)!,
  };
}

function topOver({ stack, gable }: LaidWall, { from, to }: LaidOpening): readonly [least: Nm, greatest: Nm] {
  if (gable === null) return [stack.height, stack.height];
  const slope = slopeOf(gable);
  const ends = [heightAt(slope, from), heightAt(slope, to)];
  const peaked = gable.peakAt > from && gable.peakAt < to;
  return [stack.height + Math.floor(Math.min(...ends)), stack.height + Math.ceil(peaked ? gable.rise : Math.max(...ends))];
}

const slopeOf = ({ rise, peakAt, slopes }: LaidGable): Gable => ({
  rise,
  foot: Math.min(peakAt, ...slopes.map(({ from }) => from)),
  peak: peakAt,
  end: Math.max(peakAt, ...slopes.map(({ to }) => to)),
});
