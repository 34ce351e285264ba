import type { Nm } from '../quantity/length.js';

/** The slope over a wall: a plane by station along the dimension line, zero at both ends, `rise` at `peakAt` (decision 22). */
export interface Slope {
  readonly rise: Nm;
  readonly peakAt: Nm;
}

/** The slopes of walls with a gable; null where the gable was written and is not right, so that nothing is checked against it. */
export type Gables = ReadonlyMap<string, Slope | null>;

/**
 * Height of the slope over the wall's height at a station, as a fraction of whole numbers: `over / under` nanometres.
 *
 * @param at from the wall's `from` along the dimension line, 0 ≤ at ≤ length [nm]
 */
function slopeAt({ rise, peakAt }: Slope, at: Nm, length: Nm): { readonly over: bigint; readonly under: bigint } {
  const [run, whole] = at <= peakAt && peakAt > 0 ? [at, peakAt] : [length - at, length - peakAt];
  return { over: BigInt(rise) * BigInt(run), under: BigInt(whole) };
}

/**
 * Room over the wall's height between two stations, down to the nanometre: the slope is highest at its peak and straight beside it, so
 * it is least at one of the two.
 */
export function roomUnderSlope(slope: Slope, from: Nm, to: Nm, length: Nm): Nm {
  const rooms = [from, to].map((at) => {
    const { over, under } = slopeAt(slope, at, length);
    return Number(over / under);
  });
  return Math.min(...rooms);
}
