import type { Calculator, CalculatorAnswer, InBothUnits } from '../../../src/domain/checks/calculator-answer.js';

/** What a calculator answers; a refusal is an error of the test. */
export function answerOf(calculator: Calculator, fields: Readonly<Record<string, unknown>>): CalculatorAnswer {
  const answered = calculator(fields);
  if (!answered.ok) throw new Error(JSON.stringify(answered.error));
  return answered.value;
}

/** Where a calculator refuses, sorted; an answer is an error of the test. */
export function pointersOf(calculator: Calculator, fields: Readonly<Record<string, unknown>>): readonly (string | null)[] {
  const answered = calculator(fields);
  if (answered.ok) throw new Error(`read ${JSON.stringify(fields)}`);
  return answered.error.map(({ pointer }) => pointer).sort();
}

/** A result by its name, in both systems. */
export function valueOf(answer: CalculatorAnswer, name: string): InBothUnits {
  const value = answer.result[name];
  if (typeof value !== 'object' || !('us' in value)) throw new Error(`${name} is ${JSON.stringify(value)}`);
  return value;
}
