import { finding } from '../evidence/finding.js';
import type { CalculatorAnswer } from './calculator-answer.js';

/** A limit of a method that the question leaves; keys of `numbers` end in their units. */
export interface LeftLimit {
  readonly numbers: Readonly<Record<string, number | string>>;
  readonly source: string;
}

/**
 * A calculator's answer where its method gives none: no number, and a finding for each limit that was left.
 *
 * @param method as a reader knows it: `CIRIA 108`
 * @param limits what was asked, the limit and the side, with the source of the limit
 */
export function outsideAnswer(
  method: string,
  limits: readonly LeftLimit[],
  source: string,
  defaults: readonly string[],
): CalculatorAnswer {
  const findings = limits.map((left) =>
    finding('outside-method', { numbers: { method, ...left.numbers }, source: left.source }),
  );
  return { result: {}, governs: 'outside-method', trace: [], source, defaults, notes: [], findings };
}
