import type { Nm } from '../quantity/length.js';

/** So many parts of one size. Inside this folder a size is length + kerf and a capacity is stock + kerf, so kerf drops out. */
export interface SizeCount {
  readonly size: Nm;
  readonly count: number;
}

/** One way of filling a stock length, sizes in laying order, and how many stock lengths are filled so. */
export interface Pattern {
  readonly sizes: readonly Nm[];
  readonly times: number;
}

/** Every part of the demand, each exactly once. */
export type Packing = readonly Pattern[];

export const stockLengths = (packing: Packing): number => packing.reduce((total, pattern) => total + pattern.times, 0);
