import { decimalOfNumber } from '../quantity/rational.js';

/** A weight of one place, as a double stands when written: `0.1` is one tenth. */
export interface Weighed {
  readonly place: string;
  readonly quantity: number;
}

/**
 * Shares a whole number out by weights: each place gets the whole part of its share, then those with the largest remainders one more.
 *
 * Exact: weights are summed as fractions, so that neither their order nor a rounding decides. Equal remainders go in the order of `places`.
 *
 * @param total   whole number ≥ 0
 * @param weights ≥ 0, at least one of them above; places that are not in `places` are left out
 * @param places  in order, each once
 * @returns       whole numbers in the order of `places`, their sum `total`; all nought where nothing weighs
 */
export function sharesOf(total: number, weights: readonly Weighed[], places: readonly string[]): readonly number[] {
  const parts = weights.map(({ place, quantity }) => ({ place, ...decimalOfNumber(quantity) }));
  const under = parts.reduce((most, part) => (part.under > most ? part.under : most), 1n);
  const byPlace = new Map<string, bigint>();
  for (const part of parts) byPlace.set(part.place, (byPlace.get(part.place) ?? 0n) + part.over * (under / part.under));
  const sums = places.map((place) => byPlace.get(place) ?? 0n);
  const whole = sums.reduce((sum, each) => sum + each, 0n);
  if (whole === 0n) return places.map(() => 0);
  const shares = sums.map((sum) => Number((BigInt(total) * sum) / whole));
  const rest = sums.map((sum, index) => ({ index, left: (BigInt(total) * sum) % whole })).sort((a, b) => (a.left === b.left ? a.index - b.index : a.left > b.left ? -1 : 1));
  const missing = total - shares.reduce((sum, share) => sum + share, 0);
  const more = new Set(rest.slice(0, missing).map(({ index }) => index));
  return shares.map((share, index) => share + (more.has(index) ? 1 : 0));
}
