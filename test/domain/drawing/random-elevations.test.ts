import { describe, expect, it } from '@jest/globals';
import { extentOf } from '../../../src/domain/drawing/shape-extent.js';
import { wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing, PolygonShape } from '../../../src/domain/drawing/index.js';
import type { LaidWall } from '../../../src/domain/takeoff/index.js';
import { clippedTexts, overlappingTexts } from '../../support/drawn-text.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';
import { PLAN_KINDS, randomPlan } from '../../support/plans.js';
import { RANGE, laidDocument } from './sample-drawings.js';

const SEEDS = [1];

type Edges = readonly [left: number, right: number, bottom: number, top: number];

const edgesOf = ({ points }: PolygonShape): Edges => {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
};

const drawnPieces = (drawing: Drawing): (readonly [subject: string, edges: Edges])[] =>
  drawing.shapes
    .filter((shape) => shape.kind === 'polygon')
    .filter(({ subject }) => subject?.startsWith('piece:') ?? false)
    .map((shape) => [shape.subject ?? '', edgesOf(shape)] as const);

/** Every piece as the take-off says it, its lower left corner moved to where the first one is drawn. */
function laidPieces(wall: LaidWall, drawn: ReturnType<typeof drawnPieces>): (readonly [string, Edges])[] {
  const pieces = wall.courses.flatMap((course) => course.pieces.map((piece) => ({ course, piece })));
  const [first] = pieces;
  const origin = drawn.find(([subject]) => subject === `piece:${first?.piece.id}`)?.[1];
  if (first === undefined || origin === undefined) return [];
  const mirrored = wall.outside === 'left';
  const node = mirrored ? origin[1] + first.piece.from : origin[0] - first.piece.from;
  const foot = origin[2] - first.course.bottom;
  return pieces.map(({ course, piece }) => {
    const [left, right] = mirrored ? [node - piece.to, node - piece.from] : [node + piece.from, node + piece.to];
    return [`piece:${piece.id}`, [left, right, foot + course.bottom, foot + course.bottom + course.height]] as const;
  });
}

const inOrder = (pieces: readonly (readonly [string, Edges])[]): string[] => pieces.map((piece) => JSON.stringify(piece)).sort();

describe('elevations of random plans', () => {
  it.each(PLAN_KINDS)('%s: every piece of every course once with its own edges, no label over another, nothing off the sheet', (kind) => {
    let pieces = 0;
    for (const seed of SEEDS) {
      const { storeys, units } = laidDocument(randomPlan(seed, { kind, tight: seed === 2 }).document);
      for (const storey of storeys) {
        for (const wall of storey.walls) {
          const drawing = wallElevation(wall, storey, RANGE, units, SHEET_HEADER);
          const drawn = drawnPieces(drawing);
          expect([seed, wall.mark, inOrder(drawn)]).toEqual([seed, wall.mark, inOrder(laidPieces(wall, drawn))]);
          expect([seed, wall.mark, overlappingTexts(drawing), clippedTexts(drawing)]).toEqual([seed, wall.mark, [], []]);
          const { left, bottom, right, top } = extentOf(drawing.shapes);
          expect([seed, wall.mark, left >= 0, bottom >= 0, right <= drawing.width, top <= drawing.height]).toEqual([
            seed, wall.mark, true, true, true, true,
          ]);
          pieces += drawn.length;
        }
      }
    }
    expect(pieces).toBeGreaterThan(50);
  });
});
