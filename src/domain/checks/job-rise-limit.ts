import { liquidHead } from '../engineering/aci-347-04/liquid-head.js';
import { riseLimit, type RiseLimit } from '../engineering/aci-347-04/rise-limit.js';
import { toFeet, type Nm } from '../quantity/length.js';
import type { FreshConcreteWall, OutsideMethod } from '../engineering/aci-347-04/fresh-concrete-wall.js';

/** As `RiseLimit`; `lift-height`: one lift, just placed, is over the rating by itself. */
export type JobRiseLimit =
  | RiseLimit
  | OutsideMethod
  | { readonly kind: 'no-rate'; readonly governs: 'lift-height'; readonly leastPsf: number; readonly trace: readonly [] };

/**
 * How fast a storey's walls may rise under a core's rating, each lift counted as liquid when it has just been placed.
 *
 * @param ratedPsf   rating of the core [psf]
 * @param pour       the pour with its placement height
 * @param liftHeight the range's lift height [nm]
 */
export function jobRiseLimit(ratedPsf: number, pour: FreshConcreteWall, liftHeight: Nm): JobRiseLimit {
  const lift = liquidHead(pour.unitWeightPcf, Math.min(toFeet(liftHeight), pour.heightFt));
  if (lift > ratedPsf) return { kind: 'no-rate', governs: 'lift-height', leastPsf: lift, trace: [] };
  return riseLimit(ratedPsf, pour);
}
