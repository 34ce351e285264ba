import { EQUATION_B_RISE_FT_PER_H, SLUMP_LIMIT_IN } from '../engineering/aci-347-04/limits.js';
import { finding } from '../evidence/finding.js';
import { liquidHead } from '../engineering/aci-347-04/liquid-head.js';
import { plannedPour } from './planned-pour.js';
import { shownNumber } from '../evidence/shown-number.js';
import { toFeet } from '../quantity/length.js';
import { wallFormPressure } from '../engineering/aci-347-04/wall-form-pressure.js';
import type { Core, Parameters } from '../range/range.js';
import type { Finding } from '../evidence/finding.js';
import type { Governs } from '../engineering/aci-347-04/wall-form-pressure.js';
import type { Nm } from '../quantity/length.js';
import type { FreshConcreteWall, OutsideLimit } from '../engineering/aci-347-04/fresh-concrete-wall.js';
import type { Pour } from '../schedule/schedule.js';
import type { TraceStep } from '../evidence/trace.js';

/** The one pressure of a storey and core that rules and checks share. */
export interface DesignPressure {
  readonly psf: number;
  /** `pour` from the pour as planned; `rated` is what the form may carry, where the pour says too little or lies outside the method. */
  readonly basis: 'pour' | 'rated';
  readonly governs: Governs | 'lift-height' | 'rated';
  readonly trace: readonly TraceStep[];
  /** Plain sentences to print beside the number. */
  readonly notes: readonly string[];
  /** What the pour left out and was assumed. */
  readonly defaults: readonly string[];
  /** Codes without a place: the check that reports them adds the storey. */
  readonly findings: readonly Finding[];
}

/**
 * Pressure for which a storey's walls on one core are reinforced and checked.
 *
 * From the pour by ACI 347-04, the walls taken as one placement of their full height, and never below unit weight × lift height:
 * a lift is placed at once, whatever the average rate. Without rate of rise or concrete temperature, and outside the method, it is
 * the core's rated pressure: the most the reinforcement may ever have to hold if the form is not to be overloaded. Always by the US
 * customary set: a schedule holds its pour as numbers, whatever they were typed in, so feet and metres give one answer.
 *
 * @param pour       the pour as planned, null where the schedule states none
 * @param core       the walls' core, with its rated pressure [psf]
 * @param wallHeight height of the fresh concrete: `pourHeight` of the storey and core [nm]
 * @param parameters the range's parameters; `liftHeight` is read
 * @returns          pressure [psf], where it comes from, the trace, and findings `pour-not-stated`, `outside-method`
 *                   or `full-liquid-head`
 */
export function designPressure(pour: Pour | null, core: Core, wallHeight: Nm, parameters: Parameters): DesignPressure {
  const planned = plannedPour(pour);
  if (planned.kind === 'not-stated') {
    const numbers = { missing: planned.missing.join(', ') };
    return rated(core, finding('pour-not-stated', { numbers, source: 'aci-347-04 §2.2.2' }));
  }
  if (planned.kind === 'unknown-cement') {
    const numbers = { method: 'ACI 347-04', core: core.code, cement: planned.cement };
    return rated(core, finding('outside-method', { numbers, source: 'aci-347-04 Table 2.2' }));
  }
  const heightFt = toFeet(wallHeight);
  const pressure = wallFormPressure({ ...planned.pour, heightFt });
  if (pressure.kind === 'outside-method') return rated(core, ...pressure.outside.map((limit) => outsideMethod(limit, core)));

  const lift = liftStep(planned.pour.unitWeightPcf, Math.min(toFeet(parameters.liftHeight), heightFt));
  const byLift = lift.value > pressure.pressurePsf;
  return {
    psf: byLift ? lift.value : pressure.pressurePsf,
    basis: 'pour',
    governs: byLift ? 'lift-height' : pressure.governs,
    trace: [...pressure.trace, lift],
    notes: pressure.notes,
    defaults: planned.defaults,
    findings: pressure.notes.length > 0 ? [fullLiquidHead(pressure.pressurePsf, planned.pour, core)] : [],
  };
}

/** Each limit that was passed, with the pour's own number. */
function fullLiquidHead(pressurePsf: number, { slumpIn, riseFtPerH }: Omit<FreshConcreteWall, 'heightFt'>, core: Core): Finding {
  const numbers = {
    ...(slumpIn > SLUMP_LIMIT_IN && { slumpIn, limitIn: SLUMP_LIMIT_IN }),
    ...(riseFtPerH > EQUATION_B_RISE_FT_PER_H && { riseFtPerH, limitFtPerH: EQUATION_B_RISE_FT_PER_H }),
    pressurePsf,
    core: core.code,
  };
  return finding('full-liquid-head', { numbers, source: 'aci-347-04 §2.2.2' });
}

/** A lift stands as liquid when it has just been placed. */
function liftStep(w: number, liftFt: number): TraceStep {
  const substituted = `${shownNumber(w)} · ${shownNumber(liftFt)}`;
  return {
    name: 'head of one lift',
    equation: 'p ≥ w · lift',
    substituted,
    value: liquidHead(w, liftFt),
    unit: 'psf',
    source: 'common practice',
  };
}

function outsideMethod(outside: OutsideLimit, core: Core): Finding {
  const numbers = {
    method: 'ACI 347-04',
    core: core.code,
    [outside.quantity]: outside.value,
    limitF: outside.limit,
    side: outside.side,
  };
  return finding('outside-method', { numbers, source: outside.source });
}

function rated(core: Core, ...findings: readonly Finding[]): DesignPressure {
  const psf = core.ratedPressurePsf;
  const step = {
    name: 'rated pressure',
    equation: 'p = rating of the core',
    substituted: core.code,
    value: psf,
    unit: 'psf',
    source: 'form range',
  };
  return { psf, basis: 'rated', governs: 'rated', trace: [step], notes: [], defaults: [], findings };
}
