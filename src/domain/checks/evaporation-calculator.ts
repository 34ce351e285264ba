import { EVAPORATION_CHART as CHART, EVAPORATION_THRESHOLD } from '../engineering/aci-305r/evaporation-limits.js';
import { evaporationRate } from '../engineering/uno-1998/evaporation-rate.js';
import { evaporationRateSi } from '../engineering/uno-1998/evaporation-rate-si.js';
import { failure, success } from '../evidence/result.js';
import { inSpan } from '../quantity/span.js';
import { inUnit } from '../quantity/quantity.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { CalculatorInput } from './calculator-input.js';
import { coherentUnits, inBoth } from './both-units.js';
import { outsideAnswer, type LeftLimit } from './outside-answer.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';
import type { TraceStep } from '../evidence/trace.js';
import type { UnitSystem } from './written-system.js';

/** Air and concrete [°C], humidity [1], wind [m/s]. */
interface Weather {
  readonly air: number;
  readonly concrete: number;
  readonly humidity: number;
  readonly wind: number;
}

const SOURCE = 'uno-1998';
const CHART_SOURCE = 'aci-305r Fig. 2.1.5, from memory';

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
  const limits = limitsLeft(weather);
  if (limits.length > 0) return success(outsideAnswer('Uno 1998', limits, SOURCE, input.defaults));
  const { system } = coherentUnits(input, { air: 'temperature', concrete: 'temperature', wind: 'speed' });
  const step = rateStep(weather, system);
  const condenses = step.value < 0;
  const rate = condenses ? 0 : step.value;
  const threshold = EVAPORATION_THRESHOLD[system][lowBleed ? 'lowBleed' : 'plain'];
  const needed = rate >= threshold * (1 - 1e-9);
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

function limitsLeft({ air, concrete, wind }: Weather): readonly LeftLimit[] {
  const fahrenheit = (c: number): number => Number(inUnit('temperature', '°F', c).toFixed(6));
  const span = { from: CHART.coldestC, to: CHART.warmestC, says: '' };
  const temperatures = ([['airF', air], ['concreteF', concrete]] as const).flatMap(([key, value]) => {
    if (inSpan(value, span)) return [];
    const [limit, side] = value < span.from ? [span.from, 'below'] : [span.to, 'above'];
    return [{ numbers: { [key]: fahrenheit(value), limitF: fahrenheit(Number(limit)), side }, source: CHART_SOURCE }];
  });
  if (inSpan(wind, { to: CHART.strongestWindMps, says: '' })) return temperatures;
  return [...temperatures, { numbers: { windMps: wind, limitMps: CHART.strongestWindMps, side: 'above' }, source: CHART_SOURCE }];
}

function rateStep({ air, concrete, humidity, wind }: Weather, system: UnitSystem): TraceStep {
  const meant = (value: number): number => Number(value.toPrecision(12));
  const name = 'rate of evaporation';
  if (system === 'si') {
    const V = meant(inUnit('speed', 'km/h', wind));
    const substituted = `5 · ( ( ${n(concrete)} + 18 )^2.5 − ${n(humidity)} · ( ${n(air)} + 18 )^2.5 ) · ( ${n(V)} + 4 ) · 10⁻⁶`;
    const value = evaporationRateSi(concrete, air, humidity, V);
    return workedStep(name, 'E = 5 · ( ( Tc + 18 )^2.5 − r · ( Ta + 18 )^2.5 ) · ( V + 4 ) · 10⁻⁶', substituted, value, 'kg/m2/h', 'uno-1998 SI');
  }
  const [Tc, Ta] = [concrete, air].map((c) => Number(inUnit('temperature', '°F', c).toFixed(9))) as [number, number];
  const V = meant(inUnit('speed', 'mph', wind));
  const substituted = `( ${n(Tc)}^2.5 − ${n(humidity)} · ${n(Ta)}^2.5 ) · ( 1 + 0.4 · ${n(V)} ) · 10⁻⁶`;
  const value = evaporationRate(Tc, Ta, humidity, V);
  return workedStep(name, 'E = ( Tc^2.5 − r · Ta^2.5 ) · ( 1 + 0.4 · V ) · 10⁻⁶', substituted, value, 'lb/ft2/h', 'uno-1998 US customary, from memory');
}

function notesOf(condenses: boolean, system: UnitSystem): readonly string[] {
  return [
    ...(condenses ? ['Water condenses on the concrete; nothing evaporates.'] : []),
    system === 'si'
      ? 'SI equation, because air, concrete and wind are all in SI units; it lies up to about 5 % under the US customary one.'
      : 'US customary equation, because air, concrete or wind is in US customary units; the SI one lies up to about 5 % under it.',
    'An estimate: within 40 % either way. The wind is that half a metre (20 in) above the surface.',
  ];
}
