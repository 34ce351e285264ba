import type PDFDocument from 'pdfkit';
import { arcCurves } from './arc-shape.js';
import { dimensionStrokes } from './dimension-strokes.js';
import { hatchStrokes } from './hatch-lines.js';
import { NM_PER_INCH } from '../quantity/length.js';
import type { Drawing, DrawingPoint, Layer, OutlinePoint, PlainShape, TextShape } from './shapes.js';
import { CAP_HEIGHT, textWidth } from './text-width.js';

const POINTS_PER_NM = 72 / NM_PER_INCH;
const BACKDROP_MARGIN = 0.22;

export type PdfDocument = InstanceType<typeof PDFDocument>;

/** Names under which the two shipped faces are registered in a document. */
export const REGULAR = 'regular';
export const BOLD = 'bold';

/** Size of a drawing on paper at its own scale [points]. */
export const paperSize = (drawing: Drawing): { width: number; height: number } => ({
  width: (drawing.width / drawing.scale) * POINTS_PER_NM,
  height: (drawing.height / drawing.scale) * POINTS_PER_NM,
});

/**
 * Paints a drawing into a document at its own scale.
 *
 * @param left   left edge of the sheet on the page [points]
 * @param top    upper edge of the sheet on the page [points]
 */
export function paintDrawing(doc: PdfDocument, drawing: Drawing, left: number, top: number): void {
  const perModel = POINTS_PER_NM / drawing.scale;
  const place: Place = {
    x: (value) => left + value * perModel,
    y: (value) => top + (drawing.height - value) * perModel,
    size: (value) => value * perModel,
  };
  const layers = new Map(drawing.layers.map((layer) => [layer.name, layer]));
  for (const shape of drawing.shapes.flatMap((each) => (each.kind === 'dimension' ? dimensionStrokes(each) : [each]))) {
    const layer = layers.get(shape.layer);
    if (layer === undefined) throw new Error(`a shape lies on layer ${shape.layer}, which the drawing does not have`);
    paintShape(doc, shape, layer, place);
  }
}

interface Place {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly size: (value: number) => number;
}

function paintShape(doc: PdfDocument, shape: PlainShape, layer: Layer, place: Place): void {
  if (shape.kind === 'text') {
    paintText(doc, shape, layer, place);
    return;
  }
  doc.save();
  doc
    .lineWidth(layer.weight * POINTS_PER_NM)
    .strokeColor(layer.colour)
    .lineCap('butt')
    .lineJoin('miter');
  if (layer.dash !== null) setDash(doc, layer.dash);
  switch (shape.kind) {
    case 'line':
      trace(doc, [shape.from, shape.to], place).stroke();
      break;
    case 'arc':
      doc.moveTo(place.x(shape.from.x), place.y(shape.from.y));
      bend(doc, shape.from, shape.to, shape.bulge, place).stroke();
      break;
    case 'polyline':
      trace(doc, shape.points, place).stroke();
      break;
    case 'polygon':
      fillAndStroke(outline(doc, shape.points, place).closePath(), shape.fill, shape.outline ? layer.colour : null);
      break;
    case 'circle':
      fillAndStroke(
        doc.circle(place.x(shape.centre.x), place.y(shape.centre.y), place.size(shape.radius)),
        shape.fill,
        layer.colour,
      );
      break;
    case 'hatch':
      for (const { from, to } of hatchStrokes(shape)) trace(doc, [from, to], place);
      doc.stroke();
      break;
  }
  doc.restore();
}

/** The document takes a list of dashes and gaps; its published types know only a single dash. */
function setDash(doc: PdfDocument, dash: readonly number[]): void {
  doc.dash(dash.map((part) => part * POINTS_PER_NM) as unknown as number, {});
}

function trace(doc: PdfDocument, points: readonly DrawingPoint[], place: Place): PdfDocument {
  points.forEach((point, i) =>
    i === 0 ? doc.moveTo(place.x(point.x), place.y(point.y)) : doc.lineTo(place.x(point.x), place.y(point.y)),
  );
  return doc;
}

function outline(doc: PdfDocument, points: readonly OutlinePoint[], place: Place): PdfDocument {
  const [first] = points;
  if (first === undefined) return doc;
  doc.moveTo(place.x(first.x), place.y(first.y));
  points.forEach((point, i) => {
    const next = points[(i + 1) % points.length] as OutlinePoint;
    const { bulge = 0 } = point;
    if (bulge !== 0) bend(doc, point, next, bulge, place);
    else if (i + 1 < points.length) doc.lineTo(place.x(next.x), place.y(next.y));
  });
  return doc;
}

/** An arc as cubic curves of an eighth of a turn at most; the format has no arcs of its own. */
function bend(doc: PdfDocument, from: DrawingPoint, to: DrawingPoint, bulge: number, place: Place): PdfDocument {
  for (const [a, b, c] of arcCurves(from, to, bulge))
    doc.bezierCurveTo(place.x(a.x), place.y(a.y), place.x(b.x), place.y(b.y), place.x(c.x), place.y(c.y));
  return doc;
}

function fillAndStroke(doc: PdfDocument, fill: string | null, outline: string | null): void {
  if (fill !== null && outline !== null) doc.fillAndStroke(fill, outline);
  else if (fill !== null) doc.fill(fill);
  else doc.stroke();
}

function paintText(doc: PdfDocument, text: TextShape, layer: Layer, place: Place): void {
  const size = place.size(text.size);
  const width = textWidth(text.text, size, text.bold);
  const [x, y] = [place.x(text.at.x), place.y(text.at.y)];
  const left = x - (text.anchor === 'middle' ? width / 2 : text.anchor === 'end' ? width : 0);
  doc.save();
  if (text.angle !== 0) doc.rotate(-text.angle, { origin: [x, y] });
  if (text.backdrop !== null) {
    const margin = size * BACKDROP_MARGIN;
    const height = size * CAP_HEIGHT + 2 * margin;
    doc.rect(left - margin, y - height / 2, width + 2 * margin, height).fill(text.backdrop);
  }
  doc
    .font(text.bold ? BOLD : REGULAR)
    .fontSize(size)
    .fillColor(layer.colour);
  doc.text(text.text, left, y + (size * CAP_HEIGHT) / 2, { lineBreak: false, baseline: 'alphabetic' });
  doc.restore();
}
