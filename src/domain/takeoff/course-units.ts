import type { Core, FormRange, UnitKind } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { EndName } from '../schedule/line-normalisation.js';
import { FOLDED_DEG, type AxisWall } from './axes.js';
import { nodeSetBack } from './corners.js';
import type { PieceKind } from './laid.js';
import type { StoreyPlan } from './storey-plan.js';

/** What the forms of a stretch are. */
export type FormUnit = 'straight' | 'ledge' | 'taper-one' | 'taper-both';

/** A ledge of one wall, brought to its axis in walking direction. */
export interface PlannedLedge {
  readonly wall: AxisWall;
  readonly face: 'outside' | 'inside';
  readonly course: number;
  /** Bottom of its course above the wall's base, and above the storey. */
  readonly bottom: Nm;
  readonly elevation: Nm;
  readonly asked: Nm;
  readonly bearing: Nm;
  /** Axis stations as asked; an open end runs on to whatever stands at the wall's end. */
  readonly from: Nm;
  readonly to: Nm;
  readonly open: Readonly<Record<EndName, boolean>>;
}

/** The tapered top course of one wall. */
export interface PlannedTaper {
  readonly wall: AxisWall;
  readonly faces: 'one' | 'both';
  readonly course: number;
  readonly elevation: Nm;
  readonly height: Nm;
}

/** Ledges and taper tops of a storey, by the index of their wall. */
export interface CourseUnits {
  readonly ledges: ReadonlyMap<number, readonly PlannedLedge[]>;
  readonly tapers: ReadonlyMap<number, PlannedTaper>;
}

export const NO_UNITS: CourseUnits = { ledges: new Map(), tapers: new Map() };

const OTHER_END = { start: 'end', end: 'start' } as const;

/** The face of a wall on its right or left as it is walked: the outside lies on the right. */
export const lateral = (face: 'outside' | 'inside'): 1 | -1 => (face === 'outside' ? 1 : -1);

/** Kind and sku of the forms of a stretch. */
export function formOf(unit: FormUnit, core: Core, range: FormRange): { readonly kind: PieceKind; readonly sku: string } {
  if (unit === 'ledge') return { kind: 'ledge', sku: `${range.ledge!.prefix}${core.code}` };
  if (unit === 'straight') return { kind: 'straight', sku: `${range.straightPrefix}${core.code}` };
  return { kind: 'taper-top', sku: `${range.taperTop!.prefix}${core.code}-${unit === 'taper-one' ? 1 : 2}` };
}

/** Forms laid end to end along a wall, and cut from whole ones: not corner units, not closures. */
export const isForm = (kind: PieceKind | UnitKind): boolean => kind === 'straight' || kind === 'ledge' || kind === 'taper-top';

const ledgesIn = (wall: number, elevation: Nm, { ledges }: CourseUnits): readonly PlannedLedge[] =>
  (ledges.get(wall) ?? []).filter((ledge) => ledge.elevation === elevation);

/** How far from a wall's end the nearest ledge of a course stands, along the walls that run straight on; −Infinity where it is open. */
function nearestLedge(wall: number, end: EndName, elevation: Nm, within: Nm, plan: StoreyPlan, units: CourseUnits): Nm {
  let passed = 0;
  let at = wall;
  for (let steps = 0; passed < within && steps < plan.walls.length; steps += 1) {
    const length = Math.max(0, plan.walls[at]!.length);
    const away = ledgesIn(at, elevation, units).map((ledge) => {
      if (ledge.open[end]) return steps === 0 ? -Infinity : passed;
      return passed + (end === 'start' ? ledge.from : length - ledge.to);
    });
    if (away.length > 0) return Math.min(...away);
    const joint = plan.joints[at]![OTHER_END[end]];
    if (joint.kind !== 'straight') return Infinity;
    passed += length;
    at = joint.partner;
  }
  return Infinity;
}

/** Whether both walls of a corner carry a ledge on the same face to it in one course. */
export function ledgesMeet(wall: number, end: EndName, elevation: Nm, face: 'outside' | 'inside', plan: StoreyPlan, units: CourseUnits): boolean {
  const joint = plan.joints[wall]![end];
  if (joint.kind !== 'corner' || isFolded(joint.turn)) return false;
  const carries = (index: number, name: EndName): boolean => ledgesIn(index, elevation, units).some((ledge) => ledge.face === face && ledge.open[name]);
  return carries(wall, end) && carries(joint.partner, OTHER_END[end]);
}

export const isFolded = (turn: number): boolean => Math.abs(turn) > FOLDED_DEG;

/**
 * Where a face's line meets that of the other wall of a corner: past the axis node, negative before it.
 *
 * @param out how far the line lies outside the foam face; the projection of a ledge, or 0
 */
export function faceTip(thickness: Nm, otherThickness: Nm, turn: number, face: 'outside' | 'inside', out: Nm): Nm {
  return Math.round(lateral(face) * nodeSetBack(thickness / 2 + out, otherThickness / 2 + out, turn));
}

/**
 * How far the forms of a course pass the node of a corner that is mitred in it; null where the corner unit stays.
 *
 * It is mitred where a ledge of either wall reaches into the leg that would stand there, and where both walls have the same taper on
 * the same top course. The longest face of the form counts: the convex one, to the ledge's outer tip where two of them meet there.
 *
 * @param legs what the corner unit would take of this wall's axis and of the other's
 * @source statement of the project's decision 23
 */
export function mitreTip(wall: number, end: EndName, elevation: Nm, legs: { readonly own: Nm; readonly other: Nm }, plan: StoreyPlan, units: CourseUnits, range: FormRange): Nm | null {
  const joint = plan.joints[wall]![end];
  if ((units.ledges.size === 0 && units.tapers.size === 0) || joint.kind !== 'corner' || isFolded(joint.turn)) return null;
  const [own, other] = [plan.walls[wall]!, plan.walls[joint.partner]!];
  const [taper, otherTaper] = [units.tapers.get(wall), units.tapers.get(joint.partner)];
  const taperGoesRound =
    taper !== undefined && otherTaper !== undefined && taper.elevation === elevation && otherTaper.elevation === elevation &&
    taper.faces === otherTaper.faces && taper.height === otherTaper.height;
  const reaches = (index: number, name: EndName, leg: Nm): boolean => nearestLedge(index, name, elevation, Math.max(leg, 1), plan, units) < leg;
  if (!taperGoesRound && !reaches(wall, end, legs.own) && !reaches(joint.partner, OTHER_END[end], legs.other)) return null;
  const convex = joint.turn > 0 ? 'outside' : 'inside';
  const apex = Math.abs(faceTip(own.thickness, other.thickness, joint.turn, convex, 0));
  const meet = ledgesMeet(wall, end, elevation, convex, plan, units);
  return meet ? Math.max(apex, faceTip(own.thickness, other.thickness, joint.turn, convex, range.ledge!.projection)) : apex;
}
