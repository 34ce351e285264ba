import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { BondRun } from './layout-kinds.js';
import { offModule } from './placements.js';
import type { Segment } from './runs.js';

export interface Seam {
  readonly at: Nm;
  readonly remainder: Nm;
}

/** The shortest part of a run right of its seam, in 48ths of a form: candidates for the place of the seam. */
const SEAM_STEPS = [48, 32, 40, 24, 64, 96, 16, 8];

/** Splits the run that spans from leg to leg at the seam; other segments stay as they are. */
export function withSeam<T extends BondRun>(run: T, at: Nm, range: FormRange): T {
  const segments = run.segments.flatMap((segment): Segment[] => {
    if (offModule(segment, range) === 0 || at <= segment.from || at >= segment.to) return [segment];
    return [
      { ...segment, to: at, fixedRight: false, seamRight: true, overRight: 0 },
      { ...segment, from: at, fixedLeft: false, seamLeft: true, wholeAtSeam: true, overLeft: 0 },
    ];
  });
  return { ...run, segments };
}

/**
 * Places where a line's seam may stand: the same station in every course, a whole number of modules from the right-hand legs,
 * leaving no piece below the minimum on either side.
 */
export function seamPlaces(runs: readonly BondRun[], range: FormRange): Seam[] {
  const spans = runs.flatMap((run) => run.segments.filter((segment) => offModule(segment, range) > 0));
  if (spans.length === 0) return [];
  const left = Math.max(...spans.map((segment) => segment.from));
  const right = Math.min(...spans.map((segment) => segment.to));
  const remainder = offModule(spans[0]!, range);
  const step = range.formLength / 48;
  return SEAM_STEPS.map((steps) => ({ at: right - Math.round((steps * step) / range.cutModule) * range.cutModule, remainder }))
    .filter(({ at }) => at - left >= range.minPiece && right - at >= range.minPiece);
}

/** What is left of the module in a run too short to be parted; null where every run is whole modules. */
export function remainderAtLeg(runs: readonly BondRun[], range: FormRange): Nm | null {
  const span = runs.flatMap((run) => run.segments).find((segment) => offModule(segment, range) > 0);
  return span ? offModule(span, range) : null;
}
