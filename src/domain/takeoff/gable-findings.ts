import { finding, type Finding } from '../evidence/finding.js';
import { toMm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import { laidGable } from './gables.js';
import type { LineResult } from './storey-layout.js';
import type { StoreyPlan } from './storey-plan.js';

/** Slopes on which fresh concrete will not lie without a cap; the threshold is the range's. */
export function gableFindings(result: LineResult, plan: StoreyPlan, range: FormRange): Finding[] {
  const from = range.parameters.gableSteepFromDeg;
  return result.gables.flatMap(({ wall, gable, courses }) =>
    laidGable(gable, wall, courses.length)
      .slopes.filter(({ degrees }) => degrees >= from)
      .map((slope) => {
        const numbers = {
          slopeDeg: Math.round(slope.degrees * 10) / 10,
          core: wall.core.code,
          fromDeg: from,
          slopeMm: toMm(slope.length),
          capM2: Math.round(slope.capMm2) / 1e6,
        };
        const place = { storey: plan.storey.id, wall: wall.wall.mark, atMm: toMm(slope.from) };
        return finding('gable-steep', { ...place, numbers, source: 'common practice' });
      }),
  );
}
