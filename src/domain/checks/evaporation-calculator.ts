import { EVAPORATION_THRESHOLD } from '../engineering/aci-305r/evaporation-limits.js';
import { failure, success } from '../evidence/result.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { CalculatorInput } from './calculator-input.js';
import { coherentUnits, inBoth } from './both-units.js';
import { chartLimitsLeft, evaporationStep, needsProtection } from './evaporation-step.js';
import { outsideAnswer } from './outside-answer.js';
import type { Calculator } from './calculator-answer.js';
import type { UnitSystem } from './written-system.js';

const SOURCE = 'uno-1998';

/**
 * Rate at which water evaporates from fresh concrete, and the rate from which on it has to be protected.
 *
 * Reads `air`, `concrete`, `humidity`, `wind`, and `lowBleed` for mixes that bleed little. Answers `rate`, `threshold`, `precautions`
 * (`needed` or `not needed`). Worked in SI where temperatures and wind are all written in SI.
 */
export const evaporationCalculator: Calculator = (fields) => {
  const { humidity: share } = fields;
  // A share of one needs no unit, so it may be a number, as in a schedule.
  const written = typeof share === 'number' ? { ...fields, humidity: String(share) } : fields;
  const input = new CalculatorInput(written, ['air', 'concrete', 'humidity', 'wind', 'lowBleed']);
  const air = input.quantity('air', 'temperature', '80 F', PLAUSIBLE.air);
  const concrete = input.quantity('concrete', 'temperature', '87 F', PLAUSIBLE.concrete);
  const humidity = input.quantity('humidity', 'fraction', '50 %', PLAUSIBLE.humidity);
  const wind = input.quantity('wind', 'speed', '12 mph', PLAUSIBLE.windAtPour);
  const lowBleed = input.orElse('lowBleed', () => input.flag('lowBleed'), false, 'lowBleed: no');
  if (air === undefined || concrete === undefined || humidity === undefined || wind === undefined || lowBleed === undefined)
    return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const weather = { air, concrete, humidity, wind };
  const limits = chartLimitsLeft(weather);
  if (limits.length > 0) return success(outsideAnswer('Uno 1998', limits, SOURCE, input.defaults));
  const { system } = coherentUnits(input, { air: 'temperature', concrete: 'temperature', wind: 'speed' });
  const step = evaporationStep(weather, system);
  const condenses = step.value < 0;
  const rate = condenses ? 0 : step.value;
  const threshold = EVAPORATION_THRESHOLD[system][lowBleed ? 'lowBleed' : 'plain'];
  const needed = needsProtection(rate, threshold);
  return success({
    result: {
      rate: inBoth('evaporation rate', rate, system),
      threshold: inBoth('evaporation rate', threshold, system),
      precautions: needed ? 'needed' : 'not needed',
    },
    governs: condenses ? 'condensation' : needed ? 'over-threshold' : 'under-threshold',
    trace: [step],
    source: SOURCE,
    defaults: input.defaults,
    notes: notesOf(condenses, system),
    findings: [],
  });
};

function notesOf(condenses: boolean, system: UnitSystem): readonly string[] {
  return [
    ...(condenses ? ['Water condenses on the concrete; nothing evaporates.'] : []),
    system === 'si'
      ? 'SI equation, because air, concrete and wind are all in SI units; it lies up to about 5 % under the US customary one.'
      : 'US customary equation, because air, concrete or wind is in US customary units; the SI one lies up to about 5 % under it.',
    'An estimate: within 40 % either way. The wind is that half a metre (20 in) above the surface.',
  ];
}
