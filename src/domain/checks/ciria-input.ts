import { C1, C2, type Section } from '../engineering/ciria-108/form-pressure.js';
import { COLDEST_C, temperatureFactor, WARMEST_C } from '../engineering/ciria-108/temperature-factor.js';
import { inUnit } from '../quantity/quantity.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { toMetres } from '../quantity/length.js';
import { FORM_HEIGHT, readMetricForm, type MetricForm } from './metric-form-pressure.js';
import { readNumberField } from './number-field.js';
import { workedStep } from './worked-step.js';
import type { CalculatorInput } from './calculator-input.js';
import type { LeftLimit } from './outside-answer.js';
import type { TraceStep } from '../evidence/trace.js';

export const CIRIA_FIELDS = ['method', 'height', 'pourHeight', 'concrete', 'unitWeight', 'section', 'c2'] as const;
const SECTIONS = ['wall', 'column'] as const satisfies readonly Section[];

/** A form by the report, but for its rate. */
export interface CiriaForm {
  readonly form: MetricForm;
  /** [m] */
  readonly poured: number;
  readonly c1: number;
  readonly c2: number;
  readonly K: TraceStep;
  readonly outside: readonly LeftLimit[];
}

/** Everything but the rate; undefined where a field could not be read. */
export function readCiria(input: CalculatorInput, fields: Readonly<Record<string, unknown>>): CiriaForm | undefined {
  const form = readMetricForm(input);
  const T = input.quantity('concrete', 'temperature', '15 C', PLAUSIBLE.concrete);
  const readPour = () => {
    const nm = input.length('pourHeight', '3 m', FORM_HEIGHT);
    return nm === undefined ? undefined : toMetres(nm);
  };
  const poured = input.orElse('pourHeight', readPour, form?.height, 'pourHeight: the height of the form');
  if (form && poured !== undefined && poured > form.height) input.refuse('pourHeight', 'at most the height of the form');
  const readSection = () => input.name<Section>('section', (name) => SECTIONS.find((known) => known === name.trim().toLowerCase()) ?? null, SECTIONS);
  const section = input.orElse<Section>('section', readSection, 'wall', 'section: wall, C1 = 1');
  const c2 = input.orElse('c2', () => readC2(input, fields), C2[0], 'c2: 0.3, cement without retarder');
  if (form === undefined || T === undefined || poured === undefined || section === undefined || c2 === undefined) return undefined;
  const K = workedStep('temperature coefficient', 'K = ( 36 / ( T + 16 ) )²', `( 36 / ( ${n(T)} + 16 ) )²`, temperatureFactor(T), '1', 'ciria-108');
  return { form, poured, c1: C1[section], c2, K, outside: temperaturesLeft(T) };
}

function readC2(input: CalculatorInput, fields: Readonly<Record<string, unknown>>): number | undefined {
  const value = readNumberField(input, fields, 'c2', { from: C2[0], to: C2[2] });
  if (value === undefined || C2.some((known) => known === value)) return value;
  return input.refuse('c2', `one of ${C2.join(', ')}`);
}

function temperaturesLeft(read: number): readonly LeftLimit[] {
  // 41 F is 5 C.
  const T = Number(read.toFixed(9));
  if (T >= COLDEST_C && T <= WARMEST_C) return [];
  const [limit, side] = T < COLDEST_C ? [COLDEST_C, 'below'] : [WARMEST_C, 'above'];
  const fahrenheit = (c: number): number => Number(inUnit('temperature', '°F', c).toFixed(6));
  return [{ numbers: { concreteF: fahrenheit(T), limitF: fahrenheit(limit), side }, source: 'ciria-108 from memory' }];
}
