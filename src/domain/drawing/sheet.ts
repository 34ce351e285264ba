import { millimetres } from '../quantity/length.js';
import type { Nm } from '../quantity/length.js';
import { LAYERS } from './ink.js';
import type { LayerName } from './ink.js';
import type { Drawing, DrawingPoint, HatchPattern, OutlinePoint, Shape } from './shapes.js';
import { textWidth } from './text-width.js';

export interface Box {
  readonly left: Nm;
  readonly bottom: Nm;
  readonly right: Nm;
  readonly top: Nm;
}

export interface TextStyle {
  readonly layer?: LayerName;
  readonly bold?: boolean;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly angle?: number;
  readonly backdrop?: string | null;
}

export interface PolygonStyle {
  readonly fill?: string | null;
  readonly outline?: boolean;
  readonly subject?: string | null;
  readonly hint?: string | null;
}

/** Text sizes on paper [mm em]. The smallest is 6 pt. */
export const TEXT_MM = { tiny: 2.12, small: 2.4, body: 2.7, head: 3.6, mark: 4.6 } as const;
/** Spacing of hatch strokes on paper [mm]. */
const HATCH_MM: Readonly<Record<HatchPattern, number>> = { rising: 1.5, falling: 1.5, crossed: 1.6, level: 1.2, broken: 1.5, upright: 1.2, dotted: 1.4 };
const TICK_MM = 1.6;
// oxlint-disable-next-line no-control-regex
const CONTROL = /[\u0000-\u001f\u007f\u2028\u2029]+/g;

/** Collects the shapes of one drawing; paper sizes are turned into model lengths by its scale. */
export class Sheet {
  readonly scale: number;
  private readonly shapes: Shape[] = [];
  private paperFrom = Infinity;

  constructor(scale: number) {
    this.scale = scale;
  }

  /** Millimetres of paper as a length of the model. */
  mm(paper: number): Nm {
    return millimetres(paper) * this.scale;
  }

  /** What is drawn from now on belongs to the paper, not to the model. */
  beginPaper(): void {
    this.paperFrom = this.shapes.length;
  }

  line(layer: LayerName, from: DrawingPoint, to: DrawingPoint): void {
    this.shapes.push({ kind: 'line', layer, from, to });
  }

  /** A line, or the arc of a bulge other than 0. */
  edge(layer: LayerName, from: OutlinePoint, to: DrawingPoint): void {
    const { bulge = 0, x, y } = from;
    if (bulge === 0) this.line(layer, { x, y }, { x: to.x, y: to.y });
    else this.shapes.push({ kind: 'arc', layer, from: { x, y }, to: { x: to.x, y: to.y }, bulge });
  }

  polyline(layer: LayerName, points: readonly DrawingPoint[]): void {
    this.shapes.push({ kind: 'polyline', layer, points });
  }

  polygon(layer: LayerName, points: readonly OutlinePoint[], style: PolygonStyle = {}): void {
    const { fill = null, outline = true, subject = null, hint = null } = style;
    this.shapes.push({ kind: 'polygon', layer, points, fill, outline, subject, hint: hint === null ? null : clean(hint) });
  }

  rect(layer: LayerName, box: Box, style: PolygonStyle = {}): void {
    this.polygon(layer, corners(box), style);
  }

  circle(layer: LayerName, centre: DrawingPoint, radius: Nm, fill: string | null = null): void {
    this.shapes.push({ kind: 'circle', layer, centre, radius, fill });
  }

  /** @param sizeMm em size on paper [mm] */
  text(at: DrawingPoint, text: string, sizeMm: number, style: TextStyle = {}): void {
    const { layer = 'text', bold = false, anchor = 'start', angle = 0, backdrop = null } = style;
    this.shapes.push({ kind: 'text', layer, at, text: clean(text), size: this.mm(sizeMm), bold, anchor, angle, backdrop });
  }

  hatch(boundary: readonly (readonly DrawingPoint[])[], pattern: HatchPattern): void {
    this.shapes.push({ kind: 'hatch', layer: 'hatch', boundary, pattern, spacing: this.mm(HATCH_MM[pattern]) });
  }

  dimension(
    from: DrawingPoint,
    to: DrawingPoint,
    a: DrawingPoint,
    b: DrawingPoint,
    text: string,
    textAt: DrawingPoint,
    angle = 0,
  ): void {
    const size = this.mm(TEXT_MM.small);
    this.shapes.push({
      kind: 'dimension',
      layer: 'dimension',
      from,
      to,
      a,
      b,
      text,
      textAt,
      angle,
      size,
      tick: this.mm(TICK_MM),
    });
  }

  /** Width of a text on this sheet [nm of the model]. */
  widthOf(text: string, sizeMm: number, bold = false): Nm {
    return textWidth(clean(text), this.mm(sizeMm), bold);
  }

  drawing(head: Pick<Drawing, 'name' | 'title' | 'scaleText' | 'width' | 'height'>): Drawing {
    const paperFrom = Math.min(this.paperFrom, this.shapes.length);
    return { ...head, title: clean(head.title), scale: this.scale, layers: LAYERS, shapes: this.shapes, paperFrom };
  }
}

export const corners = (box: Box): DrawingPoint[] => [
  { x: box.left, y: box.bottom },
  { x: box.right, y: box.bottom },
  { x: box.right, y: box.top },
  { x: box.left, y: box.top },
];

const clean = (text: string): string => text.replace(CONTROL, ' ');
