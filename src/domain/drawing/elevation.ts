import { topOfWall } from '../takeoff/index.js';
import type { Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { LaidOpening, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { measureOf } from './arc-measure.js';
import { BRACE_ROWS_MM, braceEntries, braceNotes, drawBraces } from './elevation-bracing.js';
import { drawClosures, drawCourses, drawMarks, drawNotches } from './elevation-courses.js';
import { cutLetters, drawPieceLabels } from './elevation-labels.js';
import type { CutLetters } from './elevation-labels.js';
import { drawLengths, drawTopLabels } from './elevation-dimensions.js';
import { reachOf } from './elevation-frame.js';
import type { ElevationFrame, WallReach } from './elevation-frame.js';
import { drawFeatures, featureHeights, featureNotes } from './elevation-features.js';
import { drawSlopes, slopeNotes, slopeSideMm } from './elevation-slopes.js';
import { HEIGHT_COLUMN_MM, drawLevels, drawStack, levelsOf } from './elevation-stack.js';
import { elevationLegend } from './elevation-legend.js';
import { drawSkewedEnds, drawTees, drawThroughWalls, skewNotes, teesOn } from './elevation-branches.js';
import { drawOpenings, labelOpenings, outlineOpenings, sizeOf } from './elevation-openings.js';
import { bracesOn } from './drawn-bracing.js';
import type { DrawnBracing, NumberedBrace } from './drawn-bracing.js';
import { chooseScale } from './drawing-scale.js';
import type { DrawingScale, ScaleSpan } from './drawing-scale.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';
import { outsideWalls } from './outside-walls.js';
import type { Drawing, SheetHeader } from './shapes.js';
import { Sheet, TEXT_MM, corners } from './sheet.js';
import { drawFurniture, furnitureHeightMm } from './sheet-furniture.js';
import type { Furniture } from './sheet-furniture.js';
import { textWidth } from './text-width.js';

/** Usual scale of an elevation; a longer or higher wall is drawn at the next one that fits a page. */
const SCALES: ScaleSpan = { imperial: { usual: 48, farthest: 96 }, metric: { usual: 50, farthest: 100 } };
const LEFT_MM = 28;
const LEVELS_MM = 9.5;
const GROUND_MM = 2.4;
const LEAST_WIDTH_MM = 184;
/** Room that the last dimension row leaves free under its line. */
const SLACK_MM = 4.2;
/** Dimension rows and labels as they are on most walls; what they really take is measured once the scale is chosen. */
const USUAL_ROWS_MM = 34;
const CUT_OUT_ROW_MM = 9;

/**
 * A wall as it is seen from outside: courses, pieces told apart, openings, joints, dimensions, and a title block. A wall that has no
 * outside is seen from the side of start to end that the title names.
 *
 * Stations are drawn true to the take-off: every piece's rectangle is exactly its span times its course's height, in nanometres.
 *
 * @param units   the schedule's units, in which every figure is written
 * @param bracing the storey's bracing plan; without it no braces are drawn
 */
export function wallElevation(
  wall: LaidWall,
  storey: LaidStorey,
  range: FormRange,
  units: LengthUnit,
  header: SheetHeader,
  bracing: DrawnBracing | null = null,
): Drawing {
  const braces = bracesOn(bracing, wall.mark);
  const reach = reachOf(wall, storey);
  const levelsMm = LEVELS_MM + slopeSideMm(wall) + Math.max(...levelsOf({ wall, storey, units }).map(({ text }) => textWidth(text, TEXT_MM.small)));
  const furnitureAt = (scale: DrawingScale, letters: CutLetters): Furniture => ({
    ...furnitureOf(wall, storey, range, units, header, braces, scale),
    notes: notesOf(wall, storey, units, letters, braces),
  });
  const usualRowsMm = USUAL_ROWS_MM + (teesOn({ wall, storey }).length > 0 ? CUT_OUT_ROW_MM : 0) + (braces.length > 0 ? BRACE_ROWS_MM : 0);
  const leftMm = LEFT_MM + slopeSideMm(wall) + HEIGHT_COLUMN_MM * featureHeights(wall).length;
  const modelWidth = reach.toStation - reach.fromStation;
  const unscaled = furnitureAt({ denominator: 1, text: '' }, new Map());
  const scale = chooseScale(units, SCALES, modelWidth, topOfWall(wall), (field) => ({
    width: field.width - leftMm - levelsMm,
    height: field.height - usualRowsMm - furnitureHeightMm(unscaled, field.width),
  }));
  const scratch = new Sheet(scale.denominator);
  const needed = scratch.mm(leftMm + levelsMm) + modelWidth;
  const width = Math.max(needed, scratch.mm(LEAST_WIDTH_MM));
  const left = scratch.mm(leftMm) + Math.floor((width - needed) / 2);
  const trial = frameOf(wall, storey, range, units, braces, scratch, reach, left, 0, width);
  const letters = cutLetters(trial);
  const furniture = furnitureAt(scale, letters);
  const under = -drawLengths(trial) - scratch.mm(SLACK_MM);
  const foot = under + scratch.mm(furnitureHeightMm(furniture, width / scratch.mm(1)));
  const sheet = new Sheet(scale.denominator);
  const height = paint(frameOf(wall, storey, range, units, braces, sheet, reach, left, foot, width), reach, letters) + sheet.mm(1);
  drawFurniture(sheet, furniture, width, height);
  return sheet.drawing({
    name: `wall-${wall.mark}`,
    title: `${furniture.heading}, ${furniture.detail}`,
    scaleText: scale.text,
    width,
    height,
  });
}

function frameOf(
  wall: LaidWall,
  storey: LaidStorey,
  range: FormRange,
  units: LengthUnit,
  braces: readonly NumberedBrace[],
  sheet: Sheet,
  reach: WallReach,
  left: Nm,
  foot: Nm,
  width: Nm,
): ElevationFrame {
  const x =
    wall.outside === 'right'
      ? (station: Nm): Nm => left + station - reach.fromStation
      : (station: Nm): Nm => left + reach.toStation - station;
  const margin = sheet.mm(3);
  return {
    wall,
    storey,
    range,
    units,
    braces,
    sheet,
    x,
    y: (level) => foot + level,
    ends: [reach.start, reach.end],
    edges: { left: margin, right: width - margin },
    span: { left, right: left + reach.toStation - reach.fromStation },
  };
}

/** @returns height of what was painted [nm] */
function paint(frame: ElevationFrame, reach: WallReach, letters: CutLetters): Nm {
  const { ends } = frame;
  drawGround(frame);
  drawThroughWalls(frame, ends);
  drawCourses(frame, ends);
  drawTees(frame);
  drawClosures(frame);
  drawOpenings(frame);
  drawNotches(frame);
  outlineOpenings(frame);
  drawMarks(frame);
  drawFeatures(frame);
  drawSlopes(frame);
  drawSkewedEnds(frame, ends);
  drawBraces(frame);
  drawPieceLabels(frame, letters);
  labelOpenings(frame);
  drawLengths(frame);
  drawStack(frame);
  const levels = drawLevels(frame);
  return Math.max(levels, drawTopLabels(frame, reach));
}

/** The line the wall stands on; hatched where it is a footing. */
function drawGround(frame: ElevationFrame): void {
  const { sheet, span } = frame;
  const y = frame.y(0);
  const [left, right] = [span.left - sheet.mm(2), span.right + sheet.mm(2)];
  if (frame.storey.onFooting && frame.wall.base === 0) {
    const box = { left, right, bottom: y - sheet.mm(GROUND_MM), top: y };
    sheet.rect('rule', box, { fill: TINT.ground, outline: false });
    sheet.hatch([corners(box)], 'rising');
  }
  sheet.line('ground', { x: left, y }, { x: right, y });
}

function furnitureOf(
  wall: LaidWall,
  storey: LaidStorey,
  range: FormRange,
  units: LengthUnit,
  header: SheetHeader,
  braces: readonly NumberedBrace[],
  scale: DrawingScale,
): Omit<Furniture, 'notes'> {
  const cores = [wall.core, ...wall.coreChanges.map((change) => change.core)].map(({ width }) => lengthLabel(width, units));
  return {
    legend: [...elevationLegend(wall, storey, range, units), ...braceEntries(braces, range, units)],
    heading: `Wall ${wall.mark}`,
    detail: `Elevation from ${seenFrom(wall, storey)}, ${cores.length > 1 ? '' : 'storey '}${wall.storey}, core ${cores.join(' then ')}`,
    scaleText: scale.text,
    header,
  };
}

const seenFrom = (wall: LaidWall, storey: LaidStorey): string =>
  outsideWalls(storey).has(wall.mark) ? 'outside' : `the ${wall.outside} of start to end`;

const LETTERS_A_NOTE = 5;

/** The stack, the openings and the cut-outs in order, and the lengths that stand in the wall as letters. */
function notesOf(wall: LaidWall, storey: LaidStorey, units: LengthUnit, letters: CutLetters, braces: readonly NumberedBrace[]): string[] {
  const lengths = [...letters].map(([length, letter]) => `${letter} = ${length}`);
  const rows = Array.from({ length: Math.ceil(lengths.length / LETTERS_A_NOTE) }, (_, i) =>
    lengths.slice(i * LETTERS_A_NOTE, (i + 1) * LETTERS_A_NOTE).join(', '),
  );
  return [
    ...stackNotes(wall, units),
    ...slopeNotes(wall, units),
    ...featureNotes(wall, storey, units),
    ...[...wall.openings].sort((a, b) => a.from - b.from).map((opening) => openingNote({ wall, storey, units }, opening)),
    ...cutOutNotes(wall, storey, units),
    ...skewNotes(wall, storey, units),
    ...rows.map((row) => `Cut to: ${row}`),
    ...braceNotes(braces, wall, storey, units),
  ];
}

function stackNotes(wall: LaidWall, units: LengthUnit): string[] {
  const { stack } = wall;
  const strips = stack.strips > 0 ? ` + ${stack.strips} strips` : '';
  const ripped = stack.ripped === null ? '' : `, top course ripped to ${lengthLabel(stack.ripped, units)}`;
  const off =
    stack.deviation === 0
      ? ''
      : ` (${stack.deviation > 0 ? '+' : ''}${lengthLabel(stack.deviation, units)} against ${lengthLabel(wall.askedHeight, units)} asked)`;
  const base = wall.base === 0 ? '' : `, base ${lengthLabel(wall.base, units)} above the storey's bottom`;
  return [`Stack: ${stack.courses} courses${strips}${ripped} = ${lengthLabel(stack.height, units)}${off}${base}`];
}

/** `Cut-out for wall P: its near edge 9'-9" from the start, 6" wide`. */
function cutOutNotes(wall: LaidWall, storey: LaidStorey, units: LengthUnit): string[] {
  const tees = teesOn({ wall, storey }).map(({ tee }) => tee);
  return tees
    .sort((a, b) => a.cutFrom - b.cutFrom)
    .map((tee) => {
      const [at, width] = [tee.cutFrom + wall.startOffset, tee.cutTo - tee.cutFrom].map((length) => lengthLabel(length, units));
      return `Cut-out for wall ${tee.branch}: its near edge ${at} from the start, ${width} wide`;
    });
}

/** `D1: 3'-0" × 7'-0", sill 0", 5'-0" from the start, buck`. */
function openingNote(job: Pick<ElevationFrame, 'wall' | 'storey' | 'units'>, opening: LaidOpening): string {
  const { wall, storey, units } = job;
  const measure = measureOf(wall, storey);
  const at = lengthLabel(measure.of(opening.from - measure.start), units);
  const lining = opening.lining === 'buck' ? 'buck' : 'end closures';
  return `${opening.mark}: ${sizeOf(opening, job)}, sill ${lengthLabel(opening.sill, units)}, ${at} from the start, ${lining}`;
}
