import { QUESTION_NUMBERS } from './question-numbers.js';
import { shownNumber } from '../evidence/shown-number.js';
import type { Finding } from '../evidence/finding.js';

/** Finest difference that makes another question, by the unit a number's key ends in. */
const STEPS: readonly { readonly suffix: string; readonly decimals: number }[] = [
  { suffix: 'Deg', decimals: 1 },
  { suffix: 'Mm', decimals: 1 },
  { suffix: 'Psf', decimals: 0 },
  { suffix: 'F', decimals: 1 },
];

/**
 * What is asked by a finding: its code with the numbers that decide the answer, `turn-not-made turnDeg=112.4 core=6`.
 *
 * Left and right turns of one size are one question. Turns count to 0.1°, lengths to 0.1 mm, pressures to 1 psf.
 *
 * @param finding a finding of any code
 * @returns       the key of `Question` and `Advice`
 */
export function questionKey(finding: Finding): string {
  const deciding: readonly string[] | 'every' = QUESTION_NUMBERS[finding.code];
  const keys = deciding === 'every' ? Object.keys(finding.numbers).sort() : deciding;
  const parts = keys.flatMap((key) => {
    const value = finding.numbers[key];
    return value === undefined ? [] : [`${key}=${written(key, value)}`];
  });
  return [finding.code, ...parts].join(' ');
}

function written(key: string, value: number | string): string {
  if (typeof value === 'string') return value;
  const size = key.endsWith('turnDeg') ? Math.abs(value) : value;
  const step = STEPS.find(({ suffix }) => key.endsWith(suffix));
  return step ? size.toFixed(step.decimals) : shownNumber(size);
}
