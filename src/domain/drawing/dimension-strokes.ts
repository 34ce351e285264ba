import type { DimensionShape, DrawingPoint, LineShape, TextShape } from './shapes.js';

/** A dimension as plain lines and one text, the same for every writer: extension lines, dimension line, oblique ticks. */
export function dimensionStrokes(dimension: DimensionShape): readonly [...LineShape[], TextShape] {
  const { a, b, layer } = dimension;
  const line = (from: DrawingPoint, to: DrawingPoint): LineShape => ({ kind: 'line', layer, from, to });
  const text: TextShape = {
    kind: 'text',
    layer: 'text',
    at: dimension.textAt,
    text: dimension.text,
    size: dimension.size,
    bold: false,
    anchor: 'middle',
    angle: dimension.angle,
    backdrop: null,
  };
  return [
    ...extension(dimension.from, a, dimension.tick, line),
    ...extension(dimension.to, b, dimension.tick, line),
    line(a, b),
    tickAt(a, dimension, line),
    tickAt(b, dimension, line),
    text,
  ];
}

type MakeLine = (from: DrawingPoint, to: DrawingPoint) => LineShape;

/** From a small gap beside the measured point to a little past the dimension line. */
function extension(point: DrawingPoint, end: DrawingPoint, tick: number, line: MakeLine): LineShape[] {
  const length = Math.hypot(end.x - point.x, end.y - point.y);
  if (length <= tick) return [];
  const along = { x: (end.x - point.x) / length, y: (end.y - point.y) / length };
  const at = (distance: number): DrawingPoint => ({
    x: Math.round(point.x + along.x * distance),
    y: Math.round(point.y + along.y * distance),
  });
  return [line(at(tick / 2), at(length + tick / 2))];
}

function tickAt(point: DrawingPoint, dimension: DimensionShape, line: MakeLine): LineShape {
  const angle = Math.atan2(dimension.b.y - dimension.a.y, dimension.b.x - dimension.a.x) + Math.PI / 4;
  const dx = Math.round((Math.cos(angle) * dimension.tick) / 2);
  const dy = Math.round((Math.sin(angle) * dimension.tick) / 2);
  return line({ x: point.x - dx, y: point.y - dy }, { x: point.x + dx, y: point.y + dy });
}
