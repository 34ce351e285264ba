import { meant } from '../quantity/rounding.js';
import { inUnit } from '../quantity/quantity.js';
import { liftVolume } from '../engineering/en5151-forms/lift-volume.js';
import { rateOfRise } from '../engineering/en5151-forms/rate-of-rise.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { truckLoads } from '../engineering/en5151-forms/truck-loads.js';
import { workedStep } from './worked-step.js';
import type { CoherentUnits } from './both-units.js';
import type { TraceStep } from '../evidence/trace.js';

/** Exact: three feet cubed. */
const FT3_PER_YD3 = 27;

/** What is delivered in an hour: cubic feet go with areas in square feet, cubic yards are what is shown; in SI both are cubic metres. */
export interface Supply {
  readonly cubicPerH: number;
  readonly shownPerH: number;
}

/** Cubic feet as the cubic yards that are shown; cubic metres as they are. */
export const shownVolume = (units: CoherentUnits, cubic: number): number => (units.system === 'si' ? cubic : cubic / FT3_PER_YD3);

/** A pump's output [m3/h] in the units of the working. */
export function pumpIn(units: CoherentUnits, m3PerH: number): Supply {
  const cubicPerH = meant(inUnit('volume', units.system === 'si' ? 'm3' : 'ft3', m3PerH));
  return { cubicPerH, shownPerH: shownVolume(units, cubicPerH) };
}

/** Rate of rise at which a supply fills a plan area evenly. */
export const riseStep = (units: CoherentUnits, cubicPerH: number, area: number): TraceStep =>
  workedStep('rate of rise', 'R = Q / A', `${n(cubicPerH)} / ${n(area)}`, rateOfRise(cubicPerH, area), units.unit('rise'), 'en5151-forms p. 7');

/** Concrete of a lift, in the volume that is shown. */
export function liftVolumeStep(units: CoherentUnits, area: number, lift: number): TraceStep {
  const toShown = units.system === 'si' ? '' : ` / ${FT3_PER_YD3}`;
  const value = shownVolume(units, liftVolume(area, lift));
  return workedStep('concrete of a lift', `V = A · d${toShown}`, `${n(area)} · ${n(lift)}${toShown}`, value, units.unit('volume'), 'geometry');
}

/** How long a supply takes for a volume, both as shown [h]. */
export const timeStep = (name: string, equation: string, volume: number, perH: number): TraceStep =>
  workedStep(name, equation, `${n(volume)} / ${n(perH)}`, volume / perH, 'h', 'geometry');

/** Whole trucks for a volume, both as shown. */
export const trucksStep = (name: string, volume: number, truck: number): TraceStep =>
  workedStep(name, '⌈ V / truck ⌉', `${n(volume)} / ${n(truck)}`, truckLoads(volume, truck), 'trucks', 'geometry');
