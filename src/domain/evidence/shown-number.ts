/** A number as it is written in a trace or a sentence: at most six significant digits, no trailing zeros, no exponent. */
export function shownNumber(value: number): string {
  const rounded = Number(value.toPrecision(6));
  return Object.is(rounded, -0) ? '0' : rounded.toLocaleString('en-US', { useGrouping: false, maximumFractionDigits: 9 });
}
