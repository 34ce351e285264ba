/** What a layout costs, in the order in which it is compared: tee cut-outs and bond first, then forms, cuts, lost stagger, evenness. */
export type LayoutCost = readonly [inCutOuts: number, breaks: number, forms: number, cuts: number, lostStagger: number, spread: number];

/** The same with names, for the inside of the search. */
export interface Cost {
  /** Joints in a tee's cut-out or within one web of it: dearer than any broken bond (decision 9). */
  readonly inCutOuts: number;
  /** Pairs of joints of successive courses closer than the stagger. */
  readonly breaks: number;
  /** In `FORM_SHARE`. */
  readonly forms: number;
  readonly cuts: number;
  /** Half a form less the narrowest stagger, summed over the segments [nm]. */
  readonly lostStagger: number;
  readonly spread: number;
}

export const FREE: Cost = { inCutOuts: 0, breaks: 0, forms: 0, cuts: 0, lostStagger: 0, spread: 0 };

export const asLayoutCost = (cost: Cost): LayoutCost => [cost.inCutOuts, cost.breaks, cost.forms, cost.cuts, cost.lostStagger, cost.spread];

export const asNamedCost = ([inCutOuts, breaks, forms, cuts, lostStagger, spread]: LayoutCost): Cost => ({ inCutOuts, breaks, forms, cuts, lostStagger, spread });

export function compareNamed(a: Cost, b: Cost): number {
  return (
    a.inCutOuts - b.inCutOuts || a.breaks - b.breaks || a.forms - b.forms || a.cuts - b.cuts || a.lostStagger - b.lostStagger || a.spread - b.spread
  );
}

export function compareCost(a: LayoutCost, b: LayoutCost): number {
  for (let index = 0; index < a.length; index += 1) {
    const difference = a[index]! - b[index]!;
    if (difference !== 0) return difference;
  }
  return 0;
}
