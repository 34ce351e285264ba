import type { Nm } from '../quantity/length.js';
import { generateColumns } from './column-generation.js';
import type { Budget } from './effort.js';
import { farleyBound } from './farley-bound.js';
import { fillEvenly } from './fill-evenly.js';
import { fillLargest } from './fill-largest.js';
import { firstFitDecreasing } from './first-fit-decreasing.js';
import { integerMaster } from './integer-master.js';
import { lowerBound } from './lower-bound.js';
import { stockLengths, type Packed, type Packing, type PackingSearch, type SizeCount } from './packing.js';
import { columnOf, PatternMaster, type Column } from './pattern-master.js';

/** Past so many distinct sizes the programme is too large for a plan somebody waits for. */
const SIZES_PER_PROGRAMME = 400;
/** From so many distinct sizes on good fillings abound, and most parts are laid without the programme first. */
const SIZES_TO_MIX = 200;
/** Most of the budget that the fractions may cost; the rest is for the bound and the whole counts. */
const FRACTION_SHARE = 0.6;

/**
 * Column generation, the bound its values give, and whole counts from its fractions.
 *
 * Where there are many distinct sizes, most parts are first laid evenly and only the rest by the programme; past
 * `SIZES_PER_PROGRAMME` there is no programme over all of them and the bound stays as it was. The programme starts from the patterns of
 * the packing handed in; nothing is looked for where that meets the bound.
 */
export const patternSearch: PackingSearch = (sizes, capacity, start, budget) => {
  if (budget.spent || stockLengths(start.packing) <= start.bound) return start;
  if (sizes.length <= SIZES_TO_MIX) return programme(sizes, capacity, start, budget);
  const mixed = { packing: mixedSearch(sizes, capacity, start, budget.share(1 / 3)), bound: start.bound };
  if (sizes.length > SIZES_PER_PROGRAMME || stockLengths(mixed.packing) <= mixed.bound + 1) return mixed;
  return programme(sizes, capacity, mixed, budget, start.packing);
};

/** @param from the packing whose patterns the programme starts from: few patterns cut often serve it better than many cut once */
function programme(sizes: readonly SizeCount[], capacity: Nm, { packing, bound }: Packed, budget: Budget, from = packing): Packed {
  const master = new PatternMaster(sizes, capacity);
  for (const column of columnsOf(from, sizes)) master.enter(column);
  generateColumns(master, sizes, capacity, budget.share(FRACTION_SHARE), bound);
  const proven = Math.max(bound, farleyBound(sizes, master.values, capacity, budget));
  return { packing: integerMaster(master, sizes, capacity, { target: proven, best: packing, budget }), bound: proven };
}

/** Most of the parts laid evenly, the rest by the programme. */
function mixedSearch(sizes: readonly SizeCount[], capacity: Nm, { packing, bound }: Packed, budget: Budget): Packing {
  const { packing: even, rest } = fillEvenly(sizes, capacity, bound);
  const start = [firstFitDecreasing(rest, capacity), fillLargest(rest, capacity)].reduce(fewer);
  const known = { packing: start, bound: lowerBound(rest, capacity) };
  const wanted = rest.length <= SIZES_TO_MIX && even.length > 0 && !budget.spent && stockLengths(start) > known.bound;
  return fewer(packing, [...even, ...(wanted ? programme(rest, capacity, known, budget).packing : start)]);
}

const fewer = (a: Packing, b: Packing): Packing => (stockLengths(b) < stockLengths(a) ? b : a);

function columnsOf(packing: Packing, sizes: readonly SizeCount[]): readonly Column[] {
  const rows = new Map(sizes.map(({ size }, row) => [size, row]));
  return packing.map((pattern) => {
    const counts = sizes.map(() => 0);
    for (const size of pattern.sizes) counts[rows.get(size)!]! += 1;
    return columnOf(counts);
  });
}
