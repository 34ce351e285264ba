import type { Nm } from '../quantity/length.js';
import type { Core } from '../range/range.js';
import type { LaidWall } from './laid.js';

/** The core a course stands on: the wall's own, or the one it changed to below this course. */
export function coreOfCourse(wall: Pick<LaidWall, 'core' | 'coreChanges'>, course: number): Core {
  return wall.coreChanges.findLast((change) => course >= change.course)?.core ?? wall.core;
}

/** Every core of a wall, from its foot up. */
export const coresOfWall = (wall: Pick<LaidWall, 'core' | 'coreChanges'>): readonly Core[] => [wall.core, ...wall.coreChanges.map(({ core }) => core)];

/** Height of a wall's highest point above its base: the stack's, with the gable on it. */
export const topOfWall = ({ stack, gable }: Pick<LaidWall, 'stack' | 'gable'>): Nm => stack.height + (gable?.rise ?? 0);

/** Whether a course stands above the stack, under the slope of a gable. */
export const isGableCourse = (wall: Pick<LaidWall, 'stack'>, course: number): boolean => course > wall.stack.courses;
