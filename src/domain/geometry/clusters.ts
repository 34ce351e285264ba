import type { Vector } from './vector.js';

/** Disjoint sets over the integers 0 … size−1. */
export class DisjointSets {
  private readonly parent: number[];

  constructor(size: number) {
    this.parent = Array.from({ length: size }, (_, index) => index);
  }

  find(member: number): number {
    let root = member;
    while (this.parent[root] !== root) root = this.parent[root]!;
    for (let next = member; next !== root; ) {
      const above = this.parent[next]!;
      this.parent[next] = root;
      next = above;
    }
    return root;
  }

  /** The smaller root stays, so that the result does not depend on the order of the calls. */
  join(a: number, b: number): void {
    const [first, second] = [this.find(a), this.find(b)];
    if (first !== second) this.parent[Math.max(first, second)] = Math.min(first, second);
  }

  groups(): number[][] {
    const byRoot = new Map<number, number[]>();
    for (let member = 0; member < this.parent.length; member += 1) {
      const root = this.find(member);
      const group = byRoot.get(root);
      if (group) group.push(member);
      else byRoot.set(root, [member]);
    }
    return [...byRoot.values()];
  }
}

/** Joins in `sets` every two points not farther apart than `reach` (grid of cells of that size, linear for spread points). */
export function joinWithin(sets: DisjointSets, points: readonly Vector[], reach: number): void {
  const cells = new Map<string, number[]>();
  points.forEach((point, index) => {
    const column = Math.floor(point.x / reach);
    const row = Math.floor(point.y / reach);
    for (let dx = -1; dx <= 1; dx += 1) {
      for (let dy = -1; dy <= 1; dy += 1) {
        for (const other of cells.get(`${column + dx},${row + dy}`) ?? []) {
          const near = points[other]!;
          if (Math.hypot(near.x - point.x, near.y - point.y) <= reach) sets.join(other, index);
        }
      }
    }
    const key = `${column},${row}`;
    const cell = cells.get(key);
    if (cell) cell.push(index);
    else cells.set(key, [index]);
  });
}
