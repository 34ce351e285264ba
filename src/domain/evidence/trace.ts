/** One step of a calculation as an engineer would write it: symbols, substituted numbers, value, source. */
export interface TraceStep {
  readonly name: string;
  /** In the source's symbols: `p = Cw · Cc · (150 + 9000 · R / T)`. */
  readonly equation: string;
  /** The same with numbers: `1 · 1 · (150 + 9000 · 6 / 80)`. */
  readonly substituted: string;
  readonly value: number;
  readonly unit: string;
  /** Key of the bibliography, with clause or equation number. */
  readonly source: string;
}
