import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { Opening } from '../schedule/schedule.js';
import { alongAxis } from './arc-axis.js';
import type { AxisWall } from './axes.js';
import type { LaidOpening } from './laid.js';
import type { Line } from './lines.js';

/** An opening of a line: stations along the line in walking direction, heights above the wall's base. */
export interface LineOpening extends LaidOpening {
  readonly wall: number;
}

/**
 * The opening on its wall's axis, walking. Where the wall is walked against the user's from→to the station is
 * length − value − width (decision 2). Forms stop at the hole; with end closures they run the closure's thickness into it.
 *
 * @param top  height of the chosen stack, and of a gable on it: what stands above it is open air [nm]
 */
export function openingOnAxis(opening: Opening, wall: AxisWall, range: FormRange, top: Nm): LaidOpening {
  const drawnAt = wall.reversed ? wall.drawn - opening.at - opening.width : opening.at;
  const onAxis = (drawn: Nm): Nm => (wall.arc ? Math.round(alongAxis(wall.arc, drawn)) : drawn) - wall.back.start;
  const from = onAxis(drawnAt);
  const to = onAxis(drawnAt + opening.width);
  const lap = opening.lining === 'end-closure' ? range.closure.thickness : 0;
  return {
    mark: opening.mark,
    from,
    to,
    sill: opening.sill,
    head: Math.min(opening.sill + opening.height, top),
    lining: opening.lining,
    formsFrom: from + lap,
    formsTo: to - lap,
  };
}

/** Every opening of a line in order of station; `riseOf` tells how much higher than its stack a wall's gable stands. */
export function openingsOf(line: Line, openings: ReadonlyMap<string, readonly Opening[]>, range: FormRange, riseOf: (wall: number) => Nm = () => 0): LineOpening[] {
  return line.walls
    .flatMap(({ wall, from }) =>
      (openings.get(wall.wall.mark) ?? []).map((opening): LineOpening => {
        const laid = openingOnAxis(opening, wall, range, line.stack.stack.height + riseOf(wall.index));
        return {
          ...laid,
          wall: wall.index,
          from: laid.from + from,
          to: laid.to + from,
          formsFrom: laid.formsFrom + from,
          formsTo: laid.formsTo + from,
        };
      }),
    )
    .sort((a, b) => a.from - b.from || a.sill - b.sill);
}

/** A course or strip is interrupted only where an opening takes its full height. */
export const takesWhole = (opening: LaidOpening, bottom: Nm, height: Nm): boolean =>
  opening.sill <= bottom && opening.head >= bottom + height && opening.formsTo > opening.formsFrom;

/** An opening that meets a course without taking it whole leaves a notch. */
export const meets = (opening: LaidOpening, bottom: Nm, height: Nm): boolean =>
  opening.sill < bottom + height && opening.head > bottom;
