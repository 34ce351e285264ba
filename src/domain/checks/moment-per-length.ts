import { meant } from '../quantity/rounding.js';
import { inSi, inUnit } from '../quantity/quantity.js';
import type { InBothUnits } from './calculator-answer.js';
import type { UnitSystem } from './written-system.js';

/** A moment per length of wall, in both systems, worked out in ft·lb/ft or in kN·m/m. */
export function momentPerLength(value: number, system: UnitSystem): InBothUnits {
  const held = inSi('moment per length', system === 'si' ? 'kN·m/m' : 'ft·lb/ft', value);
  return {
    us: { value: meant(system === 'si' ? inUnit('moment per length', 'ft·lb/ft', held) : value), unit: 'ft·lb/ft' },
    si: { value: meant(held), unit: 'kN·m/m' },
  };
}
