import type { Nm } from '../quantity/length.js';
import type { AxisWall } from './axes.js';
import type { BondMemory } from './bond.js';
import { gableLayers, stretchAbove, type Gable } from './gables.js';
import type { HeadJoint } from './laid.js';
import { alreadyLaid, countedJoints } from './laid-below.js';
import { layLine } from './line-layout.js';
import { coursePieces, type CoursePieces } from './line-pieces.js';
import { lineOfWalls, type Line } from './lines.js';
import type { LineOpening } from './openings.js';
import { courseRun, formsWithin, type CourseRun, type RunContext, type Stretch } from './runs.js';
import type { Layer } from './stack.js';

/** The courses of one wall's gable, on a line of that wall alone. */
export interface GableCourses {
  readonly wall: AxisWall;
  readonly gable: Gable;
  readonly line: Line;
  readonly openings: readonly LineOpening[];
  /** The course they stand on, then theirs, bottom up. */
  readonly under: CoursePieces;
  readonly courses: readonly CoursePieces[];
}

/** A laid course seen from a wall that begins further along its line. */
function seenFrom(course: CoursePieces, by: Nm): CoursePieces {
  const joints = course.joints.map((joint): HeadJoint => ({ ...joint, at: joint.at - by }));
  const { run } = course;
  return { run: { ...run, from: run.from - by, to: run.to - by, fixedJoints: run.fixedJoints.map((at) => at - by), voids: run.voids.map((gap) => ({ ...gap, from: gap.from - by, to: gap.to - by })) }, pieces: [], joints };
}

/** A slope ends a course at both sides, or the panel of a neighbour that stands there, but where it stands upright at its wall's end. */
function stretchOf(gable: Gable, layer: Layer, line: Line, context: RunContext): Stretch {
  const { from, to } = stretchAbove(gable, layer.bottom - line.stack.stack.height);
  const { index } = line.walls[0]!.wall;
  const within = (end: 'start' | 'end'): number => formsWithin(index, end, line.base + layer.bottom, context);
  return {
    from: gable.peak === gable.foot ? null : Math.max(from, within('start')),
    to: gable.peak === gable.end ? null : Math.min(to, line.length - within('end')),
  };
}

/**
 * Lays the gables that stand on a line, each wall's for itself: its courses shorten up the slope and keep the bond with the course
 * below. An upright end of a one-sided slope has its corner legs or its closure like any other end.
 */
export function layGables(
  line: Line,
  top: CoursePieces,
  openings: readonly LineOpening[],
  arrivingFirst: boolean,
  context: RunContext,
  memory: BondMemory,
): GableCourses[] {
  return line.walls.flatMap(({ wall, from }): GableCourses[] => {
    const gable = context.gableOf(wall.index);
    if (!gable) return [];
    const own = lineOfWalls([wall.index], context.plan);
    const holes = openings
      .filter((opening) => opening.wall === wall.index)
      .map((opening) => ({ ...opening, from: opening.from - from, to: opening.to - from, formsFrom: opening.formsFrom - from, formsTo: opening.formsTo - from }));
    const under = seenFrom(top, from);
    const runs = gableLayers(gable.rise, line.stack.stack, context.range).map((layer) =>
      courseRun(own, layer, stretchOf(gable, layer, own, context), holes, arrivingFirst, context),
    );
    return [{ wall, gable, line: own, openings: holes, under, courses: laidOver(under, runs, own, holes, context, memory) }];
  });
}

function laidOver(under: CoursePieces, runs: readonly CourseRun[], line: Line, openings: readonly LineOpening[], context: RunContext, memory: BondMemory): CoursePieces[] {
  const laid = layLine([alreadyLaid(countedJoints(under.joints)), ...runs], line.length, context.range, memory);
  const above = { ...laid, runs: laid.runs.slice(1), pieces: laid.pieces.slice(1) };
  return coursePieces(line, above, openings, context.plan, context.range);
}
