import { meant } from '../quantity/rounding.js';
import { EVAPORATION_CHART as CHART } from '../engineering/aci-305r/evaporation-limits.js';
import { evaporationRate } from '../engineering/uno-1998/evaporation-rate.js';
import { evaporationRateSi } from '../engineering/uno-1998/evaporation-rate-si.js';
import { inSpan } from '../quantity/span.js';
import { inUnit } from '../quantity/quantity.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { workedStep } from './worked-step.js';
import type { LeftLimit } from './outside-answer.js';
import type { TraceStep } from '../evidence/trace.js';
import type { UnitSystem } from './written-system.js';

/** Air and concrete [°C], humidity [1], wind [m/s]. */
export interface Weather {
  readonly air: number;
  readonly concrete: number;
  readonly humidity: number;
  readonly wind: number;
}

const CHART_SOURCE = 'aci-305r Fig. 2.1.5, from memory';

/** Whether a rate has reached a threshold, both in the same unit: what is left of a conversion does not count. */
export const needsProtection = (rate: number, threshold: number): boolean => rate >= threshold * (1 - 1e-9);

/** Which limits of the chart the weather leaves; empty within it. */
export function chartLimitsLeft({ air, concrete, wind }: Weather): readonly LeftLimit[] {
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

/** Rate of evaporation, worked in that printing [lb/ft2/h or kg/m2/h]; negative where water condenses. */
export function evaporationStep({ air, concrete, humidity, wind }: Weather, system: UnitSystem): TraceStep {
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
