import { CalculatorInput } from './calculator-input.js';
import { ciriaPressure } from './ciria-pressure.js';
import { dinPressure } from './din-pressure.js';
import {
  depthInBoth,
  depthInBothFromSi,
  pressureInBoth,
  pressureInBothFromSi,
  type Calculator,
  type CalculatorAnswer,
} from './calculator-answer.js';
import { failure, success } from '../evidence/result.js';
import {
  FRESH_CONCRETE_FIELDS,
  inSi,
  inUsCustomary,
  readRise,
  readStandingConcrete,
  type StandingConcrete,
} from './fresh-concrete-input.js';
import { metresPerHourToFeetPerHour } from '../quantity/us-customary.js';
import { outsideMethodAnswer } from './outside-method-answer.js';
import { pressureAtDepth } from '../engineering/aci-347-04/pressure-at-depth.js';
import { pressureAtDepthSi } from '../engineering/aci-347-04/pressure-at-depth-si.js';
import { questionSystem } from './question-system.js';
import { wallFormPressure, wallFormPressureSi } from '../engineering/aci-347-04/wall-form-pressure.js';
import type { OutsideMethod } from '../engineering/aci-347-04/fresh-concrete-wall.js';

const SOURCE = 'aci-347-04 §2.2.2';

/** What the equations of either set say. */
type Evaluated = OutsideMethod | (Pick<CalculatorAnswer, 'result' | 'governs' | 'trace' | 'notes'> & { readonly kind: 'pressure' });

/**
 * Lateral pressure of fresh concrete on a wall form, as its standard says: the bare calculator knows no lift height.
 *
 * Reads `height` and `rise` and `concrete` (temperature); `method`, `unitWeight`, `cement`, `retarder` and `slump` are assumed where
 * they are left out, and listed. Answers `pressure`, `hydrostaticDepth`, and the `diagram` of pressure down the wall, in both systems,
 * from the one set of equations in whose units the question is asked (`questionSystem`). Methods: `aci-347` (assumed where none is
 * named), `ciria-108` and `din-18218`, each with fields of its own.
 */
export const formPressureCalculator: Calculator = (fields) => {
  const other = OTHER_METHODS.find(({ name }) => name === fields['method']);
  return other ? other.calculator(fields) : aciPressure(fields);
};

const OTHER_METHODS: readonly { readonly name: string; readonly calculator: Calculator }[] = [
  { name: 'ciria-108', calculator: ciriaPressure },
  { name: 'din-18218', calculator: dinPressure },
];
const METHODS = ['aci-347', ...OTHER_METHODS.map(({ name }) => name)];

const aciPressure: Calculator = (fields) => {
  const input = new CalculatorInput(fields, [...FRESH_CONCRETE_FIELDS, 'rise']);
  const { system, note } = questionSystem(fields, 'rise');
  const standing = readStandingConcrete(input, system, METHODS);
  const riseMPerH = readRise(input);
  if (standing === undefined || riseMPerH === undefined || input.errors.length > 0) return failure(input.errors);
  const evaluated = system === 'si' ? bySi(standing, riseMPerH) : byUsCustomary(standing, riseMPerH);
  if (evaluated.kind === 'outside-method') return success(outsideMethodAnswer(evaluated, SOURCE, input.defaults));
  const { result, governs, trace } = evaluated;
  const notes = [...evaluated.notes, note];
  return success({ result, governs, trace, source: SOURCE, defaults: input.defaults, notes, findings: [] });
};

function byUsCustomary(standing: StandingConcrete, riseMPerH: number): Evaluated {
  const wall = inUsCustomary(standing);
  const answer = wallFormPressure({ ...wall, riseFtPerH: metresPerHourToFeetPerHour(riseMPerH) });
  if (answer.kind === 'outside-method') return answer;
  const { pressurePsf, hydrostaticDepthFt, ...rest } = answer;
  const at = (depth: number) => ({
    depth: depthInBoth(depth),
    pressure: pressureInBoth(pressureAtDepth(wall.unitWeightPcf, pressurePsf, depth)),
  });
  const result = {
    pressure: pressureInBoth(pressurePsf),
    hydrostaticDepth: depthInBoth(hydrostaticDepthFt),
    diagram: diagram([0, hydrostaticDepthFt, wall.heightFt], at),
  };
  return { ...rest, result };
}

function bySi(standing: StandingConcrete, riseMPerH: number): Evaluated {
  const wall = inSi(standing);
  const answer = wallFormPressureSi({ ...wall, riseMPerH });
  if (answer.kind === 'outside-method') return answer;
  const { pressureKpa, hydrostaticDepthM, ...rest } = answer;
  const at = (depth: number) => ({
    depth: depthInBothFromSi(depth),
    pressure: pressureInBothFromSi(pressureAtDepthSi(wall.unitWeightKgPerM3, pressureKpa, depth)),
  });
  const result = {
    pressure: pressureInBothFromSi(pressureKpa),
    hydrostaticDepth: depthInBothFromSi(hydrostaticDepthM),
    diagram: diagram([0, hydrostaticDepthM, wall.heightM], at),
  };
  return { ...rest, result };
}

/** One point a depth; the foot of a wall that is liquid all the way down is its liquid depth. */
function diagram<Point>(depths: readonly [number, number, number], at: (depth: number) => Point): readonly Point[] {
  const [top, liquid, foot] = depths;
  const points = foot - liquid < foot * SAME_DEPTH ? [top, foot] : depths;
  return points.map(at);
}

const SAME_DEPTH = 1e-12;
