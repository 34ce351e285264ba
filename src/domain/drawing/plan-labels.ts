import { add, direction, scale } from '../geometry/vector.js';
import type { Junction } from '../takeoff/laid.js';
import { turnText } from './elevation-dimensions.js';
import { isAt } from './elevation-frame.js';
import { drawLeader, freePlace, placeLabel, readingAngle } from './plan-frame.js';
import type { LabelPlace, PlanFrame } from './plan-frame.js';
import { TINT } from './ink.js';
import { turnedBox } from './obstacles.js';
import type { Quad } from './obstacles.js';
import type { PlanWall } from './plan-wall.js';
import { TEXT_MM } from './sheet.js';
import { fitText } from './text-width.js';
import { intoEnd } from './wall-curve.js';

const SHARES = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82];
const MARK_MM = { near: 4.2, step: 1.4, tries: 50, pad: 2.4 };
const OPENING_MM = { near: 2.4, step: 1.4, tries: 50 };
/** A label farther from its wall than this is led back to it [mm of paper]. */
const LED_MM = 11;
const JUNCTION_MM = { near: 3.2, step: 2.5, tries: 16 };
const DIRECTIONS = 16;
const SQUARE_DEG = 0.05;
const LONGEST_MM = 40;

/** The wall's mark in a frame of its own, inside the building where there is room. */
export function markWall(frame: PlanFrame, wall: PlanWall): void {
  const { sheet } = frame;
  const text = shortened(frame, wall.wall.mark, TEXT_MM.body);
  const pad = sheet.mm(MARK_MM.pad);
  const width = Math.max(sheet.widthOf(text, TEXT_MM.body, true) + pad, sheet.mm(TEXT_MM.body) + pad * 0.6);
  const height = sheet.mm(TEXT_MM.body) + pad * 0.6;
  const stations = SHARES.map((share) => wall.wall.length * share);
  const places = offsets(frame, wall, MARK_MM).flatMap((offset) =>
    stations.map((station) => besideWall(frame, wall, station, offset, 0)),
  );
  const roomAt = ({ at }: LabelPlace): Quad => turnedBox(at, width + pad / 2, height + pad / 2, 0);
  const place = freePlace(frame, places, roomAt);
  drawLeader(frame, place, turnedBox(place.at, width, height, 0));
  frame.obstacles.addTexts([roomAt(place)]);
  const centre = frame.toSheet(place.at);
  const half = { x: Math.round(width / 2), y: Math.round(height / 2) };
  const box = { left: centre.x - half.x, right: centre.x + half.x, bottom: centre.y - half.y, top: centre.y + half.y };
  sheet.rect('frame', box, { fill: TINT.paper, subject: `wall:${wall.wall.mark}` });
  sheet.text(centre, text, TEXT_MM.body, { bold: true, anchor: 'middle' });
}

export function markOpenings(frame: PlanFrame, wall: PlanWall): void {
  for (const opening of wall.wall.openings) {
    const middle = (opening.from + opening.to) / 2;
    const angle = readingAngle(wall.directionAt(middle));
    const places = offsets(frame, wall, OPENING_MM).map((offset) => besideWall(frame, wall, middle, offset, angle));
    placeLabel(frame, shortened(frame, opening.mark, TEXT_MM.small), TEXT_MM.small, places, { bold: true });
  }
}

/** Distances from the axis at which a label is tried: inside first, then outside, then farther. */
export function offsets(frame: PlanFrame, { wall }: PlanWall, tried: { near: number; step: number; tries: number }): number[] {
  const from = wall.thickness / 2;
  return Array.from({ length: tried.tries }, (_, i) => from + frame.sheet.mm(tried.near + i * tried.step)).flatMap((offset) => [
    -offset,
    offset,
  ]);
}

export function besideWall(frame: PlanFrame, wall: PlanWall, station: number, offset: number, angle: number): LabelPlace {
  const face = wall.wall.thickness / 2;
  const led = Math.abs(offset) - face >= frame.sheet.mm(LED_MM);
  return { at: wall.at(station, offset), angle, leader: led ? wall.at(station, Math.sign(offset) * face) : null };
}

/** `S1-J3`, with the turn where it is not square; a line leads to it where it had to move away. */
export function labelJunction(frame: PlanFrame, junction: Junction): void {
  const { sheet } = frame;
  if (isUpper(frame, junction)) return;
  const square = junction.kind !== 'corner' || Math.abs(Math.abs(junction.turn) - 90) < SQUARE_DEG;
  const text = square ? junction.id : `${junction.id} ${turnText(junction.turn)}`;
  const widest = Math.max(...frame.storey.walls.map((wall) => wall.thickness)) / 2;
  const first = outwardOf(frame, junction);
  const half = sheet.widthOf(text, TEXT_MM.small) / 2;
  const places = Array.from({ length: JUNCTION_MM.tries }, (_, i) => i).flatMap((i) =>
    sweep(first).map((angle): LabelPlace => {
      const reach = widest * Math.SQRT2 + sheet.mm(JUNCTION_MM.near + i * JUNCTION_MM.step);
      const away = { x: Math.cos(angle), y: Math.sin(angle) };
      const at = add(junction.at, { x: away.x * (reach + half * Math.abs(away.x)), y: away.y * reach });
      return { at, angle: 0, leader: i > 0 ? junction.at : null };
    }),
  );
  sheet.circle('node', frame.toSheet(junction.at), sheet.mm(0.55), '#33404a');
  placeLabel(frame, text, TEXT_MM.small, places, { layer: 'muted' });
}

/** What stands over another junction of its own name is told in the list. */
const isUpper = (frame: PlanFrame, junction: Junction): boolean =>
  frame.storey.junctions.some((below) => below.id !== junction.id && isAt(junction, below.id));

/** Angles from the first to both sides in turn. */
const sweep = (first: number): number[] =>
  Array.from({ length: DIRECTIONS }, (_, i) => first + ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 2 * Math.PI) / DIRECTIONS);

/** Away from the walls that meet; the direction in which a label is looked for first [rad]. */
function outwardOf(frame: PlanFrame, junction: Junction): number {
  const walls = frame.storey.walls.filter((wall) => junction.walls.includes(wall.mark));
  const into = walls.map((wall) => {
    if (wall.startJunction === junction.id) return intoEnd(wall, 'start');
    return wall.endJunction === junction.id ? intoEnd(wall, 'end') : { x: 0, y: 0 };
  });
  const sum = direction(scale(into.reduce(add, { x: 0, y: 0 }), -1));
  return sum.x === 0 && sum.y === 0 ? Math.PI / 4 : Math.atan2(sum.y, sum.x);
}

const shortened = (frame: PlanFrame, text: string, size: number): string =>
  fitText(text, frame.sheet.mm(size), frame.sheet.mm(LONGEST_MM), true);
