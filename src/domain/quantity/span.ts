/** What a quantity may be: inside the span it is a number a method may judge, outside it is a slip of the pen. */
export interface Span {
  readonly above?: number;
  readonly from?: number;
  readonly to: number;
  /** The span in words: `more than 0 and at most 1000 ft`. */
  readonly says: string;
}

/** A value this close to an end is the end: what is left of a conversion. */
const SAME = 1e-12;

export function inSpan(value: number, { above = Number.NEGATIVE_INFINITY, from = Number.NEGATIVE_INFINITY, to }: Span): boolean {
  return value > above && value >= from - Math.abs(from) * SAME && value <= to + Math.abs(to) * SAME;
}
