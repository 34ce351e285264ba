import type { TraceStep } from '../evidence/trace.js';
import type { Finding } from '../evidence/finding.js';

/** One check on one storey of the job. */
export interface CheckReport {
  readonly check: string;
  readonly storey: string;
  readonly core: string | null;
  readonly results: Readonly<Record<string, number | string>>;
  readonly trace: readonly TraceStep[];
  readonly source: string;
  readonly defaults: readonly string[];
  /** Plain sentences to print beside the results: where the standard itself says what to do past a limit. */
  readonly notes: readonly string[];
  readonly findings: readonly Finding[];
}
