import { describe, expect, it } from '@jest/globals';
import { storeyPlan, wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing, PolygonShape } from '../../../src/domain/drawing/index.js';
import { planWalls } from '../../../src/domain/drawing/plan-wall.js';
import { signedArea } from '../../../src/domain/geometry/polygon.js';
import { inches } from '../../../src/domain/quantity/length.js';
import { BAY_HOUSE, demoRange, drawnStorey } from '../../support/drawn-job.js';
import type { DrawnJob, HoleRow, PlanRow } from '../../support/drawn-job.js';
import { clippedTexts, overlappingTexts, textsOf } from '../../support/drawn-text.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';
import { SHAPES } from '../../support/plan-shapes.js';
import { seededRandom } from '../../support/seeded-random.js';

const RANGE = demoRange();
const BOX: DrawnJob = {
  walls: [
    ['A', [0, 0], [480, 0]],
    ['B', [480, 0], [480, 336]],
    ['C', [480, 336], [0, 336]],
    ['D', [0, 336], [0, 0]],
  ],
};
const words = (drawing: Drawing): string[] => textsOf(drawing).map(({ text }) => text);

function randomJob(kind: string, seed: number): DrawnJob {
  const random = seededRandom(seed * 31 + 7);
  const walls: PlanRow[] = [];
  const openings: HoleRow[] = [];
  for (const outline of SHAPES[kind]?.((low, high) => random.whole(Math.ceil(low), Math.floor(high)), random) ?? []) {
    const last = outline.open ? outline.points.length - 1 : outline.points.length;
    for (let i = 0; i < last; i += 1) {
      const [from, to] = [
        outline.points[i] as readonly [number, number],
        outline.points[(i + 1) % outline.points.length] as readonly [number, number],
      ];
      const mark = `W${walls.length + 1}`;
      walls.push([mark, from, to]);
      const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      for (let at = 46; at + 80 < length && random.chance(0.8); at += random.whole(44, 96)) {
        openings.push([
          `O${openings.length + 1}`,
          mark,
          at,
          random.pick([0, 32, 36]),
          random.whole(12, 36),
          random.pick([48, 36]),
        ]);
      }
    }
  }
  return {
    walls,
    openings,
    height: random.pick([96, 108, 100]),
    dimensionsTo: random.pick(['foam-face', 'concrete-face', 'axis'] as const),
  };
}

describe('planWalls', () => {
  it('mitres the cores of a closed loop: together they are axis length × core, as decision 5 settles', () => {
    const walls = planWalls(drawnStorey(BOX, RANGE));
    const cores = walls.reduce((sum, wall) => sum + Math.abs(signedArea(wall.core)), 0);
    const axis = walls.reduce((sum, wall) => sum + wall.wall.length, 0);
    expect(cores / (axis * inches(6))).toBeCloseTo(1, 12);
    // 2 · (480 − 11 + 336 − 11) in of axis
    expect(axis).toBe(inches(2 * (469 + 325)));
  });

  it('reaches the outside dimensions with its panels, and leaves the core a panel further in', () => {
    const [a] = planWalls(drawnStorey(BOX, RANGE));
    const xs = (a?.outsidePanel ?? []).map(({ x }) => Math.round(x) + 0);
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([0, inches(480)]);
    const inner = (a?.core ?? []).map(({ x, y }) => [Math.round(x), Math.round(y)]);
    expect(inner).toContainEqual([inches(2.5), inches(2.5)]);
    expect(inner).toContainEqual([inches(480 - 8.5), inches(8.5)]);
  });

  it('runs a branch to the through wall: its panels to the panel face, its core to the core', () => {
    const walls = planWalls(drawnStorey({ walls: [...BOX.walls, ['P', [200, 0], [200, 200]]] }, RANGE));
    const branch = walls.find(({ wall }) => wall.mark === 'P');
    expect(Math.min(...(branch?.outsidePanel ?? []).map(({ y }) => Math.round(y)))).toBe(inches(11));
    expect(Math.min(...(branch?.core ?? []).map(({ y }) => Math.round(y)))).toBe(inches(8.5));
  });
});

describe('storeyPlan', () => {
  it('writes marks, openings, lengths along the dimension line, junctions and turns that are not square', () => {
    const texts = words(storeyPlan(drawnStorey(BAY_HOUSE, RANGE), RANGE, 'in', SHEET_HEADER));
    for (const [mark] of BAY_HOUSE.walls) expect(texts).toContain(mark);
    for (const [mark] of BAY_HOUSE.openings ?? []) expect(texts).toContain(mark);
    for (const text of [`12'-6"`, `10'-0"`, `36'-8"`, `15'-10"`, 'Plan of storey S1', 'J-000123, revision 2'])
      expect(texts).toContain(text);
    expect(texts.filter((text) => text.endsWith('45° left'))).toHaveLength(2);
    expect(texts.filter((text) => text.endsWith('45° right'))).toHaveLength(2);
    expect(texts.some((text) => text.endsWith('67.5° left'))).toBe(true);
    expect(texts).toContain('S1-J1');
  });

  it('draws every opening over the whole thickness of its wall', () => {
    const storey = drawnStorey(BAY_HOUSE, RANGE);
    const drawing = storeyPlan(storey, RANGE, 'in', SHEET_HEADER);
    for (const wall of storey.walls) {
      for (const opening of wall.openings) {
        const shape = drawing.shapes.find(
          (each) => each.kind === 'polygon' && each.subject === `opening:${opening.mark}`,
        ) as PolygonShape;
        expect(Math.abs(signedArea(shape.points)) / ((opening.to - opening.from) * wall.thickness)).toBeCloseTo(1, 6);
      }
    }
  });

  it('is the same drawing twice', () => {
    const draw = (): Drawing => storeyPlan(drawnStorey(BAY_HOUSE, RANGE), RANGE, 'mm', SHEET_HEADER);
    expect(draw()).toEqual(draw());
  });
});

describe('drawings of random storeys', () => {
  it.each(Object.keys(SHAPES))('%s: no text touches another, none leaves its sheet, every sheet fits a page', (kind) => {
    const storey = drawnStorey(randomJob(kind, Object.keys(SHAPES).indexOf(kind)), RANGE);
    for (const units of ['in', 'mm'] as const) {
      for (const drawing of [
        storeyPlan(storey, RANGE, units, SHEET_HEADER),
        ...storey.walls.map((wall) => wallElevation(wall, storey, RANGE, units, SHEET_HEADER)),
      ]) {
        expect([kind, units, drawing.name, overlappingTexts(drawing), clippedTexts(drawing)]).toEqual([
          kind,
          units,
          drawing.name,
          [],
          [],
        ]);
        expect(drawing.width / drawing.scale / 1e6).toBeLessThanOrEqual(392);
        expect(drawing.height / drawing.scale / 1e6).toBeLessThanOrEqual(232);
      }
    }
  });
});

describe('tees', () => {
  const PARTITIONED: DrawnJob = {
    walls: [...BOX.walls, ['P', [120, 0], [120, 336]], ['Q', [300, 336], [300, 0]], ['R', [120, 150], [300, 150]]],
    openings: [['D1', 'A', 180, 0, 36, 84]],
  };
  const storey = drawnStorey(PARTITIONED, RANGE);
  const elevation = (mark: string): Drawing => {
    const wall = storey.walls.find((each) => each.mark === mark);
    if (wall === undefined) throw new Error(`wall ${mark} was not laid`);
    return wallElevation(wall, storey, RANGE, 'in', SHEET_HEADER);
  };

  it('the plan dimensions every branch along its through wall, from the start as drawn to the axis', () => {
    const plan = storeyPlan(storey, RANGE, 'in', SHEET_HEADER);
    // drawn to the foam face on the right of from→to: the axis of a branch lies 5 1/2" to its left. P runs up at 120: 114 1/2";
    // Q runs down at 300: 305 1/2", which is 191" past P; from the start of C at 480 P lies 365 1/2", Q 174 1/2" away.
    const texts = words(plan);
    for (const text of [
      `9'-6 1/2" to axis P`,
      `15'-11" to axis Q`,
      `Tees on A, from its start to the axis: P 9'-6 1/2", Q 25'-5 1/2"`,
      `Tees on C, from its start to the axis: Q 14'-6 1/2", P 30'-5 1/2"`,
      'Lengths along the dimension line, tees to the axis',
    ])
      expect(texts).toContain(text);
    expect(texts.filter((text) => text.endsWith('to axis R'))).toHaveLength(2);
  });

  it('the elevation of the through wall dimensions the cut-out: its near edge and its width', () => {
    const texts = words(elevation('A'));
    // the cut-out is over the core of 6": 3" before the axis, 111 1/2" from the start
    expect(texts).toContain(`9'-3 1/2"`);
    expect(texts.filter((text) => text === `6" cut-out`)).toHaveLength(2);
    expect(texts).toContain(`Cut-out for wall P: its near edge 9'-3 1/2" from the start, 6" wide`);
    expect(texts).toContain(`Cut-out for wall Q: its near edge 25'-2 1/2" from the start, 6" wide`);
    expect(words(elevation('B')).some((text) => text.includes('ut-out'))).toBe(false);
  });

  it('the legend tells the through walls a partition ends on, and the panel cut out on this side or the far one', () => {
    const legendOf = (mark: string): string[] => words(elevation(mark)).filter((text) => /in section|cut out on/.test(text));
    // seen from the right of start to end: P runs up and Q down, so R stands on the right of both; P and Q stand inside A
    const farSide = 'panel cut out on the far side for a tee';
    const thisSide = 'panel cut out on this side for a tee';
    const ended = (mark: string): string => `wall ${mark}, which this wall ends on, in section`;
    expect(legendOf('P')).toEqual([thisSide, ended('A'), ended('C')]);
    expect(legendOf('Q')).toEqual([thisSide, ended('C'), ended('A')]);
    expect(legendOf('R')).toEqual([ended('P'), ended('Q')]);
    expect(legendOf('A')).toEqual([farSide]);
    expect(legendOf('B')).toEqual([]);
  });

  it('no text touches another and none leaves its sheet', () => {
    for (const units of ['in', 'mm'] as const) {
      const walls = storey.walls.map((wall) => wallElevation(wall, storey, RANGE, units, SHEET_HEADER));
      for (const drawing of [storeyPlan(storey, RANGE, units, SHEET_HEADER), ...walls])
        expect([drawing.name, overlappingTexts(drawing), clippedTexts(drawing)]).toEqual([drawing.name, [], []]);
    }
  });
});
