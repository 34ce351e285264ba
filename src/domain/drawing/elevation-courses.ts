import type { LaidCourse, Piece } from '../takeoff/laid.js';
import { rangeBox, returnOf } from './elevation-frame.js';
import type { ElevationFrame, WallEnd } from './elevation-frame.js';
import { TINT } from './ink.js';
import { pieceHint, pieceLook } from './piece-look.js';
import type { DrawingPoint } from './shapes.js';
import { corners } from './sheet.js';
import { isSloped, pieceOutline } from './slope-outline.js';

/** Courses and strips of the wall, every piece once in its true place. */
export function drawCourses(frame: ElevationFrame, ends: readonly WallEnd[]): void {
  for (const course of frame.wall.courses) {
    for (const end of ends) drawReturn(frame, course, end);
    for (const piece of course.pieces) if (!piece.inside) drawPiece(frame, course, piece);
  }
  for (const strip of frame.wall.strips) {
    for (const run of strip.runs) {
      const box = rangeBox(frame, run.from, run.to, strip.bottom, strip.bottom + strip.height);
      frame.sheet.rect('piece', box, {
        fill: TINT.strip,
        subject: `strip:${strip.afterCourse}`,
        hint: `${strip.sku} on course ${strip.afterCourse}`,
      });
    }
  }
}

function drawPiece(frame: ElevationFrame, course: LaidCourse, piece: Piece): void {
  const look = pieceLook(piece, frame.range);
  const outline = faceOutline(frame, course, piece);
  frame.sheet.polygon('piece', outline, { fill: look.fill, subject: `piece:${piece.id}`, hint: pieceHint(piece, course, frame.units) });
  if (look.pattern !== null) frame.sheet.hatch([outline], look.pattern);
  else if (course.ripped) frame.sheet.hatch([outline], 'dotted');
}

/** On the sheet, from the lower left; a level piece keeps the order of a box whichever way the wall is seen. */
function faceOutline(frame: ElevationFrame, course: LaidCourse, piece: Piece): DrawingPoint[] {
  if (!isSloped(frame.wall, course, piece)) return corners(rangeBox(frame, piece.from, piece.to, course.bottom, course.bottom + course.height));
  return pieceOutline(frame.wall, course, piece).map(({ at, height }) => ({ x: frame.x(at), y: frame.y(height) }));
}

/** Outside a convex corner the unit's face runs past the node to its apex: shown, but not part of the wall's tiling. */
function drawReturn(frame: ElevationFrame, course: LaidCourse, end: WallEnd): void {
  const atStart = end.node === 0;
  const outermost = atStart
    ? course.pieces.find((piece) => !piece.inside)
    : course.pieces.filter((piece) => !piece.inside).at(-1);
  if (outermost === undefined || outermost.junction === null) return;
  const face = returnOf(frame, course, end);
  if (face <= 0) return;
  const [from, to] = atStart ? [outermost.from - face, outermost.from] : [outermost.to, outermost.to + face];
  const outline = faceOutline(frame, course, { ...outermost, from, to });
  frame.sheet.polygon('piece', outline, { fill: pieceLook(outermost, frame.range).fill, subject: null, hint: null });
}

/** End closures stand inside the forms: drawn over them with a dashed edge. */
export function drawClosures(frame: ElevationFrame): void {
  for (const course of frame.wall.courses) {
    for (const piece of course.pieces.filter((candidate) => candidate.inside)) {
      const look = pieceLook(piece, frame.range);
      const box = rangeBox(frame, piece.from, piece.to, course.bottom, course.bottom + course.height);
      frame.sheet.rect('closure', box, {
        fill: look.fill,
        subject: `piece:${piece.id}`,
        hint: pieceHint(piece, course, frame.units),
      });
      frame.sheet.hatch([corners(box)], 'crossed');
    }
  }
}

/** Thick lines on what the crew must not miss: the rip along the top and the seam. */
export function drawMarks(frame: ElevationFrame): void {
  for (const course of frame.wall.courses) {
    const top = course.bottom + course.height;
    if (course.ripped)
      frame.sheet.line('rip', { x: frame.x(course.from), y: frame.y(top) }, { x: frame.x(course.to), y: frame.y(top) });
    for (const joint of course.headJoints.filter((candidate) => candidate.kind === 'seam')) {
      frame.sheet.line('seam', { x: frame.x(joint.at), y: frame.y(course.bottom) }, { x: frame.x(joint.at), y: frame.y(top) });
    }
  }
}

/** What is sawn out of pieces laid through an opening: grey, so that it reads as foam that goes. */
export function drawNotches(frame: ElevationFrame): void {
  for (const course of frame.wall.courses) {
    for (const piece of course.pieces) {
      for (const notch of piece.notches) {
        const box = rangeBox(
          frame,
          Math.max(notch.from, piece.from),
          Math.min(notch.to, piece.to),
          course.bottom + notch.bottom,
          course.bottom + notch.top,
        );
        frame.sheet.rect('notch', box, {
          fill: TINT.notch,
          subject: `notch:${piece.id}:${notch.opening}`,
          hint: `sawn out of ${piece.id} for ${notch.opening}`,
        });
      }
    }
  }
}
