import { inSi } from '../quantity/quantity.js';
import { isPrintedGauge, WIRE_GAUGES, wireBreakingLoad } from '../engineering/en5151-forms/wire-breaking-load.js';
import { readNumberField } from './number-field.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { workedStep } from './worked-step.js';
import type { CalculatorInput } from './calculator-input.js';
import type { CalculatorResult } from './calculator-answer.js';
import type { CoherentUnits } from './both-units.js';
import type { TraceStep } from '../evidence/trace.js';

export const TIE_WIRE_FIELDS = ['wireGauge', 'strands', 'safetyFactor'] as const;

/** A tie of annealed wire, or `none` where the question names no wire. */
export type TieWire = { readonly gauge: string; readonly strands: number; readonly safetyFactor: number } | 'none';

const PRINTED = 'en5151-forms Table 5';
const IMPLIED = 'en5151-forms Table 5 (the stress its loads mean), diameter from steel-wire-gauges';
/** Strands in words. */
const STRANDS: Readonly<Record<string, number>> = { single: 1, double: 2 };
/** Safety factor of form ties, from memory of the formwork guide. */
export const ASSUMED_FACTOR = 2;

/** The wire of a tie; undefined where a field could not be read. Without a gauge there is no wire, and no number for it. */
export function readTieWire(input: CalculatorInput, fields: Readonly<Record<string, unknown>>): TieWire | undefined {
  if (!input.has('wireGauge')) {
    for (const name of ['strands', 'safetyFactor']) if (input.has(name)) input.refuse(name, 'nothing, where no wireGauge is given');
    input.defaults.push('wireGauge: not stated, no wire counted');
    return 'none';
  }
  const written = String(fields['wireGauge']).trim().toLowerCase().replace(/^(?:no\.?|#)\s*|[\s-]*(?:ga\.?|gauge|gage)$/g, '');
  const gauge = WIRE_GAUGES.includes(written) ? written : input.refuse('wireGauge', `a steel wire gauge, one of ${WIRE_GAUGES.join(', ')}`);
  const counted = { ...fields, strands: STRANDS[String(fields['strands']).trim().toLowerCase()] ?? fields['strands'] };
  const strands = input.orElse('strands', () => readNumberField(input, counted, 'strands', { from: 1, to: 12, whole: true }), 2, 'strands: 2');
  const words = `safetyFactor: ${ASSUMED_FACTOR} on the breaking load, from memory`;
  const safetyFactor = input.orElse('safetyFactor', () => readNumberField(input, fields, 'safetyFactor', { from: 1, to: 20 }), ASSUMED_FACTOR, words);
  if (gauge === undefined || strands === undefined || safetyFactor === undefined) return undefined;
  return { gauge, strands, safetyFactor };
}

/** What ties of this wire carry of a force: `capacity` of one, the number of `ties`. */
export function tieWireAnswer(
  units: CoherentUnits,
  wire: TieWire,
  force: number,
): { readonly result: Readonly<Record<string, CalculatorResult>>; readonly trace: readonly TraceStep[]; readonly notes: readonly string[] } {
  if (wire === 'none') return { result: {}, trace: [], notes: [] };
  const { gauge, strands, safetyFactor } = wire;
  const source = isPrintedGauge(gauge) ? PRINTED : IMPLIED;
  const unit = units.unit('force');
  const load = units.of('force', inSi('force', 'lb', wireBreakingLoad(gauge, strands)));
  const breaking = workedStep('breaking load of a tie', 'strands · load of one', `${strands} strands of ${gauge} gauge`, load, unit, source);
  const capacity = workedStep('capacity of a tie', 'breaking load / safety factor', `${n(load)} / ${n(safetyFactor)}`, load / safetyFactor, unit, source);
  const ties = Math.ceil(force / capacity.value - WHOLE);
  return {
    result: { breakingLoad: units.show('force', load), capacity: units.show('force', capacity.value), ties },
    trace: [breaking, capacity, workedStep('ties', '⌈ force / capacity ⌉', `${n(force)} / ${n(capacity.value)}`, ties, 'ties', 'statics')],
    notes: [
      ...(isPrintedGauge(gauge) ? [] : ['No load of this gauge is printed; it is counted with the stress that the loads of gauges 8 to 11 mean.']),
      'Straight annealed wire; every twist takes some of it.',
    ],
  };
}

/** A quotient this little over a whole number is that number: what is left of a conversion. */
const WHOLE = 1e-9;
