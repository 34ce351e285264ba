import type { Vector } from './vector.js';

export interface Strip {
  readonly from: Vector;
  readonly to: Vector;
  /** Half width on both sides of the centre line. */
  readonly reach: number;
}

/** Calls `visit` once for every two strips whose bounding boxes overlap: a sweep along x. */
export function forEachNearPair(strips: readonly Strip[], visit: (first: number, second: number) => void): void {
  const boxes = strips.map(({ from, to, reach }, index) => ({
    index,
    left: Math.min(from.x, to.x) - reach,
    right: Math.max(from.x, to.x) + reach,
    low: Math.min(from.y, to.y) - reach,
    high: Math.max(from.y, to.y) + reach,
  }));
  boxes.sort((a, b) => a.left - b.left || a.index - b.index);
  let open: typeof boxes = [];
  for (const box of boxes) {
    open = open.filter((other) => other.right >= box.left);
    for (const other of open) {
      if (other.low <= box.high && other.high >= box.low) visit(Math.min(other.index, box.index), Math.max(other.index, box.index));
    }
    open.push(box);
  }
}
