/**
 * How many whole parts cover an amount: ⌈amount / part⌉ in integers, without a division that rounds.
 *
 * @param amount whole number ≥ 0 (nanometres, pieces)
 * @param part   whole number > 0, in the same unit
 * @throws       a defect where either is not such a number
 */
export function partsToCover(amount: number, part: number): number {
  if (!Number.isSafeInteger(amount) || !Number.isSafeInteger(part) || amount < 0 || part <= 0) {
    throw new RangeError(`${amount} cannot be covered by whole parts of ${part}`);
  }
  const rest = amount % part;
  return (amount - rest) / part + (rest > 0 ? 1 : 0);
}

/** The smallest multiple of `part` that is not less than `amount`. */
export const upToMultiple = (amount: number, part: number): number => partsToCover(amount, part) * part;

/**
 * The number that was meant by one turned back from another unit: twelve significant digits.
 *
 * 150 pcf held as kg/m³ and turned back is 150.00000000000003, and a printed limit must still count it as 150.
 */
export const meant = (value: number): number => Number(value.toPrecision(12));
