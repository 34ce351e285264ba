/**
 * The fewest broken bonds of a line whose courses each have one stretch of forms at most: every way to fill every course is tried
 * over every way to fill the course below. Slow and obvious; written from decisions 9, 13 and 14 and the sentence of the bond.
 */
export interface SlowStretch {
  readonly from: number;
  readonly to: number;
  readonly overLeft: number;
  readonly overRight: number;
  /** Joints run from the left end's module, or from the right one's where that alone is a leg. */
  readonly fixedLeft: boolean;
  readonly fixedRight: boolean;
}

export interface SlowCourse {
  readonly stretches: readonly SlowStretch[];
  readonly fixedJoints: readonly number[];
  readonly forbidden: readonly { readonly from: number; readonly to: number }[];
}

export interface SlowRange {
  readonly formLength: number;
  readonly cutModule: number;
  readonly minPiece: number;
  readonly minStagger: number;
}

/** Joints of every way to fill a stretch: at most its two end pieces are sawn, neither below the minimum. */
function waysToFill(stretch: SlowStretch, { formLength, cutModule, minPiece }: SlowRange): number[][] {
  const [left, right] = [stretch.from - stretch.overLeft, stretch.to + stretch.overRight];
  if (right - left <= formLength) return [[]];
  const ways: number[][] = [];
  const fromRight = stretch.fixedRight && !stretch.fixedLeft;
  for (let steps = 0; formLength - steps * cutModule >= minPiece; steps++) {
    const lead = formLength - steps * cutModule;
    const joints: number[] = [];
    let at = fromRight ? right - lead : left + lead;
    while (at > left && at < right) {
      joints.push(at);
      at += fromRight ? -formLength : formLength;
    }
    joints.sort((a, b) => a - b);
    const edges = [left, ...joints, right];
    const pieces = edges.slice(1).map((edge, index) => edge - edges[index]!);
    const reaches = joints.every((joint) => joint > stretch.from && joint < stretch.to);
    if (reaches && pieces.every((piece) => piece >= minPiece && piece <= formLength)) ways.push(joints);
  }
  return ways;
}

/** Pairs of one joint of each, nearer than that. */
export const pairsCloser = (a: readonly number[], b: readonly number[], than: number): number =>
  a.reduce((count, one) => count + b.filter((other) => Math.abs(one - other) < than).length, 0);

/**
 * Ways and counts, each made once for what it is asked about: courses of one wall recur, and with them their ways and every pair
 * of ways. Still every way over every way.
 */
function remembered(range: SlowRange): { ways(stretch: SlowStretch): number[][]; closer(a: readonly number[], b: readonly number[]): number } {
  const filled = new Map<string, number[][]>();
  const counted = new Map<readonly number[], Map<readonly number[], number>>();
  return {
    ways: (stretch) => {
      const key = JSON.stringify(stretch);
      const ways = filled.get(key) ?? waysToFill(stretch, range);
      filled.set(key, ways);
      return ways;
    },
    closer: (a, b) => {
      const row = counted.get(a) ?? new Map<readonly number[], number>();
      counted.set(a, row);
      const count = row.get(b) ?? pairsCloser(a, b, range.minStagger);
      row.set(b, count);
      return count;
    },
  };
}

/** Joints near a tee first, then pairs of joints of successive courses closer than the stagger; those of two legs count for nobody. */
export function fewestBreaks(courses: readonly SlowCourse[], range: SlowRange): readonly [inCutOuts: number, breaks: number] {
  const { ways: waysOf, closer } = remembered(range);
  let states: { joints: readonly number[]; cost: readonly [number, number] }[] = [{ joints: [], cost: [0, 0] }];
  courses.forEach((course, index) => {
    const below = courses[index - 1]?.fixedJoints ?? [];
    const ways = course.stretches.length === 0 ? [[]] : waysOf(course.stretches[0]!);
    states = ways.map((joints) => {
      const inCutOuts = joints.reduce((count, at) => count + course.forbidden.filter(({ from, to }) => at > from && at < to).length, 0);
      const underLegs = pairsCloser(joints, below, range.minStagger);
      const costs = states.map((state): readonly [number, number] => [
        state.cost[0] + inCutOuts,
        state.cost[1] + underLegs + closer(joints, state.joints) + closer(course.fixedJoints, state.joints),
      ]);
      return { joints, cost: costs.reduce((best, next) => (next[0] - best[0] || next[1] - best[1]) < 0 ? next : best) };
    });
  });
  return states.map(({ cost }) => cost).reduce((best, next) => (next[0] - best[0] || next[1] - best[1]) < 0 ? next : best);
}
