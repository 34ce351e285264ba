import { add, cross, scale, subtract } from '../geometry/vector.js';
import type { Vector } from '../geometry/vector.js';
import type { FormRange } from '../range/range.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { LaidStorey } from '../takeoff/laid.js';
import type { DrawnBracing } from './drawn-bracing.js';
import { Obstacles, turnedBox } from './obstacles.js';
import type { Quad } from './obstacles.js';
import type { PlanPoint, PlanWall } from './plan-wall.js';
import type { DrawingPoint, OutlinePoint } from './shapes.js';
import type { Sheet, TextStyle } from './sheet.js';
import { CAP_HEIGHT } from './text-width.js';

/** What every part of a plan draws into. */
export interface PlanFrame {
  readonly storey: LaidStorey;
  readonly range: FormRange;
  readonly units: LengthUnit;
  readonly walls: readonly PlanWall[];
  /** Braces on the inside of the walls; null where none are drawn. */
  readonly bracing: DrawnBracing | null;
  readonly sheet: Sheet;
  readonly obstacles: Obstacles;
  /** From the schedule's plane to the sheet. */
  readonly toSheet: (point: Vector) => DrawingPoint;
}

const CLEARANCE_MM = 0.7;

/** The room a text takes on the plan, a little clearance round it. */
export function textQuad(sheet: Sheet, centre: Vector, text: string, sizeMm: number, angle: number, bold = false): Quad {
  const clear = sheet.mm(2 * CLEARANCE_MM);
  return turnedBox(centre, sheet.widthOf(text, sizeMm, bold) + clear, sheet.mm(sizeMm) * CAP_HEIGHT + clear, angle);
}

/** Upright reading direction of a line of the plan, in (−90°, 90°]. */
export function readingAngle(along: Vector): number {
  const degrees = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  const upright = degrees > 90 + 1e-9 ? degrees - 180 : degrees <= -90 + 1e-9 ? degrees + 180 : degrees;
  return Math.round(upright * 1000) / 1000 + 0;
}

export interface LabelPlace {
  readonly at: Vector;
  readonly angle: number;
  /** The point a thin line leads back to from a label that had to move away; null where it stands near what it names. */
  readonly leader: Vector | null;
}

/** Weight at which a line is tested against letters [mm of paper]. */
const LEADER_MM = 0.4;

/** The first place whose room is clear and whose leader crosses no letters; else the first with clear room; else the last. */
export function freePlace(frame: PlanFrame, places: readonly LabelPlace[], roomAt: (place: LabelPlace) => Quad): LabelPlace {
  const weight = frame.sheet.mm(LEADER_MM);
  let second: LabelPlace | null = null;
  for (const place of places) {
    if (!frame.obstacles.isClear([roomAt(place)])) continue;
    if (place.leader === null || !frame.obstacles.crossesText(place.at, place.leader, weight)) return place;
    second ??= place;
  }
  return second ?? (places.at(-1) as LabelPlace);
}

/** Writes a label at its free place, with its leader, and keeps the room it takes. */
export function placeLabel(
  frame: PlanFrame,
  text: string,
  sizeMm: number,
  places: readonly LabelPlace[],
  style: TextStyle = {},
): void {
  const roomAt = (place: LabelPlace): Quad => textQuad(frame.sheet, place.at, text, sizeMm, place.angle, style.bold ?? false);
  const place = freePlace(frame, places, roomAt);
  drawLeader(frame, place, roomAt(place));
  frame.obstacles.addTexts([roomAt(place)]);
  frame.sheet.text(frame.toSheet(place.at), text, sizeMm, { ...style, anchor: 'middle', angle: place.angle });
}

/** From the edge of the label's room to the point it names. */
export function drawLeader(frame: PlanFrame, { at, leader }: LabelPlace, room: Quad): void {
  if (leader === null) return;
  const edge = room.flatMap((corner, i) => meetingPoint(at, leader, corner, room[(i + 1) % room.length] as Vector))[0] ?? at;
  frame.obstacles.addLine(edge, leader, frame.sheet.mm(LEADER_MM));
  frame.sheet.line('rule', frame.toSheet(edge), frame.toSheet(leader));
}

function meetingPoint(a: Vector, b: Vector, c: Vector, d: Vector): Vector[] {
  const [ab, cd, ac] = [subtract(b, a), subtract(d, c), subtract(c, a)];
  const sine = cross(ab, cd);
  if (sine === 0) return [];
  const [along, across] = [cross(ac, cd) / sine, cross(ac, ab) / sine];
  return along >= 0 && along <= 1 && across >= 0 && across <= 1 ? [add(a, scale(ab, along))] : [];
}

export const outlinePoints = (frame: Pick<PlanFrame, 'toSheet'>, outline: readonly PlanPoint[]): OutlinePoint[] =>
  outline.map((point) => (point.bulge ? { ...frame.toSheet(point), bulge: point.bulge } : frame.toSheet(point)));
