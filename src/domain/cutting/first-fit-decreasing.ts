import type { Nm } from '../quantity/length.js';
import type { Packing, SizeCount } from './packing.js';

/**
 * First-fit-decreasing: the largest parts first, each into the first opened stock length that still has room.
 *
 * Parts of one size never look back: what did not fit the last of them does not fit the next, so a size costs one pass
 * over the opened stock lengths. Never more than 11/9 of the optimum and two thirds.
 *
 * @param sizes    distinct sizes in descending order [nm]
 * @param capacity room of one stock length           [nm]
 * @source Martello & Toth 1990, Knapsack Problems, ch. 8 (algorithm); Dósa 2007 (the bound 11/9 · OPT + 6/9); from memory
 */
export function firstFitDecreasing(sizes: readonly SizeCount[], capacity: Nm): Packing {
  const rooms: Nm[] = [];
  const contents: Nm[][] = [];
  for (const { size, count } of sizes) {
    let left = count;
    for (let bin = 0; left > 0; bin++) {
      if (bin === rooms.length) {
        rooms.push(capacity);
        contents.push([]);
      }
      for (; left > 0 && rooms[bin]! >= size; left--) {
        rooms[bin]! -= size;
        contents[bin]!.push(size);
      }
    }
  }
  return contents.map((content) => ({ sizes: content, times: 1 }));
}

/** How many stock lengths `firstFitDecreasing` opens. */
export function firstFitCount(sizes: readonly SizeCount[], capacity: Nm): number {
  const rooms: Nm[] = [];
  let full = 0;
  const smallest = sizes.at(-1)?.size ?? 0;
  for (const { size, count } of sizes) {
    let left = count;
    while (full < rooms.length && rooms[full]! < smallest) full += 1;
    for (let bin = full; left > 0; bin++) {
      if (bin === rooms.length) rooms.push(capacity);
      const fit = Math.min(left, Math.floor(rooms[bin]! / size));
      rooms[bin]! -= fit * size;
      left -= fit;
    }
  }
  return rooms.length;
}
