import type { Nm } from '../quantity/length.js';
import type { LaidCourse, LaidStorey } from '../takeoff/laid.js';
import { mitredCorners, type MitredEnd } from './mitred-corners.js';
import { formSegments, type Segment } from './segments.js';

/** Where a course's forms stand along the axis; what passes a mitred corner's node is the next wall's length. */
export interface AxisRuns {
  /** Ends of a course, drawn in to the nodes of the corners that are mitred in it. */
  readonly endsOf: (course: LaidCourse) => Segment;
  /** The stretches between them, less the openings that interrupt the course; none on a curve too tight for a single chord. */
  readonly segmentsOf: (course: LaidCourse) => readonly Segment[];
}

export function axisRuns(storey: LaidStorey): AxisRuns {
  const nodes = new Map<LaidCourse, { start?: Nm; end?: Nm }>();
  for (const { arriving, leaving } of mitredCorners(storey)) for (const at of [arriving, leaving]) note(nodes, at);
  const endsOf = (course: LaidCourse): Segment => {
    const { start = -Infinity, end = Infinity } = nodes.get(course) ?? {};
    return { from: Math.max(course.from, start), to: Math.min(course.to, end) };
  };
  const bare = new Set(storey.walls.filter(({ arc }) => arc?.chord === null).flatMap(({ courses }) => courses));
  return { endsOf, segmentsOf: (course) => (bare.has(course) ? [] : formSegments({ ...endsOf(course), voids: course.voids })) };
}

function note(nodes: Map<LaidCourse, { start?: Nm; end?: Nm }>, { course, end, node }: MitredEnd): void {
  nodes.set(course, { ...nodes.get(course), [end]: node });
}

/** Length of stretches [nm]. */
export const lengthOf = (segments: readonly Segment[]): Nm => segments.reduce((sum, { from, to }) => sum + to - from, 0);

/** What of some stretches lies between two stations. */
export const within = (segments: readonly Segment[], { from, to }: Segment): readonly Segment[] =>
  segments.map((each) => ({ from: Math.max(each.from, from), to: Math.min(each.to, to) })).filter((each) => each.to > each.from);
