import { coresOfWall, topOfWall } from '../takeoff/index.js';
import type { LaidStorey } from '../takeoff/laid.js';
import type { Nm } from '../quantity/length.js';

/**
 * Height of the fresh concrete of a storey's walls on one core: the tallest stack with the gable on it, placed as one pour.
 * A wall that changes its core counts whole for each of them: what stands above presses on what stands below.
 *
 * @param storey a laid storey
 * @param core   code of the core
 * @returns      height of the tallest wall, 0 where no wall of the storey has that core [nm]
 */
export function pourHeight(storey: LaidStorey, core: string): Nm {
  return storey.walls
    .filter((wall) => coresOfWall(wall).some(({ code }) => code === core))
    .reduce((tallest, wall) => Math.max(tallest, topOfWall(wall)), 0);
}
