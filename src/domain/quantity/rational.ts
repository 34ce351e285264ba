/** An exact number: numerator over a positive denominator. */
export interface Rational {
  readonly over: bigint;
  readonly under: bigint;
}

/** `12.375` or `.5` as it stands, digit by digit; the text must be digits with at most one point. */
export function decimalText(text: string): Rational {
  const [whole = '', part = ''] = text.split('.');
  return { over: BigInt(`${whole}${part}`), under: 10n ** BigInt(part.length) };
}

/** The number a double stands for when written with the fewest digits that give it back (`0.1` is one tenth). Finite values only. */
export function decimalOfNumber(value: number): Rational {
  const [mantissa = '0', exponent = '0'] = Math.abs(value).toString().split('e');
  const { over, under } = decimalText(mantissa);
  const shift = Number(exponent);
  const signed = value < 0 ? -over : over;
  return shift >= 0 ? { over: signed * 10n ** BigInt(shift), under } : { over: signed, under: under * 10n ** BigInt(-shift) };
}

export const sum = (a: Rational, b: Rational): Rational => ({
  over: a.over * b.under + b.over * a.under,
  under: a.under * b.under,
});

export const times = (a: Rational, factor: bigint): Rational => ({ over: a.over * factor, under: a.under });

/** The nearest whole number; a half goes away from zero, so that a mirrored value mirrors its rounding. */
export function nearest({ over, under }: Rational): bigint {
  const size = over < 0n ? -over : over;
  const rounded = (2n * size + under) / (2n * under);
  return over < 0n ? -rounded : rounded;
}
