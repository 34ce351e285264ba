import { ASSUMED_MIX, ASSUMED_MIX_SI } from '../engineering/aci-347-04/assumed-mix.js';
import { dischargeLimit, DISCHARGE_EDITIONS, type DischargeEdition } from '../engineering/astm-c94/discharge-limit.js';
import { inSi } from '../quantity/quantity.js';
import { pcfToKgPerM3 } from '../quantity/us-customary.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { toMetres, type Nm } from '../quantity/length.js';
import { FRESH_CONCRETE_FIELDS, readStandingConcrete, type StandingConcrete } from './fresh-concrete-input.js';
import { STATICS_SPANS } from './statics-spans.js';
import type { CalculatorInput } from './calculator-input.js';
import type { UnitSystem } from './written-system.js';

export const POUR_PLAN_FIELDS = [
  'planArea', 'length', 'core', 'lift', 'pump', 'truck', 'dischargeLimit', 'edition', ...FRESH_CONCRETE_FIELDS,
] as const;

/** A storey's pour, lift by lift; SI, lengths in nm. */
export interface PourPlanQuestion {
  readonly planM2: number;
  readonly lift: Nm;
  readonly pumpM3PerH: number;
  readonly truckM3: number;
  /** Hours; null where neither purchaser nor edition sets one. */
  readonly limit: { readonly hours: number; readonly by: 'purchaser' | DischargeEdition } | null;
  readonly kgPerM3: number;
  /** Null where height and temperature are not stated: then only the least pressure can be told. */
  readonly standing: StandingConcrete | null;
}

const AREA = { above: 0, to: inSi('area', 'ft2', 1e6), says: 'more than 0 and at most 1000000 ft2' };
const LIMIT = { above: 0, to: 24, says: 'more than 0 and at most 24 h' };

/** The fields of a pour plan; undefined where one could not be read. */
export function readPourPlan(input: CalculatorInput, system: UnitSystem): PourPlanQuestion | undefined {
  const planM2 = readPlan(input);
  const lift = input.length('lift', '4 ft', STATICS_SPANS.lift);
  const pumpM3PerH = input.quantity('pump', 'volume rate', '40 yd3/h', PLAUSIBLE.pump);
  const truckM3 = input.quantity('truck', 'volume', '10 yd3', PLAUSIBLE.truck);
  const limit = readLimit(input);
  const stated = ['height', 'concrete', 'cement', 'retarder', 'slump', 'method'].some((name) => input.has(name));
  const standing = stated ? readStandingConcrete(input, system) : null;
  const kgPerM3 = standing?.unitWeight.value ?? (stated ? undefined : readUnitWeight(input, system));
  if (!stated) input.defaults.push('height and concrete: not stated, only the least pressure is told');
  if (standing && lift !== undefined && lift > standing.height) input.refuse('lift', 'at most the height of the wall');
  if (planM2 === undefined || lift === undefined || pumpM3PerH === undefined || truckM3 === undefined) return undefined;
  if (limit === undefined || standing === undefined || kgPerM3 === undefined) return undefined;
  return { planM2, lift, pumpM3PerH, truckM3, limit, kgPerM3, standing };
}

/** The area in plan, or the length of walls of one core. */
function readPlan(input: CalculatorInput): number | undefined {
  if (input.has('planArea') || !(input.has('length') || input.has('core'))) {
    for (const name of ['length', 'core']) if (input.has(name)) input.refuse(name, 'nothing, where the planArea is given');
    return input.quantity('planArea', 'area', '100 ft2, or length and core of the walls', AREA);
  }
  const [length, core] = [input.length('length', '200 ft', STATICS_SPANS.length), input.length('core', '6 in', STATICS_SPANS.core)];
  return length === undefined || core === undefined ? undefined : toMetres(length) * toMetres(core);
}

function readLimit(input: CalculatorInput): PourPlanQuestion['limit'] | undefined {
  const read = () => input.name<DischargeEdition>('edition', (name) => DISCHARGE_EDITIONS.find((known) => known === name.trim().toLowerCase()) ?? null, DISCHARGE_EDITIONS);
  if (input.has('dischargeLimit')) {
    if (input.has('edition')) read();
    const hours = input.quantity('dischargeLimit', 'time', '90 min', LIMIT);
    return hours === undefined ? undefined : { hours, by: 'purchaser' };
  }
  const edition = input.orElse<DischargeEdition>('edition', read, 'astm-c94-21', 'edition: astm-c94-21');
  if (edition === undefined) return undefined;
  const hours = dischargeLimit(edition);
  input.defaults.push(hours === null ? `dischargeLimit: not stated, and ${edition} sets none` : `dischargeLimit: ${hours} h of ${edition}`);
  return hours === null ? null : { hours, by: edition };
}

function readUnitWeight(input: CalculatorInput, system: UnitSystem): number | undefined {
  const si = system === 'si';
  const assumed = si ? ASSUMED_MIX_SI.unitWeightKgPerM3 : pcfToKgPerM3(ASSUMED_MIX.unitWeightPcf);
  const words = si ? `unitWeight: ${ASSUMED_MIX_SI.unitWeightKgPerM3} kg/m3` : `unitWeight: ${ASSUMED_MIX.unitWeightPcf} pcf`;
  return input.orElse('unitWeight', () => input.quantity('unitWeight', 'density', '150 pcf', PLAUSIBLE.unitWeight), assumed, words);
}
