import type { Nm } from '../quantity/length.js';
import type { LayoutCost } from './bond-cost.js';
import type { CourseRun } from './runs.js';

/** A straight piece of a course along its line. */
export interface LinePiece {
  readonly from: Nm;
  readonly to: Nm;
  /** Station of the joint off the interlock that this piece was cut for, null where it has none. */
  readonly seamAt: Nm | null;
  /** That joint is a leg's own and moves from course to course; it is no seam of the line. */
  readonly atLeg: boolean;
  /** Added to its axis length where an end is cut on the skew. */
  readonly over: Nm;
}

export interface LaidLine {
  readonly runs: readonly CourseRun[];
  /** Straight pieces of each course in order of station. */
  readonly pieces: readonly (readonly LinePiece[])[];
  /** The line's seam and what is left of the module; no station where it falls on the legs; null where every run is whole modules. */
  readonly seam: { readonly at: Nm | null; readonly remainder: Nm } | null;
  readonly cost: LayoutCost;
  /** Lengths of all straight pieces, longest first, ripped ones as negative numbers: what two layouts are compared by last. */
  readonly lengths: readonly Nm[];
}
