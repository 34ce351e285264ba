import type { Nm } from '../quantity/length.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { LaidSlope, LaidWall } from '../takeoff/laid.js';
import type { ElevationFrame } from './elevation-frame.js';
import { lengthLabel } from './length-label.js';
import { TEXT_MM } from './sheet.js';
import { slopeEnds } from './slope-outline.js';

/** From the slope to its dimension line, and from that to the middle of its letters [mm of paper]. */
const LINE_MM = 4.4;
const TEXT_OFF_MM = 1.7;
const SIDE_MM = 1;
/** Places along the slope where its letters may stand, the best first. */
const SHARES = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74];
const CLEAR_MM = 1.2;
/** Room beside the wall that the dimension of a steep slope takes at its foot [mm of paper]. */
export const slopeSideMm = ({ gable }: Pick<LaidWall, 'gable'>): number =>
  Math.max(0, ...(gable?.slopes ?? []).map(({ degrees }) => (LINE_MM + SIDE_MM) * Math.sin((degrees * Math.PI) / 180)));
/** Height over a slope that its dimension takes [mm of paper]. */
export const SLOPE_ROOM_MM = LINE_MM + TEXT_OFF_MM + 1.4;

/** The edge the forms are sawn to: a heavy line along every slope, and upright at the high end of a one-sided one. */
export function drawSlopes(frame: ElevationFrame): void {
  const { gable, stack } = frame.wall;
  if (gable === null) return;
  const foot = frame.y(stack.height);
  for (const slope of gable.slopes) {
    const ends = slopeEnds(slope, gable);
    const [a, b] = [ends.foot, ends.head].map(({ at, height }) => ({ x: frame.x(at), y: foot + height }));
    if (a === undefined || b === undefined) continue;
    frame.sheet.line('slope', a, b);
    if (gable.slopes.length === 1) frame.sheet.line('slope', b, { x: b.x, y: foot });
  }
}

/**
 * Along every slope its length and its angle to the horizontal.
 *
 * @param uprights sheet places where leaders rise through the slope's dimension: its letters keep off them
 */
export function dimensionSlopes(frame: ElevationFrame, uprights: readonly Nm[]): void {
  const { gable, stack } = frame.wall;
  if (gable === null) return;
  for (const slope of gable.slopes) {
    const { foot, head } = slopeEnds(slope, gable);
    const from = { x: frame.x(foot.at), y: frame.y(stack.height) };
    const to = { x: frame.x(head.at), y: frame.y(stack.height + head.height) };
    const run = Math.hypot(to.x - from.x, to.y - from.y);
    const along = { x: (to.x - from.x) / run, y: (to.y - from.y) / run };
    // to the upper side of the slope
    const up = along.x >= 0 ? { x: -along.y, y: along.x } : { x: along.y, y: -along.x };
    const off = (point: { x: number; y: number }, mm: number): { x: Nm; y: Nm } => ({
      x: Math.round(point.x + up.x * frame.sheet.mm(mm)),
      y: Math.round(point.y + up.y * frame.sheet.mm(mm)),
    });
    const text = slopeText(slope, frame.units);
    const letters = frame.sheet.widthOf(text, TEXT_MM.small) / 2;
    const half = letters * Math.abs(along.x) + frame.sheet.mm(CLEAR_MM);
    const at = (share: number): { x: number; y: number } => ({ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share });
    const clear = (share: number): boolean =>
      Math.min(share, 1 - share) * run > letters &&
      uprights.every((x) => Math.abs(off(at(share), LINE_MM + TEXT_OFF_MM).x - x) > half);
    const textAt = off(at(SHARES.find(clear) ?? 0.5), LINE_MM + TEXT_OFF_MM);
    const angle = (Math.atan2(along.y * Math.sign(along.x || 1), Math.abs(along.x)) * 180) / Math.PI;
    frame.sheet.dimension(from, to, off(from, LINE_MM), off(to, LINE_MM), text, textAt, Math.round(angle * 1000) / 1000);
  }
}

/** `11'-2 3/16" at 26.6°`. */
const slopeText = ({ length, degrees }: LaidSlope, units: LengthUnit): string =>
  `${lengthLabel(length, units)} at ${Math.round(degrees * 10) / 10}°`;

/** `Slope: rises 5'-0" over 6 courses, highest 10'-0" from the start; sawn faces 11'-2 3/16" at 26.6° and …`. */
export function slopeNotes({ gable, startOffset }: LaidWall, units: LengthUnit): string[] {
  if (gable === null) return [];
  const peak = lengthLabel(gable.peakAt + startOffset, units);
  const faces = gable.slopes.map((slope) => slopeText(slope, units)).join(' and ');
  const name = gable.slopes.length === 1 ? 'One slope' : 'Gable';
  return [`${name}: rises ${lengthLabel(gable.rise, units)} in ${gable.courses} courses, highest ${peak} from the start; ${faces}`];
}
