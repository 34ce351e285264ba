import {
  drawingsPdf,
  junctionDetail,
  renderDxf,
  renderPng,
  renderSvg,
  storeyPlan,
  wallElevation,
  type Drawing,
  type DrawnBracing,
  type SheetHeader,
} from '../../domain/drawing/index.js';
import { readRange } from '../../domain/range/read-range.js';
import type { LengthUnit } from '../../domain/schedule/schedule.js';
import type { LaidStorey } from '../../domain/takeoff/laid.js';
import { unstoredWall, type StoredWall } from '../takeoffs/stored-measurement.js';
import type { DrawingKind, DrawingType } from './drawings.schemas.js';
import { paperFor } from './paper-for.js';
import { shippedFonts } from './shipped-fonts.js';

export interface DrawInput {
  readonly kind: DrawingKind;
  readonly ref: string;
  readonly storey: Omit<LaidStorey, 'walls'>;
  readonly walls: readonly StoredWall[];
  readonly range: unknown;
  readonly units: LengthUnit;
  readonly header: SheetHeader;
  readonly pressurePsf: number | null;
  /** Of the storey; null where none was stored with the measurement, or none is drawn. */
  readonly bracing: DrawnBracing | null;
  readonly type: DrawingType;
  readonly widthPx: number;
  /** RFC 3339. */
  readonly createdAt: string;
}

/** The drawing as text or as bytes; null where there is nothing of that name to draw. */
export async function draw(input: DrawInput): Promise<string | Uint8Array | null> {
  const drawing = drawn(input);
  if (!drawing) return null;
  if (input.type === 'image/svg+xml') return renderSvg(drawing);
  if (input.type === 'image/vnd.dxf') return renderDxf(drawing);
  if (input.type === 'image/png') return renderPng(drawing, shippedFonts(), input.widthPx);
  const { header, units } = input;
  const setting = { title: `${header.job} ${drawing.title}`, author: header.supplier, createdAt: new Date(input.createdAt) };
  return drawingsPdf({ ...setting, drawings: [drawing], paper: paperFor(units) }, shippedFonts());
}

function drawn({ kind, ref, storey: bare, walls, range: document, units, header, pressurePsf, bracing }: DrawInput): Drawing | null {
  const range = readRange(document);
  if (!range.ok) throw new Error(`a stored range is not one: ${JSON.stringify(range.error)}`);
  const storey: LaidStorey = { ...bare, walls: walls.map(unstoredWall) };
  if (kind === 'plan') return storeyPlan(storey, range.value, units, header, bracing);
  if (kind === 'elevation') {
    const wall = storey.walls.find(({ mark }) => mark === ref);
    return wall ? wallElevation(wall, storey, range.value, units, header, bracing) : null;
  }
  const junction = storey.junctions.find(({ id }) => id === ref);
  return junction ? junctionDetail(junction, storey, range.value, units, header, pressurePsf) : null;
}
