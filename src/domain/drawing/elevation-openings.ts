import { measureOf } from './arc-measure.js';
import type { Nm } from '../quantity/length.js';
import { lengthLabel } from './length-label.js';
import type { LaidOpening } from '../takeoff/laid.js';
import { rangeBox } from './elevation-frame.js';
import type { ElevationFrame } from './elevation-frame.js';
import { TINT } from './ink.js';
import { TEXT_MM } from './sheet.js';
import type { Box } from './sheet.js';

const LINE_MM = 3.2;
const PAD_MM = 1;

/** Openings as holes with their marks; sizes are written inside where they fit and always in the list under the wall. */
export function drawOpenings(frame: ElevationFrame): void {
  for (const opening of frame.wall.openings) {
    const subject = `opening:${opening.mark}`;
    frame.sheet.rect('opening', holeOf(frame, opening), {
      fill: TINT.paper,
      subject,
      hint: `${opening.mark}: ${sizeOf(opening, frame)}`,
    });
  }
}

/** The hole's outline and diagonals again, over what is notched out of the courses it meets. */
export function outlineOpenings(frame: ElevationFrame): void {
  for (const opening of frame.wall.openings) {
    const hole = holeOf(frame, opening);
    frame.sheet.line('diagonal', { x: hole.left, y: hole.bottom }, { x: hole.right, y: hole.top });
    frame.sheet.line('diagonal', { x: hole.left, y: hole.top }, { x: hole.right, y: hole.bottom });
    frame.sheet.rect('opening', hole);
  }
}

export function labelOpenings(frame: ElevationFrame): void {
  for (const opening of frame.wall.openings) {
    const writing = writingOf(frame, opening);
    if (writing !== null) writeLines(frame, holeOf(frame, opening), writing);
  }
}

/** Openings whose mark does not fit inside are named above the wall. */
export const unmarkedOpenings = (frame: ElevationFrame): readonly LaidOpening[] =>
  frame.wall.openings.filter((opening) => writingOf(frame, opening) === null);

export const sizeOf = (opening: LaidOpening, { wall, storey, units }: Pick<ElevationFrame, 'wall' | 'storey' | 'units'>): string =>
  `${lengthLabel(measureOf(wall, storey).of(opening.to - opening.from), units)} × ${lengthLabel(opening.head - opening.sill, units)}`;

const holeOf = (frame: ElevationFrame, opening: LaidOpening): Box =>
  rangeBox(frame, opening.formsFrom, opening.formsTo, opening.sill, opening.head);

interface Writing {
  readonly lines: readonly string[];
  readonly angle: 0 | 90;
}

/** The fullest wording that fits, level before upright. */
function writingOf(frame: ElevationFrame, opening: LaidOpening): Writing | null {
  const hole = holeOf(frame, opening);
  const [width, height] = [hole.right - hole.left, hole.top - hole.bottom];
  const sill = `sill ${lengthLabel(opening.sill, frame.units)}`;
  const wordings = [[opening.mark, sizeOf(opening, frame), sill], [opening.mark, sizeOf(opening, frame)], [opening.mark]];
  for (const lines of wordings) {
    if (linesFit(frame, lines, width, height)) return { lines, angle: 0 };
    if (linesFit(frame, lines, height, width)) return { lines, angle: 90 };
  }
  return null;
}

function linesFit(frame: ElevationFrame, lines: readonly string[], width: Nm, height: Nm): boolean {
  const longest = Math.max(...lines.map((line, i) => frame.sheet.widthOf(line, TEXT_MM.small, i === 0)));
  return longest + frame.sheet.mm(2 * PAD_MM) <= width && frame.sheet.mm(LINE_MM * lines.length + PAD_MM) <= height;
}

function writeLines(frame: ElevationFrame, hole: Box, { lines, angle }: Writing): void {
  const middle = { x: Math.round((hole.left + hole.right) / 2), y: Math.round((hole.bottom + hole.top) / 2) };
  lines.forEach((line, i) => {
    const shift = Math.round(frame.sheet.mm(LINE_MM) * ((lines.length - 1) / 2 - i));
    const at = angle === 0 ? { x: middle.x, y: middle.y + shift } : { x: middle.x - shift, y: middle.y };
    frame.sheet.text(at, line, TEXT_MM.small, { bold: i === 0, anchor: 'middle', angle, backdrop: TINT.paper });
  });
}
