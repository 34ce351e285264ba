import { LENGTH_FORMS } from '../quantity/length-forms.js';
import { plainText } from '../quantity/text.js';
import { unitNamed, type Dimension } from '../quantity/unit.js';

/** The two systems of units in which the standard prints its equations. */
export type UnitSystem = 'us-customary' | 'si';

const SI_UNITS: readonly string[] = [
  ...['m/h', 'mm/h', '°C', 'kg/m3', 'kN/m3', 'kPa', 'Pa', 'MPa', 'GPa', 'm/s', 'km/h', 'm3/h', 'm3', 'L', 'm2', 'mm2'],
  ...['kN', 'N', 'kN/m', 'N/m', 'kg', 'g', 't', 'kN·m', 'N·m', 'kN·m/m'],
];

/**
 * The system of units in which a quantity is written: `3.5 m` is SI, `12'-6"` US customary; null for what is no such quantity.
 *
 * @param written   a field as it was sent
 * @param dimension what it measures
 */
export function writtenSystem(written: unknown, dimension: Dimension | 'length'): UnitSystem | null {
  if (typeof written !== 'string') return null;
  const text = plainText(written);
  if (dimension === 'length') {
    const form = LENGTH_FORMS.find(({ pattern }) => pattern.test(text));
    if (!form || form.name === 'bare') return null;
    return form.name === 'metric' ? 'si' : 'us-customary';
  }
  const unit = unitNamed(dimension, text.replace(/^[-+.\d]+/, ''));
  if (!unit) return null;
  return SI_UNITS.includes(unit.symbol) ? 'si' : 'us-customary';
}
