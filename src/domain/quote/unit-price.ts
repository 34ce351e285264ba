import type { Discount, PriceItem, PriceList, QuantityPrice } from './price-list.js';

/** Whose prices a line has: everybody's, those of the customer's tier, or the customer's own. */
export type Audience = 'list' | 'tier' | 'customer';

/** The prices of one item that hold for one customer. */
export interface AudiencePrice extends QuantityPrice {
  readonly audience: Audience;
}

export interface UnitPrice {
  readonly unitPrice: string;
  readonly audience: Audience;
  /** The break that gave the price; null below the first. */
  readonly break: { readonly from: number } | null;
}

/** The most particular prices of an item: the organisation's own, else its tier's, else everybody's. One of them, never a mixture. */
export function audiencePrice(item: PriceItem, organisation: string, tier: string | null): AudiencePrice {
  const own = item.customers.get(organisation);
  if (own) return { audience: 'customer', ...own };
  const tiered = tier === null ? undefined : item.tiers.get(tier);
  return tiered ? { audience: 'tier', ...tiered } : { audience: 'list', price: item.price, breaks: item.breaks };
}

/** The price at a quantity: of the breaks not above it the one with the greatest `from`. @param quantity all selling units of the sku in the quote */
export function priceAt({ audience, price, breaks }: AudiencePrice, quantity: number): UnitPrice {
  const reached = breaks.filter(({ from }) => from <= quantity).at(-1);
  return { audience, unitPrice: reached?.price ?? price, break: reached ? { from: reached.from } : null };
}

/** The rate off a group of lines: the organisation's, else its tier's, else everybody's; one, never several. Null where none is listed. */
export function discountOf(discounts: readonly Discount[], group: string, organisation: string, tier: string | null): string | null {
  const ofGroup = discounts.filter((discount) => discount.group === group);
  const own = ofGroup.find((discount) => discount.organisation === organisation);
  const tiered = ofGroup.find((discount) => tier !== null && discount.tier === tier);
  const open = ofGroup.find((discount) => discount.organisation === null && discount.tier === null);
  return (own ?? tiered ?? open)?.rate ?? null;
}

/** The tier an organisation is in. */
export const tierOf = ({ customers }: Pick<PriceList, 'customers'>, organisation: string): string | null => customers.get(organisation)?.tier ?? null;
