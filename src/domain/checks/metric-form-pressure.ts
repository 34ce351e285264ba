import { depthInBothFromSi, pressureInBothFromSi, type CalculatorAnswer } from './calculator-answer.js';
import { kgPerM3OfWeight, weightOf } from './concrete-weight.js';
import { NM_PER_FOOT, toMetres } from '../quantity/length.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { workedStep } from './worked-step.js';
import type { CalculatorInput } from './calculator-input.js';
import type { Span } from '../quantity/span.js';
import type { TraceStep } from '../evidence/trace.js';

/** What the metric methods ask alike of a form: m, kN/m³. */
export interface MetricForm {
  readonly height: number;
  readonly weight: number;
}

/** The same while it is filled [m/h]. */
export interface MetricWall extends MetricForm {
  readonly rise: number;
}

const HIGHEST_FT = 1000;
export const FORM_HEIGHT: Span = { above: 0, to: HIGHEST_FT * NM_PER_FOOT, says: `more than 0 and at most ${HIGHEST_FT} ft` };
const ASSUMED_WEIGHT = 25;

/** Height and weight; undefined where a field could not be read. */
export function readMetricForm(input: CalculatorInput): MetricForm | undefined {
  const height = input.length('height', '3 m', FORM_HEIGHT);
  const read = () => input.quantity('unitWeight', 'density', '25 kN/m3', PLAUSIBLE.unitWeight);
  const kg = input.orElse('unitWeight', read, kgPerM3OfWeight(ASSUMED_WEIGHT), `unitWeight: ${ASSUMED_WEIGHT} kN/m3`);
  return height === undefined || kg === undefined ? undefined : { height: toMetres(height), weight: weightOf(kg) };
}

/** Pressure capped by the liquid head, its liquid depth and diagram; the form is higher than what is poured only where said. */
export function cappedPressure(
  pressure: number,
  governs: string,
  { weight }: MetricForm,
  poured: number,
  source: string,
): Pick<CalculatorAnswer, 'result' | 'governs'> & { readonly trace: readonly TraceStep[] } {
  const head = workedStep('liquid head', 'D · h', `${n(weight)} · ${n(poured)}`, weight * poured, 'kPa', source);
  const value = Math.min(pressure, head.value);
  const depth = workedStep('liquid depth', 'P / D', `${n(value)} / ${n(weight)}`, value / weight, 'm', source);
  const point = (z: number) => ({ depth: depthInBothFromSi(z), pressure: pressureInBothFromSi(Math.min(weight * z, value)) });
  const liquid = poured - depth.value < poured * 1e-12;
  return {
    result: {
      pressure: pressureInBothFromSi(value),
      hydrostaticDepth: depthInBothFromSi(depth.value),
      diagram: (liquid ? [0, poured] : [0, depth.value, poured]).map(point),
    },
    governs: pressure >= head.value ? 'liquid-head' : governs,
    trace: [head, depth],
  };
}
