export { takeOff } from './take-off.js';
export { solveStack, layersOf, type StackRange } from './stack.js';
export { cornerUnitFor, handOf, legOnAxis } from './corners.js';
export { coreOfCourse, coresOfWall, isGableCourse } from './course-core.js';
export { isForm } from './course-units.js';
export { cubicMetres, cubicYards } from './concrete.js';
export { UNSETTLED_SKU } from './line-pieces.js';
export type * from './laid.js';
export type * from './takeoff.js';
