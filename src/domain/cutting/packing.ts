import type { Nm } from '../quantity/length.js';
import type { Budget } from './effort.js';

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

export interface Packed {
  readonly packing: Packing;
  /** No packing has fewer stock lengths. */
  readonly bound: number;
}

/**
 * A search that starts from a packing and a bound and hands back ones at least as good; with a spent budget, the same.
 *
 * @param sizes    distinct sizes in descending order, none above the capacity [nm]
 * @param capacity room of one stock length                                    [nm]
 */
export type PackingSearch = (sizes: readonly SizeCount[], capacity: Nm, start: Packed, budget: Budget) => Packed;

export const stockLengths = (packing: Packing): number => packing.reduce((total, pattern) => total + pattern.times, 0);
