import type { Vector } from '../geometry/vector.js';
import { toMm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { DrawnBracing } from './drawn-bracing.js';
import { scaleLadder } from './drawing-scale.js';
import type { DrawingScale, ScaleSpan } from './drawing-scale.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';
import { Obstacles } from './obstacles.js';
import { drawPlanBraces, numberPlanBraces, planBracingEntries, planBracingNotes } from './plan-bracing.js';
import { dimensionWall } from './plan-dimensions.js';
import { outlinePoints } from './plan-frame.js';
import type { PlanFrame } from './plan-frame.js';
import { drawPeak, drawPlanFeatures, labelArc, markPeak, planFeatureEntries, planFeatureNotes } from './plan-features.js';
import { labelJunction, markOpenings, markWall } from './plan-labels.js';
import { planWalls, stretch } from './plan-wall.js';
import type { PlanWall } from './plan-wall.js';
import type { Drawing, SheetHeader } from './shapes.js';
import { extentOf } from './shape-extent.js';
import { Sheet } from './sheet.js';
import { drawFurniture, furnitureHeightMm } from './sheet-furniture.js';
import type { Furniture, LegendEntry } from './sheet-furniture.js';
import { teeAxes } from './tee-axes.js';

const SCALES: ScaleSpan = { imperial: { usual: 48, farthest: 128 }, metric: { usual: 50, farthest: 150 } };
const LEAST_WIDTH_MM = 184;
const EDGE_MM = 4;
const CELL_MM = 12;
const TEES_A_NOTE = 4;

/**
 * A storey from above: walls as two panels and the core, mitred at corners, with marks, openings, junctions and dimensions.
 *
 * @param units   the schedule's units, in which every figure is written
 * @param bracing the storey's bracing plan; without it no braces are drawn
 */
export function storeyPlan(
  storey: LaidStorey,
  range: FormRange,
  units: LengthUnit,
  header: SheetHeader,
  bracing: DrawnBracing | null = null,
): Drawing {
  const walls = planWalls(storey);
  const ladder = scaleLadder(units, SCALES);
  const bodies = walls.flatMap((wall) => wall.rooms.flat());
  const [wide, tall] = [spanOf(bodies.map(({ x }) => x)), spanOf(bodies.map(({ y }) => y))];
  for (const { scale, field } of ladder) {
    if (toMm(wide) / scale.denominator > field.width || toMm(tall) / scale.denominator > field.height) continue;
    const drawing = planAt(storey, walls, range, units, header, bracing, scale);
    if (toMm(drawing.width) / scale.denominator <= field.width && toMm(drawing.height) / scale.denominator <= field.height)
      return drawing;
  }
  return planAt(storey, walls, range, units, header, bracing, (ladder.at(-1) as (typeof ladder)[number]).scale);
}

const spanOf = (values: readonly number[]): number =>
  values.reduce((a, b) => Math.max(a, b), -Infinity) - values.reduce((a, b) => Math.min(a, b), Infinity);

function planAt(
  storey: LaidStorey,
  walls: readonly PlanWall[],
  range: FormRange,
  units: LengthUnit,
  header: SheetHeader,
  bracing: DrawnBracing | null,
  scale: DrawingScale,
): Drawing {
  const sheet = new Sheet(scale.denominator);
  const scratch = new Sheet(scale.denominator);
  const frameOf = (target: Sheet, shift: Vector): PlanFrame => ({
    storey,
    range,
    units,
    walls,
    bracing,
    sheet: target,
    obstacles: new Obstacles(scratch.mm(CELL_MM)),
    toSheet: (point) => ({ x: point.x + shift.x, y: point.y + shift.y }),
  });
  paint(frameOf(scratch, { x: 0, y: 0 }));
  const box = extentOf(scratch.drawing({ name: '', title: '', scaleText: '', width: 0, height: 0 }).shapes);
  const furniture = furnitureOf(storey, walls, range, units, scale, header, bracing);
  const needed = box.right - box.left + sheet.mm(2 * EDGE_MM);
  const width = Math.max(needed, sheet.mm(LEAST_WIDTH_MM));
  const foot = sheet.mm(Math.ceil(furnitureHeightMm(furniture, width / sheet.mm(1))) + 1);
  const height = foot + box.top - box.bottom + sheet.mm(EDGE_MM);
  paint(frameOf(sheet, { x: sheet.mm(EDGE_MM) + Math.floor((width - needed) / 2) - box.left, y: foot - box.bottom }));
  drawFurniture(sheet, furniture, width, height);
  return sheet.drawing({ name: `plan-${storey.id}`, title: furniture.heading, scaleText: scale.text, width, height });
}

function paint(frame: PlanFrame): void {
  for (const wall of frame.walls) drawWall(frame, wall);
  for (const wall of frame.walls) joinBranches(frame, wall);
  for (const wall of frame.walls) drawClosures(frame, wall);
  for (const wall of frame.walls) drawAxis(frame, wall);
  for (const wall of frame.walls) drawPlanFeatures(frame, wall);
  for (const wall of frame.walls) drawOpenings(frame, wall);
  for (const wall of frame.walls) drawPeak(frame, wall);
  for (const wall of frame.walls) drawPlanBraces(frame, wall);
  frame.obstacles.addSolids(frame.walls.flatMap((wall) => wall.rooms));
  const longestFirst = [...frame.walls].sort((a, b) => b.wall.length - a.wall.length);
  for (const wall of frame.walls) numberPlanBraces(frame, wall);
  for (const wall of frame.walls) markOpenings(frame, wall);
  for (const wall of longestFirst) if (wall.wall.arc === null) dimensionWall(frame, wall);
  for (const wall of longestFirst) labelArc(frame, wall);
  for (const wall of frame.walls) markWall(frame, wall);
  for (const wall of frame.walls) markPeak(frame, wall);
  for (const junction of frame.storey.junctions) labelJunction(frame, junction);
}

function drawWall(frame: PlanFrame, wall: PlanWall): void {
  const { sheet } = frame;
  sheet.polygon('piece', outlinePoints(frame, wall.core), { fill: TINT.concrete, outline: false });
  for (const panel of [wall.outsidePanel, wall.insidePanel])
    sheet.polygon('piece', outlinePoints(frame, panel), { fill: TINT.foam });
}

/** From node to node; the openings are painted over it. */
function drawAxis(frame: PlanFrame, wall: PlanWall): void {
  const [from, to] = outlinePoints(frame, stretch(wall, 0, wall.wall.length, 0, 0));
  if (from && to) frame.sheet.edge('node', from, to);
}

function drawClosures(frame: PlanFrame, wall: PlanWall): void {
  const half = wall.wall.core.width / 2;
  const thick = frame.range.closure.thickness;
  const { length } = wall.wall;
  for (const [id, from, to] of [
    [wall.wall.startJunction, 0, thick],
    [wall.wall.endJunction, length - thick, length],
  ] as const) {
    const free = frame.storey.junctions.find((junction) => junction.id === id)?.kind === 'free-end';
    if (free) frame.sheet.polygon('closure', outlinePoints(frame, stretch(wall, from, to, -half, half)), { fill: TINT.closure });
  }
}

/** At a tee the near panel is cut out: the branch's core is painted over it, and its sides are drawn again. */
function joinBranches(frame: PlanFrame, wall: PlanWall): void {
  const branch = frame.storey.junctions.some((junction) => junction.tee?.branch === wall.wall.mark);
  if (!branch) return;
  const points = outlinePoints(frame, wall.core);
  frame.sheet.polygon('piece', points, { fill: TINT.concrete, outline: false });
  const [a, b, c, d] = points;
  if (a && b && c && d) {
    frame.sheet.edge('piece', a, b);
    frame.sheet.edge('piece', c, d);
  }
}

function drawOpenings(frame: PlanFrame, wall: PlanWall): void {
  const half = wall.wall.thickness / 2;
  for (const opening of wall.wall.openings) {
    const hole = outlinePoints(frame, stretch(wall, opening.from, opening.to, -half, half));
    frame.sheet.polygon('opening', hole, { fill: TINT.paper, subject: `opening:${opening.mark}` });
    const [from, to] = outlinePoints(frame, stretch(wall, opening.from, opening.to, 0, 0));
    if (opening.sill > 0 && from && to) frame.sheet.edge('rule', from, to);
  }
}

function furnitureOf(
  storey: LaidStorey,
  walls: readonly PlanWall[],
  range: FormRange,
  units: LengthUnit,
  scale: DrawingScale,
  header: SheetHeader,
  bracing: DrawnBracing | null,
): Furniture {
  const cores = [...new Set(storey.walls.map((wall) => wall.core.width))].sort((a, b) => a - b);
  const sample = (text: string, fill: string): LegendEntry => ({ text, fill, pattern: null, stroke: null });
  const notes = cores.map((width) => {
    const alike = storey.walls.filter((wall) => wall.core.width === width);
    const over = lengthLabel(alike[0]?.thickness ?? 0, units);
    return `Core ${lengthLabel(width, units)}, ${over} over the forms: ${alike.map((wall) => wall.mark).join(', ')}`;
  });
  const tees = storey.walls.flatMap((wall) => teeNotes(storey, wall, units));
  return {
    legend: [
      sample('form panel', TINT.foam),
      sample('concrete core', TINT.concrete),
      sample('opening', TINT.paper),
      { ...sample('axis, from node to node', TINT.concrete), stroke: 'axis' },
      ...(storey.junctions.some((junction) => junction.kind === 'free-end') ? [sample('end closure', TINT.closure)] : []),
      ...planFeatureEntries(storey),
      ...planBracingEntries(bracing, range, units),
    ],
    notes: [...notes, ...planFeatureNotes(storey, units), ...tees, ...planBracingNotes(bracing, walls, range)],
    heading: `Plan of storey ${storey.id}`,
    detail: tees.length === 0 ? 'Lengths along the dimension line' : 'Lengths along the dimension line, tees to the axis',
    scaleText: scale.text,
    header,
  };
}

/** `Tees on A, from its start to the axis: P 9'-6 1/2", Q 25'-5 1/2"`, along the dimension line. */
function teeNotes(storey: LaidStorey, wall: LaidWall, units: LengthUnit): string[] {
  const tees = teeAxes(storey, wall).map(({ branch, station }) => `${branch} ${lengthLabel(station + wall.startOffset, units)}`);
  return Array.from({ length: Math.ceil(tees.length / TEES_A_NOTE) }, (_, i) => {
    const some = tees.slice(i * TEES_A_NOTE, (i + 1) * TEES_A_NOTE).join(', ');
    return `Tees on ${wall.mark}, from its start to the axis: ${some}`;
  });
}
