import { C1, C2, formPressure108, type Section } from '../engineering/ciria-108/form-pressure.js';
import { COLDEST_C, temperatureFactor, WARMEST_C } from '../engineering/ciria-108/temperature-factor.js';
import { failure, success } from '../evidence/result.js';
import { inUnit } from '../quantity/quantity.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { toMetres } from '../quantity/length.js';
import { CalculatorInput } from './calculator-input.js';
import { cappedPressure, FORM_HEIGHT, readMetricWall } from './metric-form-pressure.js';
import { outsideAnswer, type LeftLimit } from './outside-answer.js';
import { readNumberField } from './number-field.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'ciria-108';
const SECTIONS = ['wall', 'column'] as const satisfies readonly Section[];

/**
 * Form pressure by CIRIA Report 108: `section` (wall or column), `c2` (0.30, 0.45, 0.60), `pourHeight` where less is poured than the form is high.
 *
 * Worked in SI, the units of the report. Outside its temperatures there is no answer.
 */
export const ciriaPressure: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['method', 'height', 'pourHeight', 'rise', 'concrete', 'unitWeight', 'section', 'c2']);
  const wall = readMetricWall(input);
  const T = input.quantity('concrete', 'temperature', '15 C', PLAUSIBLE.concrete);
  const readPour = () => {
    const nm = input.length('pourHeight', '3 m', FORM_HEIGHT);
    return nm === undefined ? undefined : toMetres(nm);
  };
  const poured = input.orElse('pourHeight', readPour, wall?.height, 'pourHeight: the height of the form');
  if (wall && poured !== undefined && poured > wall.height) input.refuse('pourHeight', 'at most the height of the form');
  const readSection = () => input.name<Section>('section', (name) => SECTIONS.find((known) => known === name.trim().toLowerCase()) ?? null, SECTIONS);
  const section = input.orElse<Section>('section', readSection, 'wall', 'section: wall, C1 = 1');
  const c2 = input.orElse('c2', () => readC2(input, fields), C2[0], 'c2: 0.3, cement without retarder');
  if (wall === undefined || T === undefined || poured === undefined || section === undefined || c2 === undefined) return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const outside = temperaturesLeft(T);
  if (outside.length > 0) return success(outsideAnswer('CIRIA 108', outside, SOURCE, input.defaults));
  const { weight: D, rise: R, height: H } = wall;
  const c1 = C1[section];
  const K = workedStep('temperature coefficient', 'K = ( 36 / ( T + 16 ) )²', `( 36 / ( ${n(T)} + 16 ) )²`, temperatureFactor(T), '1', SOURCE);
  const P = formPressure108(D, c1, c2, K.value, R, H);
  const equation = 'P = D · ( C1 · √R + C2 · K · √( H − C1 · √R ) )';
  const substituted = `${n(D)} · ( ${n(c1)} · √${n(R)} + ${n(c2)} · ${n(K.value)} · √( ${n(H)} − ${n(c1)} · √${n(R)} ) )`;
  const steps = P === null ? [] : [K, workedStep('pressure', equation, substituted, P, 'kPa', SOURCE)];
  const { result, governs, trace } = cappedPressure(P ?? Number.POSITIVE_INFINITY, 'equation', wall, poured, SOURCE);
  return success({
    result,
    governs,
    trace: [...steps, ...trace],
    source: SOURCE,
    defaults: input.defaults,
    notes: P === null ? ['C1 · √R is over the height of the form: as the report says, the liquid head counts.'] : [],
    findings: [],
  });
};

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
