import { inSi } from '../quantity/quantity.js';
import { NM_PER_FOOT } from '../quantity/length.js';
import { psiOf } from './strength-units.js';
import type { CalculatorInput } from './calculator-input.js';
import type { Span } from '../quantity/span.js';

const psi = (value: number): number => inSi('pressure', 'psi', value);

/** What the fields of the strength calculators may be: wide on purpose, common practice, no source. */
export const STRENGTH_SPANS = {
  fc: { from: psi(1000), to: psi(20_000), says: 'between 1000 and 20000 psi (7 and 138 MPa)' },
  fy: { from: psi(20_000), to: psi(120_000), says: 'between 20 and 120 ksi (138 and 827 MPa)' },
  section: { above: 0, to: 20 * NM_PER_FOOT, says: 'more than 0 and at most 20 ft' },
  spacing: { above: 0, to: 10 * NM_PER_FOOT, says: 'more than 0 and at most 10 ft' },
  area: { above: 0, to: inSi('area', 'in2', 1000), says: 'more than 0 and at most 1000 in2' },
} as const satisfies Readonly<Record<string, Span>>;

const GRADE_60_PSI = 60_000;
/** Least strength of structural concrete. aci-318-14 Table 19.2.1.1, from memory. */
const LEAST_FC_PSI = 2500;

/** f'c [psi]. */
export function readConcreteStrength(input: CalculatorInput): number | undefined {
  const kPa = input.quantity('fc', 'pressure', '3000 psi', STRENGTH_SPANS.fc);
  return kPa === undefined ? undefined : psiOf(kPa);
}

/** fy [psi]; Grade 60 where it is left out, listed. */
export function readYield(input: CalculatorInput): number | undefined {
  const read = (): number | undefined => input.quantity('fy', 'pressure', '60 ksi', STRENGTH_SPANS.fy);
  const kPa = input.orElse('fy', read, psi(GRADE_60_PSI), 'fy: 60 ksi (Grade 60)');
  return kPa === undefined ? undefined : psiOf(kPa);
}

/** What is said beside a result of weak concrete. */
export const weakConcreteNotes = (fcPsi: number): readonly string[] =>
  fcPsi < LEAST_FC_PSI ? [`The concrete is weaker than the ${LEAST_FC_PSI} psi that ACI 318 asks of structural concrete.`] : [];

export const WORKED_IN_US_NOTE = 'Worked by the US customary equations of ACI 318; metric results are converted exactly.';
