import type { Minor } from '../quantity/money.js';
import type { DraftLine } from './goods-lines.js';

export interface OwnCharge {
  readonly kind: 'minimum' | 'freight';
  readonly sku: string;
  readonly storey: string | null;
  readonly text: string;
  /** Major units, exact. */
  readonly price: string;
  readonly amountMinor: Minor;
  readonly rule: string;
}

/** A line that is no goods: one charge, once, for everybody the same and without discount. */
export function ownLine({ kind, sku, storey, text, price, amountMinor, rule }: OwnCharge): DraftLine {
  return {
    kind, storey, group: kind, sku, text, quantity: 1, unit: 'each', unitPrice: price, listPrice: price, break: null, audience: 'list',
    discountRate: null, looseQuantity: 0, surchargeRate: null, amountMinor,
    because: [{ rule, storey, wall: null, course: null, quantity: 1 }],
    selling: { needed: 1, neededUnit: 'each', pack: null, covered: 0, beforeBundling: 1, bundle: null, afterBundling: 1 },
  };
}
