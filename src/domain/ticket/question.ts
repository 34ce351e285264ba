import type { Finding, FindingCode, Severity } from '../evidence/finding.js';

/** Findings of a job that one answer settles. `key` is the code with its deciding numbers: `turn-not-made turnDeg=112.4 core=6`. */
export interface Question {
  readonly key: string;
  readonly code: FindingCode;
  readonly severity: Severity;
  /** The question in words, for the ticket's head. */
  readonly text: string;
  readonly findings: readonly Finding[];
}
