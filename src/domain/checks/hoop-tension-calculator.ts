import { faceHoopTension } from '../engineering/statics/face-hoop-tension.js';
import { failure, success } from '../evidence/result.js';
import { hoopTension } from '../engineering/statics/hoop-tension.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { coherentUnits } from './both-units.js';
import { CalculatorInput } from './calculator-input.js';
import { STATICS_SPANS as SPANS } from './statics-spans.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'statics';

/**
 * Tension along the forms of a curved wall.
 *
 * Reads `pressure` and `core`; `radius` of the outer face for the tension of that face alone, were it held by no web; `lift` for totals.
 * Answers `tensionPerHeight` (what the band round the curve holds while the webs hold the faces together), `faceTensionPerHeight`, and
 * with a lift `tension`.
 */
export const hoopTensionCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['pressure', 'core', 'radius', 'lift']);
  const pressureKpa = input.quantity('pressure', 'pressure', '600 psf', SPANS.pressure);
  const core = input.length('core', '6 in', SPANS.core);
  const noFace = 'radius: not stated, no tension of the face alone';
  const radius = input.orElse<number | null>('radius', () => input.length('radius', '10 ft', SPANS.radius), null, noFace);
  const noLift = 'lift: not stated, tension per unit height only';
  const lift = input.orElse<number | null>('lift', () => input.length('lift', '4 ft', SPANS.lift), null, noLift);
  if (typeof radius === 'number' && core !== undefined && radius <= core)
    input.refuse('radius', 'the radius of the outer face, more than the core');
  if (pressureKpa === undefined || core === undefined || radius === undefined || lift === undefined) return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const units = coherentUnits(input, { pressure: 'pressure', core: 'length', radius: 'length', lift: 'length' });
  const p = units.of('pressure', pressureKpa);
  const t = units.ofLength(core);
  const perHeight = units.unit('force per length');
  const band = workedStep('tension of the band', 'T = p · t', `${n(p)} · ${n(t)}`, hoopTension(p, t), perHeight, SOURCE);
  const R = radius === null ? null : units.ofLength(radius);
  const face =
    R === null
      ? null
      : workedStep('tension of the face without webs', 'T = p · R', `${n(p)} · ${n(R)}`, faceHoopTension(p, R), perHeight, SOURCE);
  const l = lift === null ? null : units.ofLength(lift);
  const total =
    l === null
      ? null
      : workedStep('tension of the lift', 'tensionPerHeight · lift', `${n(band.value)} · ${n(l)}`, band.value * l, units.unit('force'), SOURCE);
  return success({
    result: {
      tensionPerHeight: units.show('force per length', band.value),
      ...(face && { faceTensionPerHeight: units.show('force per length', face.value) }),
      ...(total && { tension: units.show('force', total.value) }),
    },
    governs: 'webs-hold',
    trace: [band, ...(face ? [face] : []), ...(total ? [total] : [])],
    source: SOURCE,
    defaults: input.defaults,
    notes: ['The webs between the faces have to hold the full pressure on the inner face; a face without webs carries the larger tension, p · R.'],
    findings: [],
  });
};
