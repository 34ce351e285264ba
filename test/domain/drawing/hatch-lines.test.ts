import { describe, expect, it } from '@jest/globals';
import { hatchStrokes } from '../../../src/domain/drawing/hatch-lines.js';
import type { DrawingPoint, HatchPattern, HatchShape } from '../../../src/domain/drawing/index.js';

const square = (size: number, at = 0): DrawingPoint[] => [
  { x: at, y: at },
  { x: at + size, y: at },
  { x: at + size, y: at + size },
  { x: at, y: at + size },
];
const hatch = (boundary: DrawingPoint[][], pattern: HatchPattern, spacing: number): HatchShape => ({
  kind: 'hatch',
  layer: 'hatch',
  boundary,
  pattern,
  spacing,
});
const total = (shape: HatchShape): number =>
  hatchStrokes(shape).reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);

describe('hatchStrokes', () => {
  // The strokes of a hatch cover its area: total length × spacing = area (geometry), exactly where rows divide it evenly.
  it('fills a square of 1000 with level strokes 10 apart: 100 strokes of 1000', () => {
    const strokes = hatchStrokes(hatch([square(1000)], 'level', 10));
    expect(strokes).toHaveLength(100);
    expect(total(hatch([square(1000)], 'level', 10))).toBe(100_000);
  });

  it('leaves a hole free', () => {
    expect(total(hatch([square(1000), square(400, 300)], 'level', 10))).toBe((1000 * 1000 - 400 * 400) / 10);
  });

  it.each(['rising', 'upright'] as const)('covers the same area with %s strokes', (pattern) => {
    expect(total(hatch([square(10_000)], pattern, 10)) * 10).toBeCloseTo(1e8, -5);
  });

  it('crosses in two directions and keeps every stroke inside', () => {
    const strokes = hatchStrokes(hatch([square(1000)], 'crossed', 40));
    expect(strokes.some(({ from, to }) => (to.x - from.x) * (to.y - from.y) < 0)).toBe(true);
    for (const { from, to } of strokes)
      for (const value of [from.x, from.y, to.x, to.y]) expect(value >= -1 && value <= 1001).toBe(true);
  });
});
