import { cutStock } from '../cutting/index.js';
import { feet, NM_PER_FOOT, toMm } from '../quantity/length.js';
import { partsToCover } from '../quantity/rounding.js';
import type { BarPiece } from '../reinforcement/material-line.js';
import type { SoldPart } from './bundling.js';
import type { PriceItem, SellingUnit } from './price-list.js';
import type { BarCutting, BrokenBundle, Selling } from './quote.js';

/** What a job needs of one sku. */
export interface Need {
  readonly needed: number;
  readonly neededUnit: 'each' | 'ft';
  /** Contents of a pack of a material; null for units, which are sold one by one. */
  readonly pack: { readonly quantity: number; readonly unit: 'each' | 'ft' } | null;
  /** Bars: the pieces the need is made of, none of which can be made up of two; a pack is then one stock bar. */
  readonly pieces?: readonly BarPiece[];
}

/** A need in selling units, before bundling. */
export interface Demand {
  readonly count: number;
  readonly pack: number | null;
  readonly cutting?: BarCutting;
}

/**
 * From what a job needs to what is asked of the supplier: whole selling units, whole packs once for the whole job.
 *
 * A bar sold by the pack is cut from whole stock bars, no width lost to a cut: 36 pieces of 46 in take eight bars of 20 ft, five from
 * each, where their total length would fit into seven. Feet are brought back to whole nanometres first, so that 300 ft are two packs of 150 ft and not three.
 *
 * @returns null where the item is sold in a unit that the need cannot be counted in (a form by the foot, a tape by the piece)
 */
export function demandOf({ needed, neededUnit, pack, pieces }: Need, { unit }: Pick<PriceItem, 'unit'>): Demand | null {
  const size = partSize({ neededUnit, pack }, unit);
  if (size === null) return null;
  const bars = unit === 'pack' && pieces !== undefined && neededUnit === 'ft' ? cutBars(size, pieces) : null;
  const count = bars?.count ?? partsToCover(wholeNumber(needed, neededUnit), wholeNumber(size, neededUnit));
  return { count, pack: unit === 'pack' ? size : null, ...(bars && { cutting: bars.cutting }) };
}

/** The trace of a line: what was needed, what was asked for, what is sold. @param bundle null where the item is sold one by one */
export function sellingOf({ needed, neededUnit }: Need, { count, pack, cutting }: Demand, { covered, quantity }: SoldPart, bundle: number | null, broken: BrokenBundle | null): Selling {
  return { needed, neededUnit, pack, covered, ...(cutting && { cutting }), beforeBundling: count - covered, bundle, afterBundling: quantity, ...(broken && { broken }) };
}

/** How much of the need one selling unit covers. */
function partSize({ neededUnit, pack }: Pick<Need, 'neededUnit' | 'pack'>, unit: SellingUnit): number | null {
  if (unit === 'pack') return pack?.unit === neededUnit ? pack.quantity : null;
  return unit === neededUnit ? 1 : null;
}

function cutBars(stockFt: number, pieces: readonly BarPiece[]): { readonly count: number; readonly cutting: BarCutting } {
  const stock = feet(stockFt);
  const items = pieces.flatMap(({ length, count }, size) => Array.from({ length: count }, (_, n) => ({ id: `${size}-${n}`, length })));
  const { bins, lowerBound } = cutStock({ stock, kerf: 0, items });
  const listed = pieces.map(({ length, count }) => ({ lengthMm: toMm(length), count }));
  return { count: bins.length, cutting: { stockMm: toMm(stock), pieces: listed, lowerBound } };
}

function wholeNumber(quantity: number, unit: 'each' | 'ft'): number {
  return unit === 'ft' ? Math.round(quantity * NM_PER_FOOT) : quantity;
}
