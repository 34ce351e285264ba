import type { Drawing, DrawingPoint, Shape, TextShape } from '../../src/domain/drawing/index.js';
import { dimensionStrokes } from '../../src/domain/drawing/dimension-strokes.js';
import { CAP_HEIGHT, textWidth } from '../../src/domain/drawing/text-width.js';

/** Every text of a drawing, those of its dimensions included. */
export const textsOf = (drawing: Drawing): TextShape[] =>
  drawing.shapes
    .flatMap((shape): Shape[] => (shape.kind === 'dimension' ? [...dimensionStrokes(shape)] : [shape]))
    .filter((shape) => shape.kind === 'text');

/** The four corners of a text's capitals, measured in the shipped family. */
export function textOutline(text: TextShape): DrawingPoint[] {
  const width = textWidth(text.text, text.size, text.bold);
  const left = text.anchor === 'start' ? 0 : text.anchor === 'middle' ? -width / 2 : -width;
  const half = (text.size * CAP_HEIGHT) / 2;
  const angle = (text.angle * Math.PI) / 180;
  return [
    [left, -half],
    [left + width, -half],
    [left + width, half],
    [left, half],
  ].map(([u, v]) => ({
    x: text.at.x + (u as number) * Math.cos(angle) - (v as number) * Math.sin(angle),
    y: text.at.y + (u as number) * Math.sin(angle) + (v as number) * Math.cos(angle),
  }));
}

/** Pairs of texts that touch, by separating axes. */
export function overlappingTexts(drawing: Drawing): string[] {
  const texts = textsOf(drawing)
    .filter((text) => text.text !== '')
    .map((text) => ({ text: text.text, outline: textOutline(text) }));
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => !separate(a.outline, b.outline))
      .map((b) => `${a.text} | ${b.text}`),
  );
}

/** Texts that stick out of the sheet. */
export const clippedTexts = (drawing: Drawing): string[] =>
  textsOf(drawing)
    .filter((text) => textOutline(text).some(({ x, y }) => x < 0 || y < 0 || x > drawing.width || y > drawing.height))
    .map((text) => text.text);

export function separate(a: readonly DrawingPoint[], b: readonly DrawingPoint[]): boolean {
  return [...edges(a), ...edges(b)].some((edge) => {
    const axis = { x: -edge.y, y: edge.x };
    const [left, right] = [spanOn(a, axis), spanOn(b, axis)];
    return left.max <= right.min || right.max <= left.min;
  });
}

const edges = (ring: readonly DrawingPoint[]): DrawingPoint[] =>
  ring.map((point, i) => {
    const next = ring[(i + 1) % ring.length] as DrawingPoint;
    return { x: next.x - point.x, y: next.y - point.y };
  });

function spanOn(ring: readonly DrawingPoint[], axis: DrawingPoint): { min: number; max: number } {
  const along = ring.map((point) => point.x * axis.x + point.y * axis.y);
  return { min: Math.min(...along), max: Math.max(...along) };
}
