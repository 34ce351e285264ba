import { meant } from '../quantity/rounding.js';
import { inSi, inUnit } from '../quantity/quantity.js';
import { NM_PER_INCH, type Nm } from '../quantity/length.js';
import { lengthInBoth, type InBothUnits } from './calculator-answer.js';
import type { Dimension } from '../quantity/unit.js';

function shown(dimension: Dimension, us: string, si: string, value: number): InBothUnits {
  return { us: { value: meant(value), unit: us }, si: { value: meant(inUnit(dimension, si, inSi(dimension, us, value))), unit: si } };
}

/** Results of the strength equations, which are worked in inches, pounds and psi, in both systems. */
export const momentFromInLb = (inLb: number): InBothUnits => shown('moment', 'ft·lb', 'kN·m', inLb / 12);
/** A moment per foot of wall [in·lb per 12 in of width]. */
export const momentPerFootFromInLb = (inLb: number): InBothUnits => shown('moment per length', 'ft·lb/ft', 'kN·m/m', inLb / 12);
export const forceFromLb = (lb: number): InBothUnits => shown('force', 'lb', 'kN', lb);
export const areaFromIn2 = (in2: number): InBothUnits => shown('area', 'in2', 'mm2', in2);
export const lengthFromInches = (inches: number): InBothUnits => lengthInBoth(inches * NM_PER_INCH);

/** What was read, held in SI or nanometres, in the units of the equations; twelve digits take the noise of conversion away. */
export const inchesOf = (nm: Nm): number => meant(nm / NM_PER_INCH);
export const psiOf = (kPa: number): number => meant(inUnit('pressure', 'psi', kPa));
export const in2Of = (m2: number): number => meant(inUnit('area', 'in2', m2));
