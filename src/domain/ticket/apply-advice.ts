import { questionKey } from './question-key.js';
import type { Advice } from '../advice/advice.js';
import type { Finding } from '../evidence/finding.js';

export interface Advised {
  /** What is still open. */
  readonly findings: readonly Finding[];
  /** What an answer has settled. */
  readonly lifted: readonly Finding[];
}

/**
 * Takes out the findings that people have answered, by question and place.
 *
 * An answer lifts a finding of its question at a place it names (at every place where it names none). A finding whose deciding
 * numbers have changed is another question, so it stays. Notes are never lifted: nobody asked. A place is the storey and the
 * finding's (first) wall.
 *
 * @param findings findings of one run
 * @param advice   every answer given in the job so far
 */
export function applyAdvice(findings: readonly Finding[], advice: readonly Advice[]): Advised {
  const isLifted = (finding: Finding): boolean => {
    if (finding.severity === 'note') return false;
    const key = questionKey(finding);
    return advice.some((answer) => answer.question === key && reaches(answer, finding));
  };
  const lifted = new Set(findings.filter(isLifted));
  return { findings: findings.filter((finding) => !lifted.has(finding)), lifted: [...lifted] };
}

function reaches(answer: Advice, finding: Finding): boolean {
  if (answer.lifts.length === 0) return true;
  return answer.lifts.some(
    ({ code, storey, wall }) =>
      code === finding.code && (storey === null || storey === finding.storey) && (wall === null || wall === finding.wall),
  );
}
