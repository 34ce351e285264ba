import { describe, expect, it } from '@jest/globals';
import { firstFitDecreasing } from '../../../src/domain/cutting/first-fit-decreasing.js';

describe('first-fit-decreasing', () => {
  it('puts each part into the first stock length with room: 7 4 4 3 2 of 10 by hand', () => {
    const packing = firstFitDecreasing([{ size: 7, count: 1 }, { size: 4, count: 2 }, { size: 3, count: 1 }, { size: 2, count: 1 }], 10);
    expect(packing).toEqual([{ sizes: [7, 3], times: 1 }, { sizes: [4, 4, 2], times: 1 }]);
  });

  it('is the plan a scan part by part makes', () => {
    const sizes = [{ size: 45, count: 3 }, { size: 34, count: 4 }, { size: 27, count: 5 }, { size: 10, count: 7 }, { size: 3, count: 9 }];
    const rooms: number[] = [];
    const contents: number[][] = [];
    for (const size of sizes.flatMap(({ size: each, count }) => Array.from({ length: count }, () => each))) {
      let bin = rooms.findIndex((room) => room >= size);
      if (bin < 0) bin = rooms.push(100) - 1;
      rooms[bin]! -= size;
      (contents[bin] ??= []).push(size);
    }
    expect(firstFitDecreasing(sizes, 100).map((pattern) => pattern.sizes)).toEqual(contents);
  });
});
