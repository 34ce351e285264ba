import type { Vector } from '../geometry/vector.js';
import type { FormRange } from '../range/range.js';
import type { LengthUnit } from '../schedule/schedule.js';
import { bracesOn, runsOf } from './drawn-bracing.js';
import type { DrawnBracing, NumberedBrace } from './drawn-bracing.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';
import { lineQuad, quadsTouch, turnedBox } from './obstacles.js';
import type { Quad } from './obstacles.js';
import { textQuad } from './plan-frame.js';
import type { PlanFrame } from './plan-frame.js';
import type { PlanWall } from './plan-wall.js';
import { TEXT_MM } from './sheet.js';
import type { LegendEntry } from './sheet-furniture.js';

/** The bar on the form's face and the plate at the foot [mm of paper]. */
const BAR_MM = { along: 2.2, deep: 0.9 };
const PLATE_MM = 1.2;
/** Weight at which letters keep off a brace's line [mm of paper]. */
const LINE_MM = 0.5;
/** Places of a brace's number round its foot: along the wall and away from it, of steps [mm of paper]. */
const NUMBER_MM = 1.9;
const PLACES = [[0, 1.3], [-1.1, 0.6], [1.1, 0.6], [-1.1, -0.6], [1.1, -0.6], [-1.1, -1.8], [1.1, -1.8], [-1.1, -3], [1.1, -3]] as const;
const WALLS_A_NOTE = 12;
/** Width of a line to a foot where it is held against other walls [nm]. */
const SLIVER = 1_000;

/** Every brace on the inside of its wall: a bar on the form, a line to the foot at its distance to scale, a plate under the foot. */
export function drawPlanBraces(frame: PlanFrame, wall: PlanWall): void {
  const { sheet, obstacles } = frame;
  for (const brace of bracesOn(frame.bracing, wall.wall.mark)) {
    const { at } = brace;
    const [face, foot] = footLine(wall, at, frame.range);
    const bar = boxAt(frame, wall, at, wall.at(at, -facing(wall) - sheet.mm(BAR_MM.deep / 2)), BAR_MM.along, BAR_MM.deep);
    const plate = boxAt(frame, wall, at, foot, PLATE_MM, PLATE_MM);
    sheet.line('brace', frame.toSheet(face), frame.toSheet(foot));
    sheet.polygon('brace', bar.map(frame.toSheet), { fill: TINT.brace, subject: `brace:${wall.wall.mark}:${brace.n}` });
    sheet.polygon('brace', plate.map(frame.toSheet), { fill: TINT.brace });
    obstacles.addLine(face, foot, sheet.mm(LINE_MM));
    for (const [a, , c] of [bar, plate]) obstacles.addLine(a, c, sheet.mm(LINE_MM));
  }
}

/** Numbers at the feet, each where it has room; the elevations number every one. */
export function numberPlanBraces(frame: PlanFrame, wall: PlanWall): void {
  for (const brace of bracesOn(frame.bracing, wall.wall.mark)) {
    const text = String(brace.n);
    const place = placesOf(frame, wall, brace).find((at) => frame.obstacles.isClear([textQuad(frame.sheet, at, text, TEXT_MM.tiny, 0)]));
    if (place === undefined) continue;
    frame.obstacles.addTexts([textQuad(frame.sheet, place, text, TEXT_MM.tiny, 0)]);
    frame.sheet.text(frame.toSheet(place), text, TEXT_MM.tiny, { layer: 'brace', anchor: 'middle' });
  }
}

function placesOf(frame: PlanFrame, wall: PlanWall, { at }: NumberedBrace): Vector[] {
  const step = frame.sheet.mm(NUMBER_MM);
  const foot = -facing(wall) - frame.range.parameters.braceFoot;
  const along = wall.directionAt(at);
  return PLACES.map(([beside, away]) => {
    const point = wall.at(at, foot - away * step);
    return { x: point.x + along.x * beside * step, y: point.y + along.y * beside * step };
  });
}

/** From the inner face of the forms to the foot. */
const footLine = (wall: PlanWall, at: number, { parameters }: FormRange): readonly [face: Vector, foot: Vector] => [
  wall.at(at, -facing(wall)),
  wall.at(at, -facing(wall) - parameters.braceFoot),
];

const facing = ({ wall }: PlanWall): number => wall.thickness / 2;

function boxAt(frame: PlanFrame, wall: PlanWall, station: number, centre: Vector, alongMm: number, deepMm: number): Quad {
  const { x, y } = wall.directionAt(station);
  return turnedBox(centre, frame.sheet.mm(alongMm), frame.sheet.mm(deepMm), (Math.atan2(y, x) * 180) / Math.PI);
}

/** `brace on the inside, foot 5'-0" from the form: 18 braces, 6'-0" apart at most`. */
export function planBracingEntries(bracing: DrawnBracing | null, { parameters }: FormRange, units: LengthUnit): LegendEntry[] {
  if (bracing === null || bracing.count === 0) return [];
  const [foot, spacing] = [parameters.braceFoot, bracing.spacing].map((length) => lengthLabel(length, units));
  const count = bracing.count === 1 ? '1 brace' : `${bracing.count} braces`;
  return [{ text: `braces on the inside, foot ${foot} from the form: ${count}, ${spacing} apart at most`, fill: TINT.paper, pattern: null, stroke: 'brace-foot' }];
}

/** `Braces by wall, numbered from its start: A 5, B 4`, and those whose line to the foot meets another wall. */
export function planBracingNotes(bracing: DrawnBracing | null, walls: readonly PlanWall[], range: FormRange): string[] {
  return [...countNotes(bracing), ...meetingNotes(bracing, walls, range)];
}

function countNotes(bracing: DrawnBracing | null): string[] {
  const counts = (bracing?.walls ?? []).filter(({ braces }) => braces.length > 0).map(({ mark, braces }) => `${mark} ${braces.length}`);
  return Array.from({ length: Math.ceil(counts.length / WALLS_A_NOTE) }, (_, i) => {
    const some = counts.slice(i * WALLS_A_NOTE, (i + 1) * WALLS_A_NOTE).join(', ');
    return `Braces by wall, numbered from its start: ${some}`;
  });
}

/** `Another wall stands in the way of brace A 9, B 1 at this foot distance: brace it otherwise and work its forces again`. */
function meetingNotes(bracing: DrawnBracing | null, walls: readonly PlanWall[], range: FormRange): string[] {
  const met = walls.flatMap((wall) => {
    const others = walls.filter((other) => other !== wall).flatMap(({ rooms }) => rooms);
    const meets = ({ at }: NumberedBrace): boolean => {
      const line = lineQuad(...footLine(wall, at, range), SLIVER);
      return others.some((room) => quadsTouch(line, room));
    };
    const numbers = bracesOn(bracing, wall.wall.mark).filter(meets).map(({ n }) => n);
    return numbers.length === 0 ? [] : [`${wall.wall.mark} ${runsOf(numbers)}`];
  });
  return Array.from({ length: Math.ceil(met.length / WALLS_A_NOTE) }, (_, i) => {
    const some = met.slice(i * WALLS_A_NOTE, (i + 1) * WALLS_A_NOTE).join('; ');
    return `Another wall stands in the way of braces with their feet so far out, brace otherwise and work the forces again: ${some}`;
  });
}
