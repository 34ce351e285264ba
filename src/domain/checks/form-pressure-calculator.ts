import { CalculatorInput } from './calculator-input.js';
import { FRESH_CONCRETE_FIELDS, readRise, readStandingConcrete } from './fresh-concrete-input.js';
import { depthInBoth, pressureInBoth, type Calculator, type CalculatorResult } from './calculator-answer.js';
import { failure, success } from '../evidence/result.js';
import { outsideMethodAnswer } from './outside-method-answer.js';
import { pressureAtDepth } from '../engineering/aci-347-04/pressure-at-depth.js';
import { wallFormPressure } from '../engineering/aci-347-04/wall-form-pressure.js';

const SOURCE = 'aci-347-04 §2.2.2';

/**
 * Lateral pressure of fresh concrete on a wall form, as its standard says: the bare calculator knows no lift height.
 *
 * Reads `height` and `rise` and `concrete` (temperature); `method`, `unitWeight`, `cement`, `retarder` and `slump` are assumed where
 * they are left out, and listed. Answers `pressure`, `hydrostaticDepth`, and the `diagram` of pressure down the wall.
 */
export const formPressureCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, [...FRESH_CONCRETE_FIELDS, 'rise']);
  const standing = readStandingConcrete(input);
  const riseFtPerH = readRise(input);
  if (standing === undefined || riseFtPerH === undefined || input.errors.length > 0) return failure(input.errors);
  const answer = wallFormPressure({ ...standing, riseFtPerH });
  if (answer.kind === 'outside-method') return success(outsideMethodAnswer(answer, SOURCE, input.defaults));
  const { pressurePsf, hydrostaticDepthFt, governs, trace, notes } = answer;
  const result = {
    pressure: pressureInBoth(pressurePsf),
    hydrostaticDepth: depthInBoth(hydrostaticDepthFt),
    diagram: diagram(standing.unitWeightPcf, pressurePsf, [0, hydrostaticDepthFt, standing.heightFt]),
  };
  return success({ result, governs, trace, source: SOURCE, defaults: input.defaults, notes, findings: [] });
};

function diagram(w: number, p: number, depths: readonly number[]): CalculatorResult {
  return [...new Set(depths)].map((depth) => ({
    depth: depthInBoth(depth),
    pressure: pressureInBoth(pressureAtDepth(w, p, depth)),
  }));
}
