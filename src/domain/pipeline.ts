import type { CheckReport } from './checks/check-report.js';
import type { CrewInstruction, MaterialLine } from './reinforcement/material-line.js';
import type { Finding } from './evidence/finding.js';
import type { Question } from './ticket/question.js';
import type { Takeoff } from './takeoff/takeoff.js';

/** Everything the domain says of one schedule on one range with the advice given so far. */
export interface Measurement {
  readonly engine: string;
  readonly range: { readonly code: string; readonly version: number };
  readonly takeoff: Takeoff;
  readonly materials: readonly MaterialLine[];
  readonly instructions: readonly CrewInstruction[];
  readonly checks: readonly CheckReport[];
  /** Take-off's and checks' findings together; those that advice lifted are left out. */
  readonly findings: readonly Finding[];
  readonly lifted: readonly Finding[];
  readonly questions: readonly Question[];
}
