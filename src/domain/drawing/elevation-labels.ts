import type { Nm } from '../quantity/length.js';
import type { LaidCourse, Piece } from '../takeoff/index.js';
import { rangeBox } from './elevation-frame.js';
import type { ElevationFrame } from './elevation-frame.js';
import { clearOfLines } from './elevation-branches.js';
import { lengthLabel } from './length-label.js';
import { freeParts, pieceLook, pieceTexts } from './piece-look.js';
import type { DrawingPoint } from './shapes.js';
import { TEXT_MM } from './sheet.js';
import type { Box } from './sheet.js';
import { CAP_HEIGHT } from './text-width.js';

const LABEL_PAD_MM = 0.7;
/** A single letter may stand closer to the edges of its piece. */
const LETTER_PAD_MM = 0.35;
/** Kinds of piece that are sawn to length. */
const LETTERED: ReadonlySet<Piece['kind']> = new Set(['straight', 'ledge', 'taper-top']);
const ALPHABET = 26;
const LETTER_A = 97;

/** Letters that stand for lengths of cut pieces too short to carry their figures, by the figures. */
export type CutLetters = ReadonlyMap<string, string>;

/**
 * Lettered in the order in which they are met, course by course: `a` to `z`, then `aa` and on. A piece too short for a letter
 * has none: the cut list names it.
 */
export function cutLetters(frame: ElevationFrame): CutLetters {
  const letters = new Map<string, string>();
  for (const course of frame.wall.courses) {
    for (const piece of course.pieces.filter(({ kind, cutEnds }) => LETTERED.has(kind) && cutEnds > 0)) {
      const text = lengthLabel(piece.pieceLength, frame.units);
      if (letters.has(text) || placeOf(frame, course, piece, text) !== null) continue;
      const letter = letterOf(letters.size);
      if (placeOf(frame, course, piece, letter) !== null) letters.set(text, letter);
    }
  }
  return letters;
}

function letterOf(index: number): string {
  const last = String.fromCharCode(LETTER_A + (index % ALPHABET));
  return index < ALPHABET ? last : `${letterOf(Math.floor(index / ALPHABET) - 1)}${last}`;
}

/** Labels last, over hatches, and only where they fit. */
export function drawPieceLabels(frame: ElevationFrame, letters: CutLetters): void {
  for (const course of frame.wall.courses) {
    for (const piece of course.pieces) if (!piece.inside) labelPiece(frame, course, piece, letters);
  }
}

function labelPiece(frame: ElevationFrame, course: LaidCourse, piece: Piece, letters: CutLetters): void {
  const look = pieceLook(piece, frame.range);
  const texts = pieceTexts(piece, frame.units);
  const letter = LETTERED.has(piece.kind) ? letters.get(lengthLabel(piece.pieceLength, frame.units)) : undefined;
  for (const text of letter === undefined || piece.cutEnds === 0 ? texts : wordingsWith(letter, piece, texts)) {
    const place = placeOf(frame, course, piece, text);
    if (place === null) continue;
    const muted = look.key === 'full';
    const style = { layer: muted ? 'muted' : 'text', bold: !muted, anchor: 'middle', backdrop: look.fill } as const;
    frame.sheet.text(place.at, text, TEXT_MM.tiny, { ...style, angle: place.angle });
    return;
  }
}

/** The letter where the length does not fit; a sku in place of a length only where neither does. */
const wordingsWith = (letter: string, piece: Piece, texts: readonly string[]): string[] =>
  piece.kind === 'straight' ? [...texts, letter] : [...texts.slice(0, -1), letter, ...texts.slice(-1)];

/** The first free part of the piece's face in which the text fits, level before upright. */
function placeOf(
  frame: ElevationFrame,
  course: LaidCourse,
  piece: Piece,
  text: string,
): { at: DrawingPoint; angle: number } | null {
  const bold = pieceLook(piece, frame.range).key !== 'full';
  for (const part of freeParts(piece, course).flatMap((free) => clearOfLines(frame, course, free))) {
    const box = rangeBox(frame, part.from, part.to, course.bottom + part.bottom, course.bottom + part.top);
    const angle = fittingAngle(frame, box, text, bold);
    if (angle !== null)
      return { at: { x: Math.round((box.left + box.right) / 2), y: Math.round((box.bottom + box.top) / 2) }, angle };
  }
  return null;
}

/** Level where the text fits the box, upright where it fits only so, null where it does not fit. */
function fittingAngle(frame: ElevationFrame, box: Box, text: string, bold: boolean): number | null {
  const pad = text.length === 1 ? LETTER_PAD_MM : LABEL_PAD_MM;
  const along = frame.sheet.widthOf(text, TEXT_MM.tiny, bold) + frame.sheet.mm(2 * pad);
  const across = frame.sheet.mm(TEXT_MM.tiny * CAP_HEIGHT + 2 * LABEL_PAD_MM);
  const fits = (width: Nm, height: Nm): boolean => box.right - box.left >= width && box.top - box.bottom >= height;
  if (fits(along, across)) return 0;
  return fits(across, along) ? 90 : null;
}
