import { finding } from '../evidence/finding.js';
import type { CalculatorAnswer } from './calculator-answer.js';
import type { OutsideMethod } from '../engineering/aci-347-04/fresh-concrete-wall.js';

/** A calculator's answer where the method gives none: no number, and a finding for each limit that was left. */
export function outsideMethodAnswer({ outside }: OutsideMethod, source: string, defaults: readonly string[]): CalculatorAnswer {
  const findings = outside.map(({ quantity, value, limit, side, source: limitSource }) =>
    finding('outside-method', { numbers: { method: 'ACI 347-04', [quantity]: value, limitF: limit, side }, source: limitSource }),
  );
  return { result: {}, governs: 'outside-method', trace: [], source, defaults, notes: [], findings };
}
