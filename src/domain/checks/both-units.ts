import { meant } from '../quantity/rounding.js';
import { inSi, inUnit } from '../quantity/quantity.js';
import { NM_PER_FOOT, NM_PER_METRE, type Nm } from '../quantity/length.js';
import type { CalculatorInput } from './calculator-input.js';
import type { Dimension } from '../quantity/unit.js';
import type { InBothUnits } from './calculator-answer.js';
import type { UnitSystem } from './written-system.js';

/** The units in which results are shown, by dimension: US customary, SI. */
const SHOWN = {
  pressure: ['psf', 'kPa'],
  force: ['lb', 'kN'],
  'force per length': ['lb/ft', 'kN/m'],
  speed: ['mph', 'm/s'],
  temperature: ['°F', '°C'],
  volume: ['yd3', 'm3'],
  area: ['ft2', 'm2'],
  rise: ['ft/h', 'm/h'],
  'evaporation rate': ['lb/ft2/h', 'kg/m2/h'],
} as const satisfies Partial<Record<Dimension, readonly [us: string, si: string]>>;

/** Stress is a pressure shown in other units. */
const STRESS = ['psi', 'MPa'] as const;

export type Shown = keyof typeof SHOWN;

/**
 * A value worked out in either system, shown in both: exact conversions, twelve digits.
 *
 * @param dimension what it measures
 * @param system    the system it was worked out in, in the unit that is shown
 */
export function inBoth(dimension: Shown, value: number, system: UnitSystem): InBothUnits {
  return converted(dimension, SHOWN[dimension], value, system);
}

/** A stress, in psi or MPa. */
export const stressInBoth = (value: number, system: UnitSystem): InBothUnits => converted('pressure', STRESS, value, system);

/** A length in feet or metres. */
export function lengthInBothFrom(value: number, system: UnitSystem): InBothUnits {
  const metresPerFoot = NM_PER_FOOT / NM_PER_METRE;
  const [ft, m] = system === 'si' ? [value / metresPerFoot, value] : [value, value * metresPerFoot];
  return { us: { value: meant(ft), unit: 'ft' }, si: { value: meant(m), unit: 'm' } };
}

function converted(dimension: Dimension, [us, si]: readonly [string, string], value: number, system: UnitSystem): InBothUnits {
  const held = inSi(dimension, system === 'si' ? si : us, value);
  return {
    us: { value: meant(system === 'si' ? inUnit(dimension, us, held) : value), unit: us },
    si: { value: meant(system === 'si' ? value : inUnit(dimension, si, held)), unit: si },
  };
}

/**
 * One system of units in which lengths, pressures and forces fit together without factors: ft, psf, lb, or m, kPa, kN.
 *
 * What was read is held in SI or nanometres; twelve digits take away the noise of turning it back.
 */
export class CoherentUnits {
  constructor(readonly system: UnitSystem) {}

  get length(): 'ft' | 'm' {
    return this.system === 'si' ? 'm' : 'ft';
  }
  unit(dimension: Shown): string {
    return SHOWN[dimension][this.system === 'si' ? 1 : 0];
  }
  ofLength(nm: Nm): number {
    return nm / (this.system === 'si' ? NM_PER_METRE : NM_PER_FOOT);
  }
  of(dimension: Shown, si: number): number {
    return meant(inUnit(dimension, this.unit(dimension), si));
  }
  show(dimension: Shown, value: number): InBothUnits {
    return inBoth(dimension, value, this.system);
  }
  showLength(value: number): InBothUnits {
    return lengthInBothFrom(value, this.system);
  }
}

/** SI where every field that carries a unit is written in SI, US customary where any is not: the working is shown in these. */
export function coherentUnits(
  input: CalculatorInput,
  measures: Readonly<Record<string, Dimension | 'length'>>,
): CoherentUnits {
  const written = Object.entries(measures).filter(([name]) => input.has(name));
  const si = written.length > 0 && written.every(([name, dimension]) => input.system(name, dimension) === 'si');
  return new CoherentUnits(si ? 'si' : 'us-customary');
}
