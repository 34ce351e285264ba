import type { CalculatorInput } from './calculator-input.js';

/** What a plain number may be. */
export interface NumberSpan {
  readonly from: number;
  readonly to: number;
  readonly whole?: boolean;
}

/** A plain number without a unit, as a number or as text; undefined where it is none, which the input lists. */
export function readNumberField(
  input: CalculatorInput,
  fields: Readonly<Record<string, unknown>>,
  name: string,
  { from, to, whole = false }: NumberSpan,
): number | undefined {
  const written = fields[name];
  const value = typeof written === 'string' && /^\d{1,6}(\.\d{1,9})?$/.test(written.trim()) ? Number(written) : written;
  if (typeof value === 'number' && value >= from && value <= to && (!whole || Number.isInteger(value))) return value;
  return input.refuse(name, `a ${whole ? 'whole ' : ''}number from ${from} to ${to}`);
}
