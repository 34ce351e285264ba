import { inUnit } from '../quantity/quantity.js';
import { liftVolume } from '../engineering/en5151-forms/lift-volume.js';
import { metresPerHourToFeetPerHour } from '../quantity/us-customary.js';
import { pumpIn, riseStep, shownVolume, timeStep } from './lift-steps.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { workedStep } from './worked-step.js';
import type { CoherentUnits } from './both-units.js';
import type { Pour } from '../schedule/schedule.js';
import type { TraceStep } from '../evidence/trace.js';

/** Concrete of a storey in feet and yards: plan area [ft²], concrete of all and of one lift [yd³]. */
export interface Placed {
  readonly areaFt2: number;
  readonly volumeYd3: number;
  readonly liftYd3: number;
}

/** One pace at which a storey may be filled, and what it takes. */
export interface PourPace {
  readonly by: 'pump' | 'stated rise';
  readonly riseFtPerH: number;
  readonly supplyYd3PerH: number;
  readonly liftTimeH: number;
  readonly pourTimeH: number;
  /** Null where the load of a truck is not stated. */
  readonly truckTimeH: number | null;
  readonly trace: readonly TraceStep[];
}

/**
 * The paces a pour states: the full output of its pump, and its rate of rise; the slower one is the one it is poured at.
 *
 * @returns as many as are stated, the pump's first
 */
export function pourPaces(units: CoherentUnits, placed: Placed, pour: Pour | null): readonly PourPace[] {
  const truck = pour?.truckM3 === undefined ? null : units.of('volume', pour.truckM3);
  const pace = (by: PourPace['by'], first: TraceStep, riseFtPerH: number, supplyYd3PerH: number): PourPace => {
    const at = by === 'pump' ? '' : ' at the stated rise';
    const lift = timeStep(`time of a lift${at}`, 'V / Q', placed.liftYd3, supplyYd3PerH);
    const whole = timeStep(`time of the pour${at}`, 'V / Q', placed.volumeYd3, supplyYd3PerH);
    const empty = truck === null ? null : timeStep(`time to empty a truck${at}`, 'truck / Q', truck, supplyYd3PerH);
    const trace = [first, lift, whole, ...(empty ? [empty] : [])];
    return { by, riseFtPerH, supplyYd3PerH, liftTimeH: lift.value, pourTimeH: whole.value, truckTimeH: empty?.value ?? null, trace };
  };
  const paces: PourPace[] = [];
  if (pour?.pumpM3PerH !== undefined) {
    const pump = pumpIn(units, pour.pumpM3PerH);
    const rise = riseStep(units, pump.cubicPerH, placed.areaFt2);
    paces.push(pace('pump', rise, rise.value, pump.shownPerH));
  }
  if (pour?.riseMPerH !== undefined) {
    const riseFtPerH = metresPerHourToFeetPerHour(pour.riseMPerH);
    // An hour's rise is a lift of that height.
    const perH = shownVolume(units, liftVolume(placed.areaFt2, riseFtPerH));
    const supply = workedStep('supply for the stated rise', 'Q = R · A / 27', `${n(riseFtPerH)} · ${n(placed.areaFt2)} / 27`, perH, 'yd3/h', 'en5151-forms p. 7');
    paces.push(pace('stated rise', supply, riseFtPerH, perH));
  }
  return paces;
}

/** The one that takes longer; null where the pour states none. */
export const slowerPace = (paces: readonly PourPace[]): PourPace | null =>
  paces.reduce<PourPace | null>((slow, pace) => (slow === null || pace.riseFtPerH < slow.riseFtPerH ? pace : slow), null);

/** A difference this small is left of a conversion. */
const SAME = 1 + 1e-9;

/** Which of a pump and a stated rise fills faster; undefined where not both are stated. */
export function fasterOf(paces: readonly PourPace[]): PourPace['by'] | 'neither' | undefined {
  const [pump, stated] = paces;
  if (!pump || !stated) return undefined;
  if (pump.riseFtPerH > stated.riseFtPerH * SAME) return 'pump';
  return stated.riseFtPerH > pump.riseFtPerH * SAME ? 'stated rise' : 'neither';
}

/** An hourly volume in words: `16.5 yd3/h (12.6 m3/h)`. */
export function supplyWords(yd3PerH: number): string {
  const digits = (value: number): string => n(Number(value.toPrecision(3)));
  return `${digits(yd3PerH)} yd3/h (${digits(yd3PerH / inUnit('volume', 'yd3', 1))} m3/h)`;
}
