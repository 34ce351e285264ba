import type { Nm } from '../quantity/length.js';
import { Budget, USUAL_EFFORT, type Effort } from './effort.js';
import { fillLargest } from './fill-largest.js';
import { firstFitCount, firstFitDecreasing } from './first-fit-decreasing.js';
import { cheapBound, lowerBound } from './lower-bound.js';
import { stockLengths, type Packed, type Packing, type SizeCount } from './packing.js';
import { patternSearch } from './pattern-search.js';

export interface CutItem {
  readonly id: string;
  readonly length: Nm;
}

export interface CutOrder {
  /** Length of one stock piece. */
  readonly stock: Nm;
  /** Width a cut takes away; 0 where a blade takes nothing worth counting. */
  readonly kerf: Nm;
  readonly items: readonly CutItem[];
  /** Shortest offcut worth keeping: of two plans that buy the same, the one leaving more length in such offcuts is taken. */
  readonly minOffcut?: Nm;
}

export interface CutBin {
  /** In laying order from one end; `offset` is where the part begins. */
  readonly items: readonly (CutItem & { readonly offset: Nm })[];
  /** What is left after the last part and its cut. */
  readonly offcut: Nm;
}

export interface CutPlan {
  readonly bins: readonly CutBin[];
  /** No plan can do with fewer stock pieces than this. */
  readonly lowerBound: number;
  /** Length in offcuts worth keeping; 0 where the order names no shortest. */
  readonly usable: Nm;
  /** What is neither part nor usable offcut, cuts included: stock bought = parts + usable + waste. */
  readonly waste: Nm;
}

/**
 * Cuts parts from stock pieces of one length, buying few.
 *
 * **Kerf.** A cut lies between two parts and after the last one, but a part that ends exactly at the stock's end needs none, and where less
 * than a kerf is left behind the last part the blade takes all of it. So n parts fit when Σ length + (n − 1) · kerf ≤ stock, which is
 * Σ (length + kerf) ≤ stock + kerf: with the kerf added to both, it drops out of the packing and of its bound. The offcut is
 * stock − Σ (length + kerf), at least 0.
 *
 * Two constructive heuristics run, and where both stay above the bound, column generation with an integer master looks for fewer pieces and a
 * higher bound, as long as the effort lasts. The better plan is taken: fewer stock pieces, then more length in offcuts worth keeping.
 * The plan depends on the multiset of lengths and the effort alone; of equal lengths the ids are given out in the order in which they came.
 *
 * @param effort how hard to look; `{ steps: 0 }` gives the constructive plan. The lower bound is valid whatever it is
 * @throws RangeError naming a part that is longer than the stock, or a length that is not a positive whole number of nm
 * @source see `firstFitDecreasing`, `fillLargest`, `lowerBound`, `patternSearch`
 */
export function cutStock(order: CutOrder, effort: Effort = USUAL_EFFORT): CutPlan {
  refuseBadLengths(order);
  const { stock, kerf, items } = order;
  const capacity = stock + kerf;
  const sizes = sizesOf(items, kerf);
  const wholes = sizes.filter(({ size }) => size === capacity).map(({ size, count }) => ({ sizes: [size], times: count }));
  const parts = packParts(sizes.filter(({ size }) => size < capacity), capacity, order, effort);
  const packing = [...wholes, ...parts.packing];
  const made = items.reduce((sum, { length }) => sum + length, 0);
  const usable = keptOffcuts(packing, order);
  const waste = stockLengths(packing) * stock - made - usable;
  return { bins: binsOf(packing, order), lowerBound: stockLengths(wholes) + parts.bound, usable, waste };
}

/**
 * How many stock pieces `cutStock` would cut: the same number, without a plan where bounds settle it.
 *
 * @param lengths distinct lengths, each positive and no longer than the stock, with how many there are of each [nm]
 */
export function stockPieces({ stock, kerf }: Pick<CutOrder, 'stock' | 'kerf'>, lengths: ReadonlyMap<Nm, number>): number {
  const { wholes, parts } = countedSizes(stock, kerf, lengths);
  const most = firstFitCount(parts, stock + kerf);
  if (most === cheapBound(parts, stock + kerf)) return wholes + most;
  return wholes + stockLengths(packParts(parts, stock + kerf, { stock, kerf, items: [] }, USUAL_EFFORT).packing);
}

/** Numbers between which `stockPieces` lies, found without any search. */
export function stockPiecesWithin({ stock, kerf }: Pick<CutOrder, 'stock' | 'kerf'>, lengths: ReadonlyMap<Nm, number>): { readonly least: number; readonly most: number } {
  const { wholes, parts } = countedSizes(stock, kerf, lengths);
  return { least: wholes + cheapBound(parts, stock + kerf), most: wholes + firstFitCount(parts, stock + kerf) };
}

function countedSizes(stock: Nm, kerf: Nm, lengths: ReadonlyMap<Nm, number>): { wholes: number; parts: SizeCount[] } {
  const parts: SizeCount[] = [];
  for (const [length, count] of lengths) if (length !== stock) parts.push({ size: length + kerf, count });
  return { wholes: lengths.get(stock) ?? 0, parts: parts.sort((a, b) => b.size - a.size) };
}

function packParts(parts: readonly SizeCount[], capacity: Nm, order: CutOrder, effort: Effort): Packed {
  const packing = better(firstFitDecreasing(parts, capacity), fillLargest(parts, capacity), order);
  const start = { packing, bound: lowerBound(parts, capacity, stockLengths(packing)) };
  const found = patternSearch(parts, capacity, start, new Budget(effort));
  return { packing: better(packing, found.packing, order), bound: found.bound };
}

function refuseBadLengths({ stock, kerf, items }: CutOrder): void {
  if (!Number.isSafeInteger(stock) || stock <= 0) throw new RangeError(`stock length ${stock} is not a positive whole number of nm`);
  if (!Number.isSafeInteger(kerf) || kerf < 0) throw new RangeError(`kerf ${kerf} is not a whole number of nm from 0`);
  for (const { id, length } of items) {
    if (!Number.isSafeInteger(length) || length <= 0) throw new RangeError(`part ${id}: length ${length} is not a positive whole number of nm`);
    if (length > stock) throw new RangeError(`part ${id}: length ${length} nm is longer than the stock of ${stock} nm`);
  }
}

/** Distinct sizes, kerf added, in descending order. */
function sizesOf(items: readonly CutItem[], kerf: Nm): readonly SizeCount[] {
  const counts = new Map<Nm, number>();
  for (const { length } of items) counts.set(length + kerf, (counts.get(length + kerf) ?? 0) + 1);
  return [...counts].map(([size, count]) => ({ size, count })).sort((a, b) => b.size - a.size);
}

function better(first: Packing, second: Packing, order: CutOrder): Packing {
  const bought = stockLengths(second) - stockLengths(first);
  if (bought !== 0) return bought < 0 ? second : first;
  return keptOffcuts(second, order) > keptOffcuts(first, order) ? second : first;
}

function keptOffcuts(packing: Packing, order: CutOrder): Nm {
  const { minOffcut } = order;
  if (minOffcut === undefined) return 0;
  return packing.reduce((total, { sizes, times }) => {
    const offcut = offcutOf(sizes.reduce((sum, size) => sum + size, 0), order);
    return offcut >= minOffcut ? total + offcut * times : total;
  }, 0);
}

/** Sizes carry a kerf each, so what they leave of the stock is short of the last cut already; a part at the very end needs none. */
const offcutOf = (used: Nm, { stock }: Pick<CutOrder, 'stock'>): Nm => Math.max(0, stock - used);

/** Parts of one size in the order in which they came, and how many of them are laid. */
interface Waiting {
  readonly items: CutItem[];
  laid: number;
}

function binsOf(packing: Packing, { items, kerf, stock }: CutOrder): readonly CutBin[] {
  const waiting = new Map<Nm, Waiting>();
  for (const item of items) {
    const queue = waiting.get(item.length + kerf);
    if (queue) queue.items.push(item);
    else waiting.set(item.length + kerf, { items: [item], laid: 0 });
  }
  const bins: CutBin[] = [];
  for (const { sizes, times } of packing) {
    for (let time = 0; time < times; time++) {
      let used = 0;
      const laid: CutBin['items'][number][] = [];
      for (const size of sizes) {
        const queue = waiting.get(size)!;
        const { id, length } = queue.items[queue.laid++]!;
        laid.push({ id, length, offset: used });
        used += size;
      }
      bins.push({ items: laid, offcut: offcutOf(used, { stock }) });
    }
  }
  return bins;
}
