/** What a layout costs, in the order in which it is compared: tee cut-outs and bond first, then forms, cuts, lost stagger, evenness. */
export type LayoutCost = readonly [inCutOuts: number, breaks: number, forms: number, cuts: number, lostStagger: number, spread: number];

/**
 * The same for the inside of the search, in four numbers that compare like the six: whole numbers far below the factors, so that sums
 * and differences compare like those of the parts.
 */
export interface Cost {
  /** Joints in a tee's cut-out or within one web of it, dearer than any broken bond (decision 9); then pairs closer than the stagger. */
  readonly faults: number;
  /** In `FORM_SHARE`; then cuts. */
  readonly forms: number;
  /** Half a form less the narrowest stagger, summed over the segments [nm]. */
  readonly lostStagger: number;
  readonly spread: number;
}

const CUT_OUT = 2 ** 26;
const FORM = 2 ** 20;

export const faultsOf = (inCutOuts: number, breaks: number): number => inCutOuts * CUT_OUT + breaks;
export const formsOf = (forms: number, cuts: number): number => forms * FORM + cuts;

export const asLayoutCost = ({ faults, forms, lostStagger, spread }: Cost): LayoutCost =>
  [Math.floor(faults / CUT_OUT), faults % CUT_OUT, Math.floor(forms / FORM), forms % FORM, lostStagger, spread];

export const asNamedCost = ([inCutOuts, breaks, forms, cuts, lostStagger, spread]: LayoutCost): Cost =>
  ({ faults: faultsOf(inCutOuts, breaks), forms: formsOf(forms, cuts), lostStagger, spread });

export function compareCost(a: LayoutCost, b: LayoutCost): number {
  for (let index = 0; index < a.length; index += 1) {
    const difference = a[index]! - b[index]!;
    if (difference !== 0) return difference;
  }
  return 0;
}
