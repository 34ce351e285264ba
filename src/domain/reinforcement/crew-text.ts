import { toInches, toMm, type Nm } from '../quantity/length.js';
import type { DesignPressure } from './design-pressure.js';

/** `24 in (610 mm)`: inches to at most three decimals, whole millimetres. */
export function lengthText(length: Nm): string {
  return `${Number(toInches(length).toFixed(3))} in (${Math.round(toMm(length))} mm)`;
}

/** `750 psf (rated pressure, no pour to go by)`. */
export function pressureText(pressure: Pick<DesignPressure, 'psf' | 'basis'>): string {
  const basis = pressure.basis === 'pour' ? 'from the pour as planned' : "the form's rated pressure, the pour not being stated";
  return `${Math.round(pressure.psf)} psf (${basis})`;
}

/** `1 course`, `3 courses`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
