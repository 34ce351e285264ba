import { failure, success } from '../evidence/result.js';
import { LENGTH_FORMS } from '../quantity/length-forms.js';
import { leaningProjection } from '../engineering/statics/leaning-projection.js';
import { NM_PER_FOOT, NM_PER_METRE, type Nm } from '../quantity/length.js';
import { plainText } from '../quantity/text.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { upliftPerLength } from '../engineering/statics/uplift-per-length.js';
import { coherentUnits } from './both-units.js';
import { CalculatorInput } from './calculator-input.js';
import { readTieWire, TIE_WIRE_FIELDS, tieWireAnswer } from './tie-wire-input.js';
import { STATICS_SPANS as SPANS } from './statics-spans.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'statics';
const ANGLE = { above: 0, to: 89, says: 'more than 0 and at most 89 degrees from the vertical' };

/**
 * Uplift of a form whose face leans over the concrete: taper top, ledge, gable cap.
 *
 * Reads `pressure` and `lean`: how far the face leans out (`4 in`), or its angle from the vertical (`45 deg`) with the `height` of the face;
 * `length` of form (one foot or metre where left out); `wireGauge`, `strands`, `safetyFactor` of the ties. Answers `forcePerLength`, `force` of
 * that length, `capacity` of one tie, the number of `ties`.
 */
export const upliftCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['pressure', 'lean', 'height', 'length', ...TIE_WIRE_FIELDS]);
  const pressureKpa = input.quantity('pressure', 'pressure', '600 psf', SPANS.pressure);
  const units = coherentUnits(input, { pressure: 'pressure' });
  const lean = readLean(input, fields['lean']);
  const one = units.system === 'si' ? { nm: NM_PER_METRE, words: '1 m' } : { nm: NM_PER_FOOT, words: '1 ft' };
  const length = input.orElse('length', () => input.length('length', '4 ft', SPANS.length), one.nm, `length: ${one.words}`);
  const wire = readTieWire(input, fields);
  if (pressureKpa === undefined || lean === undefined || length === undefined || wire === undefined) return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const p = units.of('pressure', pressureKpa);
  const projection = projectionStep(units.length, units.ofLength(lean.kind === 'out' ? lean.out : lean.height), lean);
  const o = projection.value;
  const perLength = workedStep('uplift', 'U = p · o', `${n(p)} · ${n(o)}`, upliftPerLength(p, o), units.unit('force per length'), SOURCE);
  const l = units.ofLength(length);
  const force = workedStep('uplift of the length', 'U · length', `${n(perLength.value)} · ${n(l)}`, perLength.value * l, units.unit('force'), SOURCE);
  const ties = tieWireAnswer(units, wire, force.value);
  return success({
    result: {
      forcePerLength: units.show('force per length', perLength.value),
      force: units.show('force', force.value),
      ...ties.result,
    },
    governs: wire === 'none' ? 'force-only' : 'wire',
    trace: [projection, perLength, force, ...ties.trace],
    source: SOURCE,
    defaults: input.defaults,
    notes: [...ties.notes, 'The weight of the form and of what lies on it is not taken off.'],
    findings: [],
  });
};

type Lean = { readonly kind: 'out'; readonly out: Nm } | { readonly kind: 'angle'; readonly angle: number; readonly height: Nm };

function readLean(input: CalculatorInput, written: unknown): Lean | undefined {
  const isLength = typeof written === 'string' && LENGTH_FORMS.some(({ name, pattern }) => name !== 'bare' && pattern.test(plainText(written)));
  if (isLength || typeof written !== 'string' || !/°|deg/i.test(written)) {
    if (input.has('height')) input.refuse('height', 'nothing, where lean is a length: it belongs to an angle');
    const out = input.length('lean', '4 in, or an angle from the vertical such as 45 deg', SPANS.lean);
    return out === undefined ? undefined : { kind: 'out', out };
  }
  const angle = input.quantity('lean', 'angle', '45 deg', ANGLE);
  const height = input.length('height', '16 in, the height of the leaning face', SPANS.height);
  return angle === undefined || height === undefined ? undefined : { kind: 'angle', angle, height };
}

function projectionStep(unit: string, length: number, lean: Lean) {
  if (lean.kind === 'out') return workedStep('horizontal projection', 'o', n(length), length, unit, 'as asked');
  const substituted = `${n(length)} · tan ${n(lean.angle)}°`;
  return workedStep('horizontal projection', 'o = h · tan α', substituted, leaningProjection(length, lean.angle), unit, SOURCE);
}
