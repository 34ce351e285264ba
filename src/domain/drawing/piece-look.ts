import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { LengthUnit } from '../schedule/schedule.js';
import { UNSETTLED_SKU } from '../takeoff/index.js';
import type { LaidCourse, Piece } from '../takeoff/index.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';
import { partsUnderSlope, pieceProfile } from './slope-outline.js';
import type { FacePart } from './slope-outline.js';
import type { HatchPattern } from './shapes.js';

export type LookKey = 'full' | 'cut' | 'corner-left' | 'corner-right' | 'corner-either' | 'ledge' | 'taper' | 'closure' | 'by-advice';

/** How a kind of piece is told apart: a tint for colour, a hatch for grey prints. */
export interface Look {
  readonly key: LookKey;
  readonly fill: string;
  readonly pattern: HatchPattern | null;
}

const LOOKS: Readonly<Record<LookKey, Look>> = {
  full: { key: 'full', fill: TINT.full, pattern: null },
  cut: { key: 'cut', fill: TINT.cut, pattern: 'rising' },
  'corner-left': { key: 'corner-left', fill: TINT.cornerLeft, pattern: 'level' },
  'corner-right': { key: 'corner-right', fill: TINT.cornerRight, pattern: 'upright' },
  'corner-either': { key: 'corner-either', fill: TINT.cornerEither, pattern: 'level' },
  'by-advice': { key: 'by-advice', fill: TINT.paper, pattern: 'crossed' },
  ledge: { key: 'ledge', fill: TINT.ledge, pattern: 'falling' },
  taper: { key: 'taper', fill: TINT.taper, pattern: 'broken' },
  closure: { key: 'closure', fill: TINT.closure, pattern: 'crossed' },
};

export const lookOf = (key: LookKey): Look => LOOKS[key];

export function pieceLook(piece: Piece, range: FormRange): Look {
  if (piece.kind === 'end-closure') return LOOKS.closure;
  if (piece.sku === UNSETTLED_SKU) return LOOKS['by-advice'];
  if (piece.kind === 'ledge') return LOOKS.ledge;
  if (piece.kind === 'taper-top') return LOOKS.taper;
  if (piece.kind === 'straight')
    return piece.cutEnds > 0 || piece.slope !== null || piece.pieceLength < range.formLength ? LOOKS.cut : LOOKS.full;
  return LOOKS[cornerKey(piece.hand)];
}

const cornerKey = (hand: Piece['hand']): LookKey =>
  hand === null ? 'corner-either' : hand === 'left' ? 'corner-left' : 'corner-right';

/** Wordings of a piece's label, the fullest first; the first that fits is written. */
export function pieceTexts(piece: Piece, units: LengthUnit): readonly string[] {
  if (piece.kind === 'straight') return piece.cutEnds > 0 ? [lengthLabel(piece.pieceLength, units)] : [piece.sku];
  if (piece.kind === 'ledge' || piece.kind === 'taper-top') {
    const length = lengthLabel(piece.pieceLength, units);
    return piece.cutEnds > 0 ? [`${piece.sku} ${length}`, length, piece.sku] : [piece.sku];
  }
  const leg = piece.why === 'leg-long' ? 'long' : piece.why === 'leg-short' ? 'short' : '';
  const hand = piece.hand === null ? leg : piece.hand === 'left' ? 'L' : 'R';
  return [`${piece.sku} ${leg}`.trim(), piece.sku, hand].filter((text) => text !== '');
}

/** The parts of a piece's face that no opening and no end closure takes, as candidates for its label. */
export function freeParts(piece: Piece, course: LaidCourse): FacePart[] {
  if (piece.slope === null) return partsBesideNotches(piece, course);
  const under = partsUnderSlope(pieceProfile(piece, course));
  return partsBesideNotches(piece, course)
    .flatMap((free) => under.map((part) => overlap(free, part)))
    .filter((part) => part.to > part.from && part.top > part.bottom);
}

const overlap = (a: FacePart, b: FacePart): FacePart => ({
  from: Math.max(a.from, b.from),
  to: Math.min(a.to, b.to),
  bottom: Math.max(a.bottom, b.bottom),
  top: Math.min(a.top, b.top),
});

function partsBesideNotches(piece: Piece, course: LaidCourse): FacePart[] {
  const whole = { ...clearOfClosures(piece, course), bottom: 0, top: course.height };
  if (piece.notches.length === 0) return [whole];
  const left = Math.min(...piece.notches.map((notch) => notch.from));
  const right = Math.max(...piece.notches.map((notch) => notch.to));
  const low = Math.min(...piece.notches.map((notch) => notch.bottom));
  const high = Math.max(...piece.notches.map((notch) => notch.top));
  return [
    { ...whole, bottom: Math.max(0, high) },
    { ...whole, top: Math.min(course.height, low) },
    { ...whole, to: left },
    { ...whole, from: right },
  ].filter((part) => part.to > part.from && part.top > part.bottom);
}

function clearOfClosures(piece: Piece, course: LaidCourse): { from: Nm; to: Nm } {
  const inside = course.pieces.filter((other) => other.inside && other.from < piece.to && other.to > piece.from);
  const middle = (piece.from + piece.to) / 2;
  const from = Math.max(piece.from, ...inside.filter((other) => other.to <= middle).map((other) => other.to));
  const to = Math.min(piece.to, ...inside.filter((other) => other.from >= middle).map((other) => other.from));
  return { from, to };
}

/** What a hover over the piece says. */
export function pieceHint(piece: Piece, course: LaidCourse, units: LengthUnit): string {
  const cut = piece.cutEnds > 0 ? `, cut to ${lengthLabel(piece.pieceLength, units)}` : '';
  const left = piece.slope && [piece.slope.fromHeight, piece.slope.toHeight].map((height) => lengthLabel(height, units)).join(' and ');
  const slope = left === null ? '' : `, top sawn to the slope, ${left} left at its ends`;
  return `${piece.id}: course ${course.n}, ${piece.sku}${cut}, ${piece.why}${slope}`;
}
