import type { Nm } from '../quantity/length.js';
import type { DimensionsTo } from './schedule.js';
import type { ScheduleContext } from './schedule-context.js';

/** How thick a wall is and where its dimension line lies in it [nm]. */
export interface WallBody {
  /** Over both foam faces. */
  readonly thickness: Nm;
  /** The dimension line lies this far to the right of the axis of the core, in walking direction. */
  readonly offset: number;
}

interface Dimensioned {
  readonly core: string;
  readonly dimensionsTo: DimensionsTo;
}

/** The body of a wall by its core, null where the context states no widths. */
export function wallBody({ core, dimensionsTo }: Dimensioned, { coreWidths, panel }: ScheduleContext): WallBody | null {
  const width = coreWidths?.get(core);
  if (width === undefined || panel === undefined || panel === null) return null;
  const thickness = width + 2 * panel;
  const across: Readonly<Record<DimensionsTo, Nm>> = { 'foam-face': thickness, 'concrete-face': width, axis: 0 };
  return { thickness, offset: across[dimensionsTo] / 2 };
}
