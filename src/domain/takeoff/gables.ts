import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { Schedule } from '../schedule/schedule.js';
import { userStation, type AxisWall } from './axes.js';
import type { LaidGable, LaidSlope, Piece } from './laid.js';
import type { Layer } from './stack.js';

/** The slope over one wall, in walking direction: axis stations, heights above the stack's top. */
export interface Gable {
  readonly rise: Nm;
  /** Where the dimension line begins, ends, and where the slope is highest; the first two may lie past the axis' nodes. */
  readonly foot: Nm;
  readonly peak: Nm;
  readonly end: Nm;
}

/** Gables of a schedule by the wall's mark, as drawn: peak from the user's own `from` along the dimension line. */
export function gablesByMark(schedule: Schedule): ReadonlyMap<string, { readonly rise: Nm; readonly peakAt: Nm }> {
  return new Map(schedule.features.flatMap((feature) => (feature.kind === 'gable' ? [[feature.wall, feature] as const] : [])));
}

/**
 * The slope of a wall, brought to its axis in walking direction.
 *
 * @source statement of the project's decision 22
 */
export function gableOnAxis({ rise, peakAt }: { readonly rise: Nm; readonly peakAt: Nm }, wall: AxisWall): Gable {
  const drawnPeak = wall.reversed ? wall.drawn - peakAt : peakAt;
  const foot = 0 - wall.back.start;
  return { rise, foot, peak: foot + drawnPeak, end: foot + wall.drawn };
}

/** Height of the slope above the stack's top at an axis station; 0 outside the dimension line's ends [nm, fractional]. */
export function heightAt({ rise, foot, peak, end }: Gable, at: number): number {
  if (at < foot || at > end) return 0;
  if (at === peak) return rise;
  return at < peak ? (rise * (at - foot)) / (peak - foot) : (rise * (end - at)) / (end - peak);
}

/** Stations between which the slope stands above a height; a vertical end stands at the dimension line's own end. */
export function stretchAbove({ rise, foot, peak, end }: Gable, height: Nm): { from: Nm; to: Nm } {
  return { from: foot + Math.round(((peak - foot) * height) / rise), to: end - Math.round(((end - peak) * height) / rise) };
}

/** The courses above a stack: whole ones, and what is left of the rise at the top. */
export function gableLayers(rise: Nm, stack: { readonly courses: number; readonly height: Nm }, { courseHeight }: Pick<FormRange, 'courseHeight'>): Layer[] {
  const count = Math.ceil(rise / courseHeight);
  return Array.from({ length: count }, (_, index): Layer => ({
    kind: 'course',
    course: stack.courses + 1 + index,
    bottom: stack.height + index * courseHeight,
    height: Math.min(courseHeight, rise - index * courseHeight),
    ripped: false,
  }));
}

/** Whether a one-sided slope ends upright at a node. */
export const isUpright = ({ foot, peak, end }: Gable, name: 'start' | 'end'): boolean => (name === 'start' ? peak === foot : peak === end);

/**
 * Whether a course of a one-sided slope is built into its neighbour at the upright end: at a corner only where a form's length of it stands
 * there, straight on wherever it stands.
 *
 * @param run    of the slope along the dimension line
 * @param bottom of the course above the stack's top
 */
export const bondsUpright = (run: Nm, rise: Nm, bottom: Nm, least: Nm): boolean => run - (run * bottom) / rise >= least;

/**
 * What is left of a piece in a course under a slope: the heights at its ends, and the peak where it stands between them. Null where the
 * whole course stands.
 *
 * @param from,to axis stations in walking direction
 * @param bottom  of the course above the stack's top
 */
export function slopeOf(gable: Gable, from: Nm, to: Nm, bottom: Nm, height: Nm): Piece['slope'] {
  const left = (at: number): Nm => Math.round(Math.min(height, Math.max(0, heightAt(gable, at) - bottom)));
  const [fromHeight, toHeight] = [left(from), left(to)];
  const within = gable.peak > from && gable.peak < to;
  const peak = within ? { at: gable.peak, height: left(gable.peak) } : null;
  return fromHeight === height && toHeight === height ? null : { fromHeight, toHeight, peak };
}

function slopesOf(gable: Gable, wall: AxisWall): LaidSlope[] {
  const slope = (low: Nm, high: Nm): LaidSlope[] => {
    const run = Math.abs(high - low);
    if (run === 0) return [];
    const length = Math.hypot(run, gable.rise);
    const [a, b] = [userStation(wall, low), userStation(wall, high)];
    return [
      {
        from: Math.min(a, b),
        to: Math.max(a, b),
        rises: a < b ? 'with-stations' : 'against-stations',
        length: Math.round(length),
        degrees: (Math.atan2(gable.rise, run) * 180) / Math.PI,
        capMm2: (length * wall.core.width) / 1e12,
      },
    ];
  };
  return [...slope(gable.foot, gable.peak), ...slope(gable.end, gable.peak)].sort((a, b) => a.from - b.from);
}

/** A gable as later stages read it, in the user's own direction. */
export function laidGable(gable: Gable, wall: AxisWall, courses: number): LaidGable {
  return { rise: gable.rise, peakAt: userStation(wall, gable.peak), courses, slopes: slopesOf(gable, wall) };
}
