import { findingText } from '../evidence/finding-text.js';
import { questionKey } from './question-key.js';
import type { Finding } from '../evidence/finding.js';
import type { LengthUnit } from '../quantity/length-unit.js';
import type { Question } from './question.js';

/**
 * The questions of a job: one for all findings that one answer settles, in the order in which they first appear.
 *
 * Notes ask nothing. A question is a hold where any of its findings is.
 *
 * @param findings findings that no advice has lifted
 * @param units    units of the schedule, for the wording
 */
export function groupQuestions(findings: readonly Finding[], units: LengthUnit = 'in'): readonly Question[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    if (finding.severity === 'note') continue;
    const key = questionKey(finding);
    const group = groups.get(key);
    if (group) group.push(finding);
    else groups.set(key, [finding]);
  }
  return [...groups].map(([key, group]) => question(key, group, units));
}

function question(key: string, findings: readonly Finding[], units: LengthUnit): Question {
  const [first] = findings as readonly [Finding, ...Finding[]];
  const severity = findings.some((finding) => finding.severity === 'hold') ? 'hold' : first.severity;
  return { key, code: first.code, severity, text: findingText(first, units), findings };
}
