import type { Nm } from '../quantity/length.js';
import type { LaidStorey, LaidWall } from '../takeoff/laid.js';

/** A branch that stands on a through wall: where its axis meets the through wall's [nm along the through wall's axis]. */
export interface TeeAxis {
  readonly branch: string;
  readonly station: Nm;
}

/** The branches that stand on a wall, in order from its start. */
export const teeAxes = (storey: LaidStorey, wall: LaidWall): TeeAxis[] =>
  storey.junctions
    .filter(({ id }) => !storey.junctions.some((below) => below.id !== id && id.startsWith(`${below.id}-L`)))
    .flatMap(({ tee }) =>
      tee?.through === wall.mark ? [{ branch: tee.branch, station: Math.round((tee.cutFrom + tee.cutTo) / 2) }] : [],
    )
    .sort((a, b) => a.station - b.station);
