import type { Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { EndName } from '../schedule/line-normalisation.js';

/** A branch that ends on the side of a through wall. Stations and ends are in walking direction. */
export interface Tee {
  readonly branch: number;
  readonly branchEnd: EndName;
  readonly through: number;
  /** Node on the through wall's axis, from its walking start. */
  readonly station: Nm;
  /** Angle between the two, 90 where square [deg]. */
  readonly angle: number;
  readonly square: boolean;
  readonly side: 'left' | 'right';
  /** Node to the through wall's near foam face, and to its near core face, along the branch's axis. */
  readonly formTrim: Nm;
  readonly coreTrim: Nm;
  /** What the branch's end is longer on one face than on its axis, where one of the two is a curve; null where both are straight. */
  readonly curvedOver: Nm | null;
  readonly crossing: boolean;
}

/** A tee whose station waits for the through wall's own nodes. */
export type Landing = Omit<Tee, 'station'> & { readonly node: Vector };
