import { bendThrust } from '../engineering/statics/bend-thrust.js';
import { twoCoreThrust } from '../engineering/statics/two-core-thrust.js';
import { failure, success } from '../evidence/result.js';
import { readTurn } from '../quantity/turn-text.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { coherentUnits, type CoherentUnits } from './both-units.js';
import { CalculatorInput } from './calculator-input.js';
import { STATICS_SPANS as SPANS } from './statics-spans.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';
import type { TraceStep } from '../evidence/trace.js';

const SOURCE = 'statics';

/**
 * Thrust on the forms of a corner, outward along the bisector where one core goes round.
 *
 * Reads `pressure`, `core` and `turn` (its hand does not matter); `otherCore` where the core changes at the corner; `lift` for the thrust of
 * a whole lift at an even pressure. Answers `thrustPerHeight` and, with a lift, `thrust`.
 */
export const bendThrustCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['pressure', 'core', 'otherCore', 'turn', 'lift']);
  const pressureKpa = input.quantity('pressure', 'pressure', '600 psf', SPANS.pressure);
  const core = input.length('core', '6 in', SPANS.core);
  const otherCore = input.has('otherCore') ? input.length('otherCore', '8 in', SPANS.core) : core;
  const turn = readTurnField(input, fields['turn']);
  const none = 'lift: not stated, thrust per unit height only';
  const lift = input.orElse<number | null>('lift', () => input.length('lift', '4 ft', SPANS.lift), null, none);
  if (pressureKpa === undefined || core === undefined || otherCore === undefined || turn === undefined || lift === undefined)
    return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const units = coherentUnits(input, { pressure: 'pressure', core: 'length', otherCore: 'length', lift: 'length' });
  const p = units.of('pressure', pressureKpa);
  const thrust = thrustStep(units, p, units.ofLength(core), units.ofLength(otherCore), Math.abs(turn));
  const total = lift === null ? null : liftStep(units, thrust.value, units.ofLength(lift));
  return success({
    result: {
      thrustPerHeight: units.show('force per length', thrust.value),
      ...(total && { thrust: units.show('force', total.value) }),
    },
    governs: otherCore === core ? 'one-core' : 'two-cores',
    trace: total ? [thrust, total] : [thrust],
    source: SOURCE,
    defaults: input.defaults,
    notes: total ? ['The pressure is taken as even over the lift: with the pressure at its foot that is on the safe side.'] : [],
    findings: [],
  });
};

function readTurnField(input: CalculatorInput, written: unknown): number | undefined {
  const read = typeof written === 'string' || typeof written === 'number' ? readTurn(written) : null;
  if (read?.ok) return read.value;
  return input.refuse('turn', read ? read.error.fix : 'a turn in degrees such as 90, -45 or 67.5');
}

function thrustStep(units: CoherentUnits, p: number, t1: number, t2: number, turn: number): TraceStep {
  const unit = units.unit('force per length');
  if (t1 === t2) {
    const substituted = `2 · ${n(p)} · ${n(t1)} · sin( ${n(turn)}° / 2 )`;
    return workedStep('bend thrust', 'T = 2 · p · t · sin( θ / 2 )', substituted, bendThrust(p, t1, turn), unit, SOURCE);
  }
  const equation = 'T = p · √( t1² + t2² − 2 · t1 · t2 · cos θ )';
  const substituted = `${n(p)} · √( ${n(t1)}² + ${n(t2)}² − 2 · ${n(t1)} · ${n(t2)} · cos ${n(turn)}° )`;
  return workedStep('bend thrust of two cores', equation, substituted, twoCoreThrust(p, t1, t2, turn), unit, SOURCE);
}

function liftStep(units: CoherentUnits, perHeight: number, lift: number): TraceStep {
  const value = perHeight * lift;
  return workedStep('thrust of the lift', 'thrustPerHeight · lift', `${n(perHeight)} · ${n(lift)}`, value, units.unit('force'), SOURCE);
}
