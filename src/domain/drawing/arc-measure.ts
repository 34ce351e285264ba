import type { Nm } from '../quantity/length.js';
import type { LaidStorey, LaidWall } from '../takeoff/laid.js';

/** Lengths of a wall as its drawing is dimensioned, from lengths along its axis. */
export interface WallMeasure {
  /** Along the dimension line, along the axis where that is the same or the dimension line of a curve is not known. */
  readonly along: 'dimension line' | 'axis';
  readonly of: (axisLength: Nm) => Nm;
  /** Where the measured line begins and ends, as axis stations. */
  readonly start: Nm;
  readonly end: Nm;
  /** Of the whole line. */
  readonly length: Nm;
}

/** A radius wall's stations are scaled back from whole nanometres of its axis: off by at most this much [nm]. */
const SCALED = 2;
/** Of the two ends of a curve one is told; the other must lie where its own node says, as near as this [nm]. */
const NEAR = 1_000;
const GRID = { inch: 396_875, mm: 100_000 } as const;

/**
 * A radius wall is dimensioned along an arc concentric with its axis: lengths stand in the ratio of the radii (decision 21). The take-off
 * tells the axis' radius and the dimension line's length; which of the wall's lines was drawn follows from where its ends lie.
 */
export function measureOf(wall: LaidWall, storey: LaidStorey): WallMeasure {
  const start = -wall.startOffset;
  const level = { along: 'dimension line', of: (length: Nm): Nm => length, start, end: wall.dimensionLength + start, length: wall.dimensionLength } as const;
  if (wall.arc === null) return level;
  const ratio = ratioOf(wall, storey);
  if (ratio === null) return { along: 'axis', of: (length) => length, start: 0, end: wall.length, length: wall.length };
  const end = start + Math.round(wall.dimensionLength / ratio);
  return { ...level, end, of: (length) => onGrid(length * ratio) };
}

/** Radius of the dimension line over that of the axis; null where no line of the wall, or more than one, would end as this one does. */
function ratioOf(wall: LaidWall, storey: LaidStorey): number | null {
  const { arc, core, thickness, startOffset } = wall;
  if (arc === null) return null;
  const outward = (arc.turns === 'left') === (wall.outside === 'right') ? 1 : -1;
  const ratios = [0, core.width / 2, thickness / 2].map((offset) => (arc.axisRadius + outward * offset) / arc.axisRadius);
  const kinds = [wall.startJunction, wall.endJunction].map((id) => storey.junctions.find((junction) => junction.id === id));
  const [first, last] = kinds;
  const past = (ratio: number): number => wall.dimensionLength / ratio - wall.length - startOffset;
  const plain = last?.kind === 'free-end' || last?.kind === 'straight';
  const alike = first?.kind === 'corner' && last?.kind === 'corner' && Math.abs(first.turn - last.turn) < 1e-6;
  if (!plain && !alike) return null;
  const wanted = plain ? 0 : startOffset;
  const fitting = ratios.filter((ratio) => Math.abs(past(ratio) - wanted) < NEAR);
  return fitting.length === 1 ? (fitting[0] as number) : null;
}

function onGrid(value: number): Nm {
  for (const step of [GRID.inch, GRID.mm]) {
    const near = Math.round(value / step) * step;
    if (Math.abs(near - value) <= SCALED) return near;
  }
  return Math.round(value);
}
