import type { Finding } from '../evidence/finding.js';
import { inSi, inUsCustomary, type StandingConcrete } from './fresh-concrete-input.js';
import { liquidHead } from '../engineering/aci-347-04/liquid-head.js';
import { liquidHeadSi } from '../engineering/aci-347-04/liquid-head-si.js';
import { kgPerM3ToPcf } from '../quantity/us-customary.js';
import { outsideMethodAnswer } from './outside-method-answer.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { wallFormPressure, wallFormPressureSi } from '../engineering/aci-347-04/wall-form-pressure.js';
import { workedStep } from './worked-step.js';
import type { CoherentUnits } from './both-units.js';
import type { TraceStep } from '../evidence/trace.js';

/** Pressure of a pour in lifts, in the units of the question; null where nothing says, or the method gives none. */
export interface LiftPressure {
  readonly least: number;
  readonly pressure: number | null;
  readonly governs: string;
  readonly trace: readonly TraceStep[];
  readonly notes: readonly string[];
  readonly findings: readonly Finding[];
}

const SOURCE = 'aci-347-04 §2.2.2';

/**
 * Pressure by ACI 347-04 at the average rate of rise, and never below unit weight × lift: a lift is placed at once, whatever the average.
 *
 * @param kgPerM3  unit weight
 * @param lift     height of a lift, in the units' length
 * @param rise     average rate of rise, in the units' rate
 * @param standing the concrete in the form; null where it is not stated
 */
export function liftPressure(units: CoherentUnits, kgPerM3: number, lift: number, rise: number, standing: StandingConcrete | null): LiftPressure {
  const least = leastStep(units, kgPerM3, lift);
  if (standing === null) return { least: least.value, pressure: null, governs: 'lift', trace: [least], notes: [], findings: [] };
  const answer = units.system === 'si' ? bySi(standing, rise) : byUsCustomary(standing, rise);
  if (answer.kind === 'outside-method') {
    const { findings } = outsideMethodAnswer(answer, SOURCE, []);
    return { least: least.value, pressure: null, governs: 'outside-method', trace: [least], notes: [], findings };
  }
  const pressure = Math.max(answer.pressure, least.value);
  const bounded = workedStep('pressure, not under a lift of liquid', 'max( p, w · d )', `max( ${n(answer.pressure)}, ${n(least.value)} )`, pressure, units.unit('pressure'), 'statics');
  const governs = least.value > answer.pressure ? 'lift-height' : answer.governs;
  return { least: least.value, pressure, governs, trace: [...answer.trace, least, bounded], notes: answer.notes, findings: [] };
}

function bySi(standing: StandingConcrete, riseMPerH: number) {
  const answer = wallFormPressureSi({ ...inSi(standing), riseMPerH });
  return answer.kind === 'outside-method' ? answer : { ...answer, pressure: answer.pressureKpa };
}

function byUsCustomary(standing: StandingConcrete, riseFtPerH: number) {
  const answer = wallFormPressure({ ...inUsCustomary(standing), riseFtPerH });
  return answer.kind === 'outside-method' ? answer : { ...answer, pressure: answer.pressurePsf };
}

function leastStep(units: CoherentUnits, kgPerM3: number, lift: number): TraceStep {
  const name = 'head of one lift';
  if (units.system === 'si') return workedStep(name, 'ρ · g · d', `${n(kgPerM3)} · g · ${n(lift)}`, liquidHeadSi(kgPerM3, lift), 'kPa', SOURCE);
  const pcf = kgPerM3ToPcf(kgPerM3);
  return workedStep(name, 'w · d', `${n(pcf)} · ${n(lift)}`, liquidHead(pcf, lift), 'psf', SOURCE);
}
