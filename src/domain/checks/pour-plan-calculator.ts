import { meant } from '../quantity/rounding.js';
import { failure, success } from '../evidence/result.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { CalculatorInput } from './calculator-input.js';
import { coherentUnits, type CoherentUnits } from './both-units.js';
import { liftVolumeStep, pumpIn, riseStep, timeStep, trucksStep } from './lift-steps.js';
import { liftPressure } from './pour-plan-pressure.js';
import { POUR_PLAN_FIELDS, readPourPlan, type PourPlanQuestion } from './pour-plan-input.js';
import type { Calculator, InBothUnits } from './calculator-answer.js';
import type { Dimension } from '../quantity/unit.js';
import type { TraceStep } from '../evidence/trace.js';

const SOURCE = 'en5151-forms p. 7, aci-347-04 §2.2.2';
const MEASURES: Readonly<Record<string, Dimension | 'length'>> = {
  planArea: 'area', length: 'length', core: 'length', lift: 'length', pump: 'volume rate', truck: 'volume', height: 'length', concrete: 'temperature',
};

/**
 * A storey's pour lift by lift: concrete, time and trucks of one lift, the rate of rise, and the pressure it makes.
 *
 * Reads `planArea` (or `length` and `core`), `lift`, `pump`, `truck`; `dischargeLimit`, or an `edition` of the standard that sets one; and, for the
 * pressure, `height`, `concrete` and the mix as form-pressure does. Answers `volume`, `time`, `trucks` per lift, `rise`, `truckTime`, `haulTime`,
 * `leastPressure` (unit weight × lift) and `pressure`, never below it.
 */
export const pourPlanCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, POUR_PLAN_FIELDS);
  const units = coherentUnits(input, MEASURES);
  const plan = readPourPlan(input, units.system);
  if (plan === undefined || input.errors.length > 0) return failure(input.errors);
  const lift = liftWork(units, plan);
  const pressed = liftPressure(units, plan.kgPerM3, units.ofLength(plan.lift), lift.rise.value, plan.standing);
  const discharge = dischargeWork(lift.truckTime.value, plan.limit);
  return success({
    result: {
      volume: units.show('volume', lift.volume.value),
      time: hours(lift.time.value),
      trucks: lift.trucks.value,
      rise: units.show('rise', lift.rise.value),
      truckTime: hours(lift.truckTime.value),
      ...(discharge.haul !== null && { haulTime: hours(discharge.haul) }),
      leastPressure: units.show('pressure', pressed.least),
      ...(pressed.pressure !== null && { pressure: units.show('pressure', pressed.pressure) }),
    },
    governs: discharge.over ? 'discharge-limit' : pressed.governs,
    trace: [lift.rise, lift.volume, lift.time, lift.trucks, lift.truckTime, ...pressed.trace],
    source: SOURCE,
    defaults: input.defaults,
    notes: [...pressed.notes, ...discharge.notes, 'No time is counted for moving the hose, waiting for trucks or vibrating.'],
    findings: pressed.findings,
  });
};

/** Time is counted in hours in both systems. */
const hours = (value: number): InBothUnits => {
  const shown = { value: meant(value), unit: 'h' };
  return { us: shown, si: shown };
};

function liftWork(units: CoherentUnits, plan: PourPlanQuestion) {
  const pump = pumpIn(units, plan.pumpM3PerH);
  const [area, truck] = [units.of('area', plan.planM2), units.of('volume', plan.truckM3)];
  const volume = liftVolumeStep(units, area, units.ofLength(plan.lift));
  return {
    rise: riseStep(units, pump.cubicPerH, area),
    volume,
    time: timeStep('time of a lift', 'V / Q', volume.value, pump.shownPerH),
    trucks: trucksStep('trucks of a lift', volume.value, truck),
    truckTime: timeStep('time to empty a truck', 'truck / Q', truck, pump.shownPerH),
  } satisfies Record<string, TraceStep>;
}

function dischargeWork(truckTime: number, limit: PourPlanQuestion['limit']) {
  if (limit === null) {
    const note = 'The edition sets no time for discharge: the purchaser states one, or the producer prints one on the ticket.';
    return { haul: null, over: false, notes: [note] };
  }
  const by = limit.by === 'purchaser' ? 'the purchaser' : `${limit.by} §10.7, or 300 turns of the drum, whichever comes first`;
  const over = truckTime > limit.hours * (1 + 1e-9);
  const left = limit.hours - truckTime;
  const notes = over
    ? [`Emptying one truck takes longer than the ${n(limit.hours)} h of ${by}: a faster pump or smaller loads.`]
    : [`Discharge within ${n(limit.hours)} h by ${by}: haulTime is what is left for the haul and for waiting. Hot weather shortens it.`];
  return { haul: over ? null : left, over, notes };
}
