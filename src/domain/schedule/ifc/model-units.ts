import { NM_PER_FOOT, NM_PER_INCH, NM_PER_METRE, NM_PER_MM } from '../../quantity/length.js';
import type { LengthUnit } from '../../quantity/length-unit.js';
import type { Entity, StepModel } from './step-model.js';
import { Unread } from './unread.js';

export interface ModelUnits {
  /** Nanometres in one unit of length of the file. */
  readonly nm: number;
  /** Radians in one unit of plane angle of the file. */
  readonly radians: number;
  /** The unit in which the schedule is written. */
  readonly shown: LengthUnit;
}

const PREFIXES: Readonly<Record<string, number>> = {
  KILO: 1e3,
  HECTO: 1e2,
  DECA: 1e1,
  DECI: 1e-1,
  CENTI: 1e-2,
  MILLI: 1e-3,
  MICRO: 1e-6,
  NANO: 1e-9,
};
const SHOWN: readonly (readonly [number, LengthUnit])[] = [
  [NM_PER_INCH, 'in'],
  [NM_PER_FOOT, 'ft'],
  [NM_PER_METRE, 'm'],
  [NM_PER_MM, 'mm'],
];
const MAX_STEPS = 8;

/** The units of length and plane angle of a model: SI with a prefix, or conversion-based on such (feet, inches, degrees). */
export function modelUnits(model: StepModel): ModelUnits {
  const units = model.all('IfcProject').flatMap((project) => project.optional(8)?.entities(0) ?? []);
  const named = (type: string): Entity | undefined => units.find((unit) => kindOf(unit) === type);
  const length = named('LENGTHUNIT');
  if (!length) throw new Unread('the project states no unit of length');
  const exact = sizeOf(length, 'METRE') * NM_PER_METRE;
  const whole = Math.round(exact);
  const nm = Math.abs(exact - whole) <= exact * 1e-12 ? whole : exact;
  if (!(nm > 0)) throw new Unread('the unit of length has no size');
  const angle = named('PLANEANGLEUNIT');
  const shown = SHOWN.find(([size]) => size === nm)?.[1] ?? 'mm';
  return { nm, radians: angle ? sizeOf(angle, 'RADIAN') : 1, shown };
}

/** An SI unit's first attribute is derived, and readers of files leave it out: so its attributes are counted from the end. */
const kindOf = (unit: Entity): string | null => unit.word(unit.type === 'IfcSIUnit' ? unit.size - 3 : 1);

/** Size in the SI unit of that name. */
function sizeOf(unit: Entity, name: string, steps = 0): number {
  if (unit.type === 'IfcSIUnit') {
    const prefix = unit.word(unit.size - 2);
    const factor = prefix === null ? 1 : PREFIXES[prefix];
    if (unit.word(unit.size - 1) !== name || factor === undefined)
      throw new Unread(`#${unit.id} is no unit of ${name.toLowerCase()}s`);
    return factor;
  }
  if (!unit.type.startsWith('IfcConversionBasedUnit') || steps > MAX_STEPS)
    throw new Unread(`the unit #${unit.id} ${unit.type} is not read`);
  const measure = unit.entity(3);
  return measure.number(0) * sizeOf(measure.entity(1), name, steps + 1);
}
