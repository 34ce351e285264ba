import Big from 'big.js';
import { upToMultiple } from '../quantity/rounding.js';
import type { PriceItem } from './price-list.js';
import type { BrokenBundle } from './quote.js';
import { priceAt, type AudiencePrice, type UnitPrice } from './unit-price.js';

/** How all selling units of one sku are sold. */
export interface SkuSale {
  readonly unit: UnitPrice;
  /** Of each demand, in the order given. */
  readonly parts: readonly SoldPart[];
  /** Where a bundle may be broken and the need ends within one: what was weighed. */
  readonly broken: BrokenBundle | null;
}

export interface SoldPart {
  /** Already covered by the rest of the last bundle of the demands before. */
  readonly covered: number;
  readonly quantity: number;
  /** Of `quantity`, those beyond the whole bundles of the sku. */
  readonly loose: number;
}

/**
 * Sells one sku: whole bundles, or loose units at their surcharge where the bundle may be broken and that costs less.
 *
 * The demands on one sku (units, then spares) share bundles. Loose are the units beyond the whole bundles of all demands together, the
 * last of them first. Whole bundles and loose units are each priced at the break that their own quantity reaches; at equal cost the
 * customer gets the whole bundle.
 *
 * @param demands selling units of each demand before bundling, whole numbers
 * @param item    its bundle and whether one may be broken
 * @param prices  those that hold for the customer
 */
export function sellSku(demands: readonly number[], item: Pick<PriceItem, 'bundle' | 'breakBundle'>, prices: AudiencePrice): SkuSale {
  const bundle = item.bundle ?? 1;
  const needed = demands.reduce((sum, demand) => sum + demand, 0);
  const whole = upToMultiple(needed, bundle);
  const loose = needed % bundle;
  const unit = priceAt(prices, whole);
  if (item.breakBundle === null || loose === 0) return { unit, parts: inWholeBundles(demands, bundle), broken: null };
  const looseUnit = priceAt(prices, needed);
  const looseCost = new Big(looseUnit.unitPrice).times(new Big(item.breakBundle).times(loose).plus(needed));
  const wholeCost = new Big(unit.unitPrice).times(whole);
  const sold = wholeCost.lte(looseCost) ? 'whole' : 'loose';
  const broken = { surchargeRate: item.breakBundle, needed, loose, looseCost: looseCost.toFixed(), whole, wholeCost: wholeCost.toFixed(), sold } as const;
  return sold === 'whole' ? { unit, parts: inWholeBundles(demands, bundle), broken } : { unit: looseUnit, parts: withLoose(demands, needed - loose), broken };
}

/** Each demand takes up the bundles that the ones before did not reach: what is left of their last one is its own first. */
function inWholeBundles(demands: readonly number[], bundle: number): readonly SoldPart[] {
  let asked = 0;
  let sold = 0;
  return demands.map((demand) => {
    const covered = Math.min(sold - asked, demand);
    asked += demand;
    const quantity = upToMultiple(Math.max(asked - sold, 0), bundle);
    sold += quantity;
    return { covered, quantity, loose: 0 };
  });
}

/** @param bundled units in whole bundles; those of the first demands */
function withLoose(demands: readonly number[], bundled: number): readonly SoldPart[] {
  let asked = 0;
  return demands.map((demand) => {
    const before = Math.max(asked - bundled, 0);
    asked += demand;
    return { covered: 0, quantity: demand, loose: Math.max(asked - bundled, 0) - before };
  });
}
