import { meant } from '../quantity/rounding.js';
import { STANDARD_GRAVITY } from '../engineering/aci-347-04/standard-gravity.js';

/** A unit weight held as a mass [kg/m³], as a weight [kN/m³]. */
export const weightOf = (kgPerM3: number): number => meant((kgPerM3 * STANDARD_GRAVITY) / 1000);
export const kgPerM3OfWeight = (kNPerM3: number): number => (kNPerM3 * 1000) / STANDARD_GRAVITY;
