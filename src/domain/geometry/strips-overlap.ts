import { add, direction, dot, leftNormal, scale, subtract, type Vector } from './vector.js';
import type { Strip } from './near-pairs.js';

const cornersOf = ({ from, to, reach }: Strip): Vector[] => {
  const side = scale(leftNormal(direction(subtract(to, from))), reach);
  return [add(from, side), subtract(from, side), subtract(to, side), add(to, side)];
};

const extent = (corners: readonly Vector[], axis: Vector): [number, number] => {
  const along = corners.map((corner) => dot(corner, axis));
  return [Math.min(...along), Math.max(...along)];
};

/** Whether two straight strips, square at their ends, share ground more than `slack` deep (separating axes). */
export function stripsOverlap(first: Strip, second: Strip, slack: number): boolean {
  const [a, b] = [cornersOf(first), cornersOf(second)];
  const axes = [first, second].flatMap(({ from, to }) => {
    const along = direction(subtract(to, from));
    return [along, leftNormal(along)];
  });
  return axes.every((axis) => {
    const [lowA, highA] = extent(a, axis);
    const [lowB, highB] = extent(b, axis);
    return Math.min(highA, highB) - Math.max(lowA, lowB) > slack;
  });
}
