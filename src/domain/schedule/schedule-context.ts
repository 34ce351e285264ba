import type { Nm } from '../quantity/length.js';

/** What the schedule is checked against; null or absent where nothing is known, and that check is then not made. */
export interface ScheduleContext {
  /** Code of the range the figures are of: a schedule that names no range is of this one, one that names another is refused. */
  readonly range?: string | null;
  readonly cores: readonly string[] | null;
  /** Clear width of each core, and the thickness of one foam panel: without both no wall is placed by a declared tee. */
  readonly coreWidths?: ReadonlyMap<string, Nm> | null;
  readonly panel?: Nm | null;
  readonly courseHeight: Nm | null;
  readonly buckThickness: Nm | null;
}
