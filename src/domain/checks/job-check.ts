import type { CheckReport } from './check-report.js';
import type { FormRange } from '../range/range.js';
import type { MaterialLine } from '../reinforcement/material-line.js';
import type { PressureOf } from '../reinforcement/rule.js';
import type { Schedule } from '../schedule/schedule.js';
import type { Takeoff } from '../takeoff/takeoff.js';

/** All that a check may read of a job. */
export interface CheckContext {
  readonly schedule: Schedule;
  readonly range: FormRange;
  readonly takeoff: Takeoff;
  /** What the rules use, by place: what resists. */
  readonly materials: readonly MaterialLine[];
  /** The one pressure of a storey and core that rules and checks share (decision 29). */
  readonly pressureOf: PressureOf;
}

export type JobCheck = (job: CheckContext) => readonly CheckReport[];
