import { NM_PER_FOOT } from '../quantity/length.js';
import { partsToCover, upToMultiple } from '../quantity/rounding.js';
import type { PriceItem } from './price-list.js';
import type { Selling } from './quote.js';

/** What a job needs of one sku. */
export interface Need {
  readonly needed: number;
  readonly neededUnit: 'each' | 'ft';
  /** Contents of a pack of a material; null for units, which are sold one by one. */
  readonly pack: { readonly quantity: number; readonly unit: 'each' | 'ft' } | null;
  /** Already bought with the line above. */
  readonly covered: number;
}

/**
 * From what a job needs to what is sold: whole packs, once for the whole job, then whole bundles.
 *
 * Feet are brought back to whole nanometres first, so that 300 ft are two packs of 150 ft and not three.
 *
 * @returns null where the item is sold in a unit that the need cannot be counted in (a form by the foot, a tape by the piece)
 */
export function sell({ needed, neededUnit, pack, covered }: Need, item: PriceItem): Selling | null {
  const size = partSize({ neededUnit, pack }, item);
  if (size === null) return null;
  const beforeBundling = partsToCover(wholeNumber(needed - covered, neededUnit), wholeNumber(size, neededUnit));
  return {
    needed,
    neededUnit,
    pack: item.unit === 'pack' ? size : null,
    covered,
    beforeBundling,
    bundle: item.bundle,
    afterBundling: item.bundle === null ? beforeBundling : upToMultiple(beforeBundling, item.bundle),
  };
}

/** How much of the need one selling unit covers. */
function partSize({ neededUnit, pack }: Pick<Need, 'neededUnit' | 'pack'>, { unit }: PriceItem): number | null {
  if (unit === 'pack') return pack?.unit === neededUnit ? pack.quantity : null;
  return unit === neededUnit ? 1 : null;
}

function wholeNumber(quantity: number, unit: 'each' | 'ft'): number {
  return unit === 'ft' ? Math.round(quantity * NM_PER_FOOT) : quantity;
}
