import { add, direction, distance, leftNormal, scale, subtract, type Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { Wall } from './schedule.js';

/** A diameter within this of the distance of the ends is meant to be it (decision 6): rounded coordinates leave no more. */
export const SEMICIRCLE_REACH: Nm = 2_000;

/**
 * Central angle of the minor arc over a chord.
 *
 * @equation sweep = 2·asin(chord / (2·radius))
 * @param chord  distance of the arc's ends [nm]
 * @param radius of the arc [nm]
 * @returns sweep, 0 < sweep ≤ π [rad]
 * @source geometry
 */
export function arcSweep(chord: number, radius: number): number {
  return Math.abs(2 * radius - chord) <= SEMICIRCLE_REACH ? Math.PI : 2 * Math.asin(Math.min(1, chord / (2 * radius)));
}

/** Six degrees. */
const FACET = Math.PI / 30;

/** The dimension line of a radius wall as the user drew it, from→to. */
export interface ArcLine {
  readonly centre: Vector;
  readonly radius: Nm;
  readonly sweep: number;
  /** 1 where it turns left, −1 where it turns right. */
  readonly turn: 1 | -1;
  /** Directions of travel at its two ends. */
  readonly leaves: Vector;
  readonly arrives: Vector;
  /** Points along it between its ends, no more than 6° apart: enough to tell what a loop of curves holds. */
  readonly between: readonly Vector[];
}

/** The arc of a radius wall, null for a straight one. */
export function arcLineOf(wall: Pick<Wall, 'from' | 'to' | 'arc'>): ArcLine | null {
  if (!wall.arc) return null;
  const { radius } = wall.arc;
  const turn = wall.arc.turns === 'left' ? 1 : -1;
  const chord = direction(subtract(wall.to, wall.from));
  const sweep = arcSweep(distance(wall.from, wall.to), radius);
  const side = scale(leftNormal(chord), turn);
  const half = scale(add(wall.from, wall.to), 1 / 2);
  const [cosine, sine] = [sweep === Math.PI ? 0 : Math.cos(sweep / 2), Math.sin(sweep / 2)];
  const along = scale(chord, cosine);
  const centre = add(half, scale(side, radius * cosine));
  const parts = Math.ceil(sweep / FACET);
  const between = Array.from({ length: parts - 1 }, (_, index) => {
    const past = ((index + 1) * sweep) / parts - sweep / 2;
    return add(centre, add(scale(chord, radius * Math.sin(past)), scale(side, -radius * Math.cos(past))));
  });
  return {
    centre,
    radius,
    sweep,
    turn,
    leaves: subtract(along, scale(side, sine)),
    arrives: add(along, scale(side, sine)),
    between,
  };
}
