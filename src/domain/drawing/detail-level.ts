import type { Nm } from '../quantity/length.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { Junction, LaidStorey } from '../takeoff/laid.js';
import type { DetailView } from './detail-legs.js';
import { isAt } from './elevation-frame.js';
import { lengthLabel } from './length-label.js';
import { wallAbove } from './plan-features.js';

/** The walls as they stand in the junction's own courses: over a change of cores on the upper one, with its axis. */
export function levelOf(junction: Junction, storey: LaidStorey): LaidStorey {
  const first = storey.walls.find(({ mark }) => mark === junction.walls[0]);
  const [course] = junction.courses;
  const bottom = first?.courses.find(({ n }) => n === course)?.bottom;
  if (first === undefined || bottom === undefined) return storey;
  const named = (id: string): string => (isAt(junction, id) ? junction.id : id);
  const walls = storey.walls.map((wall) => {
    const change = wall.coreChanges.findLast(({ at }) => wall.base + at <= first.base + bottom);
    const standing = change === undefined ? wall : wallAbove(wall, change);
    return { ...standing, startJunction: named(wall.startJunction), endJunction: named(wall.endJunction) };
  });
  return { ...storey, walls };
}

/** `Ledge on A: bears at 5'-4", 5" out`; tapers with their seat. */
export function mitreNotes(views: readonly DetailView[], storey: LaidStorey, junction: Junction, units: LengthUnit): string[] {
  const walls = storey.walls.filter(({ mark }) => junction.walls.includes(mark));
  const label = (value: Nm): string => lengthLabel(value, units);
  const has = (kind: DetailView['mitred']): boolean => views.some(({ mitred }) => mitred === kind);
  const ledges = walls.flatMap(({ mark, ledges: laid }) =>
    laid.map(({ face, bearing, projection }) => `Ledge on ${mark}, ${face}: bears at ${label(bearing)}, ${label(projection)} out`),
  );
  const tapers = walls.flatMap(({ mark, taper }) => (taper === null ? [] : [`Taper top on ${mark}: seat ${label(taper.seatGain)} wider at the top`]));
  return [...(has('ledge') ? ledges : []), ...(has('taper') ? tapers : [])];
}
