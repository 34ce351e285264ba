import { describe, expect, it } from '@jest/globals';
import { lengthLabel, wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing, PolygonShape } from '../../../src/domain/drawing/index.js';
import { UNSETTLED_SKU } from '../../../src/domain/takeoff/index.js';
import { inches } from '../../../src/domain/quantity/length.js';
import { demoRange, drawnStorey } from '../../support/drawn-job.js';
import { clippedTexts, overlappingTexts, textsOf } from '../../support/drawn-text.js';
import { SHEET_HEADER, drawnWall } from '../../support/drawn-wall.js';
import type { DrawnWall } from '../../support/drawn-wall.js';
import { ruleRange } from '../../support/rule-range.js';

const RANGE = ruleRange();
const HOUSE: DrawnWall = {
  mark: 'A',
  length: 469,
  courses: 7,
  rippedTop: 12,
  seamAt: 240,
  openings: [
    { mark: 'D1', at: 54.5, width: 36, sill: 0, height: 84 },
    { mark: 'W1', at: 150, width: 48, sill: 36, height: 48 },
    { mark: 'W2', at: 260, width: 24, sill: 40, height: 40, lining: 'end-closure' },
    { mark: 'W3', at: 380, width: 12, sill: 48, height: 24 },
  ],
};
const STRIPPED: DrawnWall = { mark: 'B', length: 240, courses: 6, stripAfter: [4, 5], ends: ['corner', 'corner'] };
const BRANCH: DrawnWall = {
  mark: 'C',
  length: 144,
  courses: 6,
  ends: ['tee', 'corner'],
  outside: 'left',
  turn: 45,
  openings: [{ mark: 'W9', at: 60, width: 30, sill: 32, height: 48 }],
};
const LONG: DrawnWall = {
  mark: 'L',
  length: 1440,
  courses: 9,
  openings: Array.from({ length: 18 }, (_, i) => ({ mark: `W${i + 1}`, at: 60 + i * 76, width: 36, sill: 36, height: 48 })),
};
const SHORT: DrawnWall = { mark: 'E', length: 50, courses: 6, ends: ['free', 'free'] };
const SLITS: DrawnWall = {
  mark: 'F',
  length: 300,
  courses: 6,
  openings: Array.from({ length: 20 }, (_, i) => ({ mark: `slit ${i + 1}`, at: 40 + i * 11, width: 4, sill: 32, height: 48 })),
};
const ALL = { HOUSE, STRIPPED, BRANCH, LONG, SHORT, SLITS };
const drawn = (sketch: DrawnWall, units: 'in' | 'mm' = 'in'): Drawing => {
  const { wall, storey } = drawnWall(sketch);
  return wallElevation(wall, storey, RANGE, units, SHEET_HEADER);
};
const polygons = (drawing: Drawing, prefix: string): PolygonShape[] =>
  drawing.shapes.filter((shape) => shape.kind === 'polygon').filter((shape) => shape.subject?.startsWith(prefix) ?? false);
const extent = (shape: PolygonShape): { left: number; right: number; bottom: number; top: number } => {
  const [xs, ys] = [shape.points.map(({ x }) => x), shape.points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
};
const words = (drawing: Drawing): string[] => textsOf(drawing).map(({ text }) => text);

describe('wallElevation draws the wall as it is laid', () => {
  it.each(Object.entries(ALL))('%s: every piece once, and the pieces of a course tile its area to the nanometre', (_, sketch) => {
    const { wall, storey } = drawnWall(sketch);
    const shapes = polygons(wallElevation(wall, storey, RANGE, 'in', SHEET_HEADER), 'piece:');
    expect(shapes.map(({ subject }) => subject).sort()).toEqual(
      wall.courses.flatMap((course) => course.pieces.map(({ id }) => `piece:${id}`)).sort(),
    );
    for (const course of wall.courses) {
      const tiling = course.pieces
        .filter((piece) => !piece.inside)
        .map((piece) => extent(shapes.find(({ subject }) => subject === `piece:${piece.id}`) as PolygonShape));
      const drawnArea = tiling.reduce((sum, box) => sum + BigInt(box.right - box.left) * BigInt(box.top - box.bottom), 0n);
      const gaps = course.voids.reduce((sum, gap) => sum + gap.to - gap.from, 0);
      expect(drawnArea).toBe(BigInt(course.to - course.from - gaps) * BigInt(course.height));
    }
  });

  it('puts a station of a wall with its outside on the right to the right, and mirrors one with its outside on the left', () => {
    for (const [sketch, mirrored] of [
      [HOUSE, false],
      [BRANCH, true],
    ] as const) {
      const { wall, storey } = drawnWall(sketch);
      const [first, last] = [wall.courses[0]?.pieces[0], wall.courses[0]?.pieces.filter((piece) => !piece.inside).at(-1)];
      const shapes = polygons(wallElevation(wall, storey, RANGE, 'in', SHEET_HEADER), 'piece:');
      const leftOf = (id: string | undefined): number =>
        extent(shapes.find(({ subject }) => subject === `piece:${id}`) as PolygonShape).left;
      expect(leftOf(first?.id) > leftOf(last?.id)).toBe(mirrored);
    }
  });

  it('draws openings, closures, strips, notches, the seam and the rip', () => {
    const house = drawn(HOUSE);
    expect(polygons(house, 'opening:').map(({ subject }) => subject)).toEqual([
      'opening:D1',
      'opening:W1',
      'opening:W2',
      'opening:W3',
    ]);
    const door = extent(polygons(house, 'opening:D1')[0] as PolygonShape);
    expect([door.right - door.left, door.top - door.bottom]).toEqual([inches(36), inches(84)]);
    expect(polygons(house, 'notch:').some(({ subject }) => subject?.endsWith(':D1'))).toBe(true);
    expect(house.shapes.filter(({ layer, kind }) => layer === 'seam' && kind === 'line').length).toBeGreaterThan(7);
    expect(house.shapes.some(({ layer }) => layer === 'rip')).toBe(true);
    expect(polygons(drawn(STRIPPED), 'strip:')).toHaveLength(2);
    expect(polygons(drawn(SHORT), 'piece:').filter(({ layer }) => layer === 'closure')).toHaveLength(12);
  });

  it('tells the kinds of piece apart by fill and by hatch', () => {
    const house = drawn(HOUSE);
    const fills = new Set(polygons(house, 'piece:').map(({ fill }) => fill));
    expect(fills.size).toBe(5);
    const patterns = new Set(house.shapes.filter((shape) => shape.kind === 'hatch').map(({ pattern }) => pattern));
    expect([...patterns].sort()).toEqual(['crossed', 'dotted', 'level', 'rising', 'upright']);
  });
});

describe('wallElevation writes', () => {
  it('the lengths, positions, sizes, courses and the stack in feet and inches', () => {
    const texts = words(drawn(HOUSE));
    // 39'-1" axis + 5 1/2" past each node = 40'-0"; the door 60" from the face's end is 54 1/2" from the node
    for (const text of [
      `40'-0" along the dimension line`,
      `39'-1" axis, node to node`,
      `5'-0"`,
      `3'-0"`,
      `1'-4"`,
      `1'-0"`,
      `9'-0"`,
      `7'-0" head`,
      '0" footing',
    ])
      expect(texts).toContain(text);
    expect(texts).toContain(`D1: 3'-0" × 7'-0", sill 0", 5'-0" from the start, buck`);
    expect(texts).toContain(`Stack: 7 courses, top course ripped to 1'-0" = 9'-0"`);
  });

  it('the same in millimetres for a metric schedule', () => {
    const texts = words(drawn(HOUSE, 'mm'));
    for (const text of ['12192 along the dimension line', '11912.6 axis, node to node', '1524', '406.4', '2743.2'])
      expect(texts).toContain(text);
  });

  it('job, revision, scale, caution, marks, junctions and hands', () => {
    const house = drawn(HOUSE);
    const texts = words(house);
    for (const text of [
      'Wall A',
      'J-000123, revision 2',
      'Harbour clinic, block B',
      `Scale ${house.scaleText}`,
      'D1',
      'W1',
      'W2',
      'W3',
      'seam',
      '1',
      '7',
    ])
      expect(texts).toContain(text);
    expect(texts).toContain('start S1-J1: corner 90° left, wall D');
    expect(texts).toContain('end S1-J2: corner 90° left, wall B');
    expect(texts).toContain('corner unit SQ6-L, left hand');
    expect(texts).toContain('corner unit SQ6-R, right hand');
    expect(SHEET_HEADER.caution.split(' ').every((word) => texts.some((text) => text.includes(word)))).toBe(true);
    expect(house.scale).toBe(64);
    expect(house.scaleText).toBe(`3/16" = 1'-0" (1:64)`);
  });
});

describe('cut pieces', () => {
  it.each(Object.entries({ HOUSE, STRIPPED, BRANCH }))(
    '%s: a piece no shorter than the range allows says its length, in figures or by a letter of the list',
    (_, sketch) => {
      const { wall, storey } = drawnWall(sketch);
      const texts = words(wallElevation(wall, storey, RANGE, 'in', SHEET_HEADER));
      const listed = texts.filter((text) => text.startsWith('Cut to: ')).flatMap((text) => text.slice(8).split(', '));
      const cut = wall.courses
        .flatMap(({ pieces }) => pieces.filter(({ kind, cutEnds }) => kind === 'straight' && cutEnds > 0))
        .filter(({ pieceLength }) => pieceLength >= RANGE.minPiece);
      expect(cut.length).toBeGreaterThan(1);
      for (const piece of cut) {
        const length = lengthLabel(piece.pieceLength, 'in');
        const letter = listed.find((entry) => entry.endsWith(` = ${length}`))?.split(' = ')[0];
        expect([length, texts.includes(length) || (letter !== undefined && texts.includes(letter))]).toEqual([length, true]);
      }
    },
  );
});

describe('wallElevation at a corner that no unit makes', () => {
  it('says so at the end and shows the legs that support has to settle', () => {
    const range = demoRange();
    const storey = drawnStorey(
      {
        walls: [
          ['A', [0, 0], [240, 0], '6'],
          ['B', [240, 0], [240, 240], '8'],
        ],
      },
      range,
    );
    const [wall] = storey.walls;
    if (wall === undefined) throw new Error('no wall was laid');
    const drawing = wallElevation(wall, storey, range, 'in', SHEET_HEADER);
    const legs = wall.courses.flatMap(({ pieces }) => pieces.filter(({ sku }) => sku === UNSETTLED_SKU));
    expect(words(drawing).some((text) => text.includes('corner 90° left, by advice, wall B'))).toBe(true);
    expect(legs.length > 0).toBe(words(drawing).includes('formed as support advises'));
    expect(polygons(drawing, 'piece:').filter(({ fill }) => fill === '#ffffff')).toHaveLength(legs.length);
  });
});

describe('wallElevation is legible', () => {
  it.each(Object.entries(ALL))(
    '%s: no text touches another and none leaves the sheet, in either system of units',
    (_, sketch) => {
      for (const units of ['in', 'mm'] as const) {
        expect(overlappingTexts(drawn(sketch, units))).toEqual([]);
        expect(clippedTexts(drawn(sketch, units))).toEqual([]);
      }
    },
  );

  it.each(Object.entries(ALL))('%s: no letter is smaller than 6 point at the stated scale', (_, sketch) => {
    const drawing = drawn(sketch);
    for (const text of textsOf(drawing)) expect(text.size / drawing.scale).toBeGreaterThanOrEqual(2_116_666);
  });
});
