import { failure, success } from '../evidence/result.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { teeForce } from '../engineering/statics/tee-force.js';
import { coherentUnits } from './both-units.js';
import { CalculatorInput } from './calculator-input.js';
import { PIN_BAR_FIELDS, pinBarStep, readPinBar } from './pin-bar-input.js';
import { readTieWire, TIE_WIRE_FIELDS, tieWireAnswer } from './tie-wire-input.js';
import { STATICS_SPANS as SPANS } from './statics-spans.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'statics';

/**
 * Force per course on the far panel of a tee, and what its wire carries.
 *
 * Reads `pressure`, `core` (of the branch) and `courseHeight`; `wireGauge`, `strands` and `safetyFactor` of the ties; `bar`, `webSpacing` and
 * `barYield` of the pinned bar. Answers `force`, `capacity` of one tie, the number of `ties`, and `barForce`, what the bar would carry
 * by bending alone.
 */
export const teeCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['pressure', 'core', 'courseHeight', ...TIE_WIRE_FIELDS, ...PIN_BAR_FIELDS]);
  const pressureKpa = input.quantity('pressure', 'pressure', '600 psf', SPANS.pressure);
  const core = input.length('core', '6 in', SPANS.core);
  const courseHeight = input.length('courseHeight', '16 in', SPANS.courseHeight);
  const wire = readTieWire(input, fields);
  const bar = readPinBar(input);
  if (pressureKpa === undefined || core === undefined || courseHeight === undefined) return failure(input.errors);
  if (wire === undefined || bar === undefined || input.errors.length > 0) return failure(input.errors);
  const units = coherentUnits(input, { pressure: 'pressure', core: 'length', courseHeight: 'length' });
  const [p, t, c] = [units.of('pressure', pressureKpa), units.ofLength(core), units.ofLength(courseHeight)];
  const force = workedStep('force per course', 'F = p · t · c', `${n(p)} · ${n(t)} · ${n(c)}`, teeForce(p, t, c), units.unit('force'), SOURCE);
  const ties = tieWireAnswer(units, wire, force.value);
  const alone = bar === 'none' ? null : pinBarStep(units, bar, core);
  const bends = alone !== null && alone.value < force.value;
  return success({
    result: { force: units.show('force', force.value), ...ties.result, ...(alone && { barForce: units.show('force', alone.value) }) },
    governs: wire === 'none' ? 'force-only' : 'wire',
    trace: [force, ...ties.trace, ...(alone ? [alone] : [])],
    source: SOURCE,
    defaults: input.defaults,
    notes: [...ties.notes, ...(bends ? ['The bar does not carry the force by bending alone; the ties have to hold it at its middle.'] : [])],
    findings: [],
  });
};
