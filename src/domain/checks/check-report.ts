import type { TraceStep } from '../evidence/trace.js';
import type { Finding } from '../evidence/finding.js';

/** One place of a storey that a check spoke of. Stations are along the wall's axis from its own `from` node. */
export interface CheckPlace {
  readonly wall: string;
  readonly course: number | null;
  readonly atMm: number | null;
  /** Numbers end in their unit (`forceKn`, `heightMm`); words say what resists, or what a table answers. */
  readonly results: Readonly<Record<string, number | string>>;
}

/** One check on one storey of the job, and at each place of it where the answer differs from place to place. */
export interface CheckReport {
  readonly check: string;
  readonly storey: string;
  readonly core: string | null;
  readonly results: Readonly<Record<string, number | string>>;
  /** Empty where one answer holds for the storey. */
  readonly places: readonly CheckPlace[];
  /** Of the storey, or of the place with the greatest value. */
  readonly trace: readonly TraceStep[];
  readonly source: string;
  readonly defaults: readonly string[];
  /** Plain sentences to print beside the results: where the standard itself says what to do past a limit. */
  readonly notes: readonly string[];
  readonly findings: readonly Finding[];
}
