import type { Calculator, CalculatorAnswer, InBothUnits } from '../../../src/domain/checks/calculator-answer.js';

/** A calculator's answer; a refusal is a failed test. */
export function answered(calculator: Calculator, fields: Readonly<Record<string, unknown>>): CalculatorAnswer {
  const answer = calculator(fields);
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.value;
}

/** Pointers of what a calculator refuses, sorted. */
export function refused(calculator: Calculator, fields: Readonly<Record<string, unknown>>): readonly (string | null)[] {
  const answer = calculator(fields);
  return answer.ok ? [] : answer.error.map(({ pointer }) => pointer).sort();
}

export const us = (answer: CalculatorAnswer, name: string): number => (answer.result[name] as InBothUnits).us.value;
export const si = (answer: CalculatorAnswer, name: string): number => (answer.result[name] as InBothUnits).si.value;
export const units = (answer: CalculatorAnswer, name: string): readonly [string, string] => {
  const both = answer.result[name] as InBothUnits;
  return [both.us.unit, both.si.unit];
};
