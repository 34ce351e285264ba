import type { Nm } from '../quantity/length.js';
import type { RowReader } from './row-reader.js';
import type { DeclaredJoint, PlanPoint, Wall } from './schedule.js';

/** A wall whose own fields are right, before its ends are placed and its joints checked against other walls. */
export interface WallDraft extends Omit<Wall, 'from' | 'to' | 'start' | 'end'> {
  readonly reader: RowReader;
  /** Ends on the dimension line, null where the wall is placed by its joints. */
  readonly ends: { readonly from: PlanPoint; readonly to: PlanPoint } | null;
  readonly length: Nm;
  readonly start: DeclaredJoint | null;
  readonly end: DeclaredJoint | null;
}
