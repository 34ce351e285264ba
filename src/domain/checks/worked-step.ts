import type { TraceStep } from '../evidence/trace.js';

/** A step of a calculation: its name, the equation, the numbers put in, the value with its unit, the source. */
export function workedStep(
  name: string,
  equation: string,
  substituted: string,
  value: number,
  unit: string,
  source: string,
): TraceStep {
  return { name, equation, substituted, value, unit, source };
}
