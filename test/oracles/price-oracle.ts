/**
 * A second, slow pricing that shares nothing with the program: fractions of big integers, written from the trade rules.
 *
 * A unit sold in bundles is sold in whole ones; the rest of the last bundle counts as spares. Materials are sold in whole packs over
 * the job. A line is quantity times price to the nearest minor unit, tax is the subtotal times the rate, halves to the even unit.
 */
export interface OracleItem {
  readonly sku: string;
  readonly price: string;
  readonly bundle?: number;
}

export interface OracleJob {
  readonly units: readonly { readonly sku: string; readonly bought: bigint; readonly spare: bigint }[];
  /** Lengths in nanometres or counts of pieces, with the pack in the same measure. */
  readonly materials: readonly { readonly sku: string; readonly amount: bigint; readonly pack: bigint }[];
}

export interface OracleQuote {
  readonly amounts: readonly bigint[];
  readonly subtotal: bigint;
  readonly tax: bigint;
  readonly total: bigint;
}

interface Fraction {
  readonly n: bigint;
  readonly d: bigint;
}

export function pricedByOracle(job: OracleJob, items: readonly OracleItem[], minorDigits: number, rate: string | null): OracleQuote {
  const itemOf = (sku: string): OracleItem => items.filter((item) => item.sku === sku)[0] as OracleItem;
  const amounts: bigint[] = [];
  const sellTo = (sku: string, quantity: bigint): void => {
    const price = fraction(itemOf(sku).price);
    amounts.push(halfEven({ n: quantity * price.n * 10n ** BigInt(minorDigits), d: price.d }));
  };
  for (const { sku, bought, spare } of job.units) {
    const bundle = BigInt(itemOf(sku).bundle ?? 1);
    let inHand = 0n;
    while (inHand < bought) inHand += bundle;
    if (bought > 0n) sellTo(sku, inHand);
    let more = 0n;
    while (inHand + more < bought + spare) more += bundle;
    if (spare > 0n) sellTo(sku, more);
  }
  for (const { sku, amount, pack } of job.materials) {
    const bundle = BigInt(itemOf(sku).bundle ?? 1);
    let packs = amount / pack;
    while (packs * pack < amount) packs += 1n;
    while (packs % bundle !== 0n) packs += 1n;
    sellTo(sku, packs);
  }
  const subtotal = amounts.reduce((sum, amount) => sum + amount, 0n);
  const tax = rate === null ? 0n : halfEven({ n: subtotal * fraction(rate).n, d: fraction(rate).d });
  return { amounts, subtotal, tax, total: subtotal + tax };
}

function fraction(text: string): Fraction {
  const point = text.indexOf('.');
  const places = point < 0 ? 0 : text.length - point - 1;
  return { n: BigInt(text.replace('.', '')), d: 10n ** BigInt(places) };
}

/** The whole number nearest to n/d; from exactly between, the even one. Written by comparing distances. */
function halfEven({ n, d }: Fraction): bigint {
  const below = n / d;
  const above = below + 1n;
  const toBelow = n - below * d;
  const toAbove = above * d - n;
  if (toBelow < toAbove) return below;
  if (toAbove < toBelow) return above;
  return below % 2n === 0n ? below : above;
}
