import type { CornerUnit, FormRange, Hand } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { radians } from '../geometry/vector.js';

/**
 * The catalogue unit for a corner of one core, or why there is none.
 *
 * A turn within `turnTolerance` of a unit's turn is that turn; fixed units are tried before hinged ones, as the range lists them.
 *
 * @param turn change of direction, either sign [deg]
 */
export function cornerUnitFor(turn: number, core: string, range: FormRange): CornerUnit | 'turn-acute' | 'turn-not-made' {
  const size = Math.abs(turn);
  const tolerance = range.parameters.turnToleranceDeg;
  const unit = range.corners.find(
    (candidate) => size >= candidate.minTurn - tolerance && size <= candidate.maxTurn + tolerance && candidate.legs.has(core),
  );
  if (unit) return unit;
  return size > range.parameters.turnAcuteFromDeg + tolerance ? 'turn-acute' : 'turn-not-made';
}

/**
 * What a corner unit's leg takes from a wall's axis, node to end of leg.
 *
 * The leg is measured on the convex face; the axis node lies back from the convex corner by (T2 − T1·cos θ)/(2·sin θ), which is
 * (T/2)·tan(θ/2) where both walls are equally thick.
 *
 * @equation take = leg − (T2 − T1·cos θ) / (2·sin θ)
 * @param leg    leg on the convex face [nm]
 * @param thickness      this wall over both foam faces, T1 [nm]
 * @param otherThickness the other wall, T2 [nm]
 * @param turn   θ, either sign, 0 < |θ| < 180 [deg]
 * @source statement of the project's decisions 3 and 4 (geometry)
 * @example T1 = 13, T2 = 9, θ = 90: 4.5 less than the leg
 */
export function legOnAxis(leg: Nm, thickness: Nm, otherThickness: Nm, turn: number): number {
  return leg - Math.round(nodeSetBack(thickness / 2, otherThickness / 2, Math.abs(turn)));
}

/**
 * How far along the first of two lines the meeting point of their parallels lies behind their own meeting point.
 *
 * Both parallels lie to the left at `offset` and `otherOffset`; walking the first line, then the second, turning by `turn`.
 *
 * @equation e = (o2 − o1·cos θ) / sin θ = o·tan(θ/2) for equal offsets
 * @param turn θ, positive to the left, not 0 and not ±180 [deg]
 */
export function nodeSetBack(offset: number, otherOffset: number, turn: number): number {
  const angle = radians(turn);
  if (offset === otherOffset) return offset * Math.tan(angle / 2);
  return (otherOffset - offset * Math.cos(angle)) / Math.sin(angle);
}

/**
 * Hand of a corner unit: the side on which its long leg lies when it is seen from its convex side.
 *
 * At a left turn the convex side is the outside and the arriving wall lies to the viewer's left; at a right turn it is reversed.
 */
export function handOf(turn: number, longOnArriving: boolean): Hand {
  return turn > 0 === longOnArriving ? 'left' : 'right';
}

export function cornerSku(unit: CornerUnit, core: string, hand: Hand): string {
  return unit.hands === 'two-skus' ? `${unit.prefix}${core}-${hand === 'left' ? 'L' : 'R'}` : `${unit.prefix}${core}`;
}
