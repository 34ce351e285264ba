import type { Vector } from '../geometry/vector.js';
import { arcExtremes } from './arc-shape.js';
import { dimensionStrokes } from './dimension-strokes.js';
import { turnedBox } from './obstacles.js';
import type { OutlinePoint, Shape, TextShape } from './shapes.js';
import type { Box } from './sheet.js';
import { CAP_HEIGHT, textWidth } from './text-width.js';

/** Everything painted, letters included [nm]. */
export function extentOf(shapes: readonly Shape[]): Box {
  const points = shapes.flatMap((shape): { x: number; y: number }[] => {
    switch (shape.kind) {
      case 'line':
        return [shape.from, shape.to];
      case 'arc':
        return arcExtremes(shape.from, shape.to, shape.bulge);
      case 'polyline':
        return [...shape.points];
      case 'polygon':
        return shape.points.flatMap((point, i) => {
          const { bulge = 0 } = point;
          return bulge === 0 ? [point] : arcExtremes(point, shape.points[(i + 1) % shape.points.length] as OutlinePoint, bulge);
        });
      case 'circle':
        return [
          { x: shape.centre.x - shape.radius, y: shape.centre.y - shape.radius },
          { x: shape.centre.x + shape.radius, y: shape.centre.y + shape.radius },
        ];
      case 'text':
        return aroundText(shape);
      case 'dimension':
        return dimensionStrokes(shape).flatMap((stroke) =>
          stroke.kind === 'line' ? [stroke.from, stroke.to] : aroundText(stroke),
        );
      case 'hatch':
        return [];
    }
  });
  const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), -Infinity);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.floor(least(xs)), right: Math.ceil(most(xs)), bottom: Math.floor(least(ys)), top: Math.ceil(most(ys)) };
}

/** Corners of a text's capitals. */
function aroundText({ at, text, size, bold, anchor, angle }: TextShape): Vector[] {
  const width = textWidth(text, size, bold);
  const shift = anchor === 'start' ? width / 2 : anchor === 'middle' ? 0 : -width / 2;
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  return [...turnedBox({ x: at.x + shift * cos, y: at.y + shift * sin }, width, size * CAP_HEIGHT, angle)];
}
