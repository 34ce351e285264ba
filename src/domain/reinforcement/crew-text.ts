import { toInches, toMm, type Nm } from '../quantity/length.js';
import { feetToMetres, psfToKpa } from '../quantity/us-customary.js';
import type { DesignPressure } from './design-pressure.js';

/** `24 in (610 mm)`: inches to at most three decimals, whole millimetres. */
export function lengthText(length: Nm): string {
  return `${Number(toInches(length).toFixed(3))} in (${Math.round(toMm(length))} mm)`;
}

/** `400 lb (1.78 kN)`: 1 lb over 1 ft² is 1 psf. */
export function forceText(lb: number): string {
  return `${Math.round(lb)} lb (${(psfToKpa(lb) * feetToMetres(1) ** 2).toFixed(2)} kN)`;
}

/** `424 lb/ft (6.19 kN/m)`. */
export function lineForceText(lbPerFt: number): string {
  return `${Math.round(lbPerFt)} lb/ft (${(psfToKpa(lbPerFt) * feetToMetres(1)).toFixed(2)} kN/m)`;
}

/** `750 psf (the form's rated pressure)`. */
export function pressureText(pressure: Pick<DesignPressure, 'psf' | 'basis'>): string {
  const basis = pressure.basis === 'pour' ? 'from the pour as planned' : "the form's rated pressure";
  return `${Math.round(pressure.psf)} psf (${basis})`;
}

/** `1 course`, `3 courses`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `station 60 in (1524 mm)`: along the wall's axis from its own start. */
export function stationText(at: Nm): string {
  return `station ${lengthText(at)}`;
}
