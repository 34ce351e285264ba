import { renderPng, renderSvg, storeyPlan, wallElevation, type Drawing, type SheetHeader } from '../../domain/drawing/index.js';
import { readRange } from '../../domain/range/read-range.js';
import type { LengthUnit } from '../../domain/schedule/schedule.js';
import type { LaidStorey } from '../../domain/takeoff/laid.js';
import { unstoredWall, type StoredWall } from '../takeoffs/stored-measurement.js';
import type { DrawingKind, DrawingType } from './drawings.schemas.js';
import { shippedFonts } from './shipped-fonts.js';

export interface DrawInput {
  readonly kind: DrawingKind;
  readonly ref: string;
  readonly storey: Omit<LaidStorey, 'walls'>;
  readonly walls: readonly StoredWall[];
  readonly range: unknown;
  readonly units: LengthUnit;
  readonly header: SheetHeader;
  readonly type: DrawingType;
  readonly widthPx: number;
}

/** The drawing as text or as bytes; null where there is nothing of that name to draw. */
export function draw(input: DrawInput): string | Uint8Array | null {
  const drawing = drawn(input);
  if (!drawing) return null;
  return input.type === 'image/svg+xml' ? renderSvg(drawing) : renderPng(drawing, shippedFonts(), input.widthPx);
}

function drawn({ kind, ref, storey: bare, walls, range: document, units, header }: DrawInput): Drawing | null {
  const range = readRange(document);
  if (!range.ok) throw new Error(`a stored range is not one: ${JSON.stringify(range.error)}`);
  const storey: LaidStorey = { ...bare, walls: walls.map(unstoredWall) };
  if (kind === 'plan') return storeyPlan(storey, range.value, units, header);
  const wall = storey.walls.find(({ mark }) => mark === ref);
  return wall ? wallElevation(wall, storey, range.value, units, header) : null;
}
