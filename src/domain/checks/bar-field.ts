import { INCH_BARS, INCH_BAR_NAMES, type InchBarName } from '../engineering/astm-a615/bars.js';
import { METRIC_BARS, METRIC_BAR_NAMES, type MetricBarName } from '../engineering/csa-g30-18/bars.js';
import { NM_PER_INCH, NM_PER_MM } from '../quantity/length.js';
import type { CalculatorInput } from './calculator-input.js';

export type BarName = InchBarName | MetricBarName;

/** A bar as the equations count it. */
export interface NamedBar {
  readonly name: BarName;
  readonly diameterIn: number;
  readonly areaIn2: number;
}

const MM_PER_INCH = NM_PER_INCH / NM_PER_MM;
const BAR_NAMES: readonly BarName[] = [...INCH_BAR_NAMES, ...METRIC_BAR_NAMES];

/** The nominal bar of a name: `#4`, `4`, `No. 4`, `10M`; null for what is none. */
export function namedBar(written: string): NamedBar | null {
  const plain = written.trim().toUpperCase().replace(/^(?:NO\.?|#)\s*/, '');
  const name = BAR_NAMES.find((each) => each.replace('#', '') === plain);
  if (name === undefined) return null;
  if (Object.hasOwn(INCH_BARS, name)) {
    const { diameterIn, areaIn2 } = INCH_BARS[name as InchBarName];
    return { name, diameterIn, areaIn2 };
  }
  const { diameterMm, areaMm2 } = METRIC_BARS[name as MetricBarName];
  return { name, diameterIn: diameterMm / MM_PER_INCH, areaIn2: areaMm2 / MM_PER_INCH ** 2 };
}

/** The field `bar`, or another of that kind; undefined where it names none, which the input lists. */
export function readBar(input: CalculatorInput, name = 'bar'): NamedBar | undefined {
  return input.name(name, namedBar, BAR_NAMES);
}
