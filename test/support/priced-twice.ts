import type { Quote } from '../../src/domain/quote/quote.js';
import type { OracleQuote } from '../oracles/price-oracle.js';

/** Whether a quote is the oracle's to the minor unit, and adds up by itself; `wrong` says in words where it is not. */
export function agrees(quote: Quote, expected: OracleQuote): { readonly wrong: string | null } {
  const trucks = quote.freight?.deliveries.map((delivery) => delivery.trucks) ?? [];
  let delivery = 0;
  const lines = quote.lines.map(({ kind, sku, storey, quantity, looseQuantity, amountMinor }) => {
    const on = kind === 'freight' ? ` on ${trucks[delivery++]}` : '';
    return `${kind} ${sku} ${storey ?? '-'} ${quantity} ${looseQuantity} ${amountMinor}${on}`;
  });
  const sum = (parts: readonly { readonly amountMinor: number }[]): number => parts.reduce((total, { amountMinor }) => total + amountMinor, 0);
  const checks = [
    [lines.join('; '), expected.lines.join('; ')],
    [quote.taxes.map(({ amountMinor }) => amountMinor).join(), expected.taxes.join()],
    [`${quote.subtotalMinor} ${quote.totalMinor}`, `${expected.subtotal} ${expected.total}`],
    [`${quote.totalMinor}`, `${sum(quote.lines) + sum(quote.taxes)}`],
    [quote.lines.map(({ n }) => n).join(), quote.lines.map((_, index) => index + 1).join()],
  ] as const;
  const wrong = checks.find(([own, other]) => own !== other);
  return { wrong: wrong ? `${wrong[0]} where the oracle has ${wrong[1]}` : null };
}
