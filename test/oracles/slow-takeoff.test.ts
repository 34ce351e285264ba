import { describe, expect, it } from '@jest/globals';
import type { ScheduleDocument, WallRow } from '../support/schedule-document.js';
import { HERON } from './heron-figures.js';
import { slowStacks } from './slow-stack.js';
import { slowTakeoff } from './slow-takeoff.js';
import { shoelace, unionArea } from './union-area.js';

const drawing = (walls: readonly Partial<WallRow>[], more: Partial<ScheduleDocument> = {}): ScheduleDocument => ({
  format: 'wallcourse/schedule@1', name: 'oracle', units: 'in', dimensionsTo: 'foam-face', range: 'HERON-16',
  storeys: [{ id: 'S1', height: 96, grade: 'above', storeyAbove: false, closed: false }],
  walls: walls.map((wall, index) => ({ mark: `W${index}`, storey: 'S1', core: '6', ...wall })),
  openings: [],
  ...more,
});
const square = (width: number, depth: number): Partial<WallRow>[] => [
  { from: [0, 0], to: [width, 0] }, { from: [width, 0], to: [width, depth] }, { from: [width, depth], to: [0, depth] }, { from: [0, depth], to: [0, 0] },
];
const YD3 = 46_656;

describe('the slow take-off knows the worked figures', () => {
  it('free wall 20 ft x 8 ft: 30 forms, 12 closures, concrete less a closure at each end', () => {
    const answer = slowTakeoff(drawing([{ from: [0, 0], to: [240, 0] }]));
    expect(answer.leastForms.get('6')).toBe(30);
    expect(answer.closures.get('6')).toBe(12);
    expect(answer.laid.map(({ length }) => length)).toEqual(Array.from({ length: 6 }, () => 240));
    expect(answer.concreteByLengths).toBe((240 - 5) * 6 * 96);
    expect(answer.concreteByUnion).toBeCloseTo((240 - 5) * 6 * 96, 6);
  });

  it('rectangle 40 ft x 28 ft: axis length x core x height, and 6 square units at each of 4 corners', () => {
    const answer = slowTakeoff(drawing(square(480, 336)));
    const axis = 2 * (480 - 11) + 2 * (336 - 11);
    expect(answer.walls.map((wall) => wall.axis)).toEqual([469, 325, 469, 325]);
    expect(answer.corners).toEqual(new Map([['corner 6', 24]]));
    expect(answer.concreteByLengths / YD3).toBeCloseTo((axis * 6 * 96) / YD3, 9);
    expect(answer.concreteByUnion / answer.concreteByLengths).toBeCloseTo(1, 12);
    // Each course: the outline less a long and a short leg at every corner: 1632 - 4 x 59.
    for (const { length } of answer.laid) expect(length).toBeCloseTo(1632 - 4 * 59, 9);
    expect(answer.seams).toEqual([]);
  });

  it('the same rectangle drawn the other way is turned round', () => {
    const back = square(480, 336).map(({ from, to }) => ({ from: to!, to: from! }));
    expect(slowTakeoff(drawing(back)).walls.map((wall) => wall.axis)).toEqual([469, 325, 469, 325]);
  });

  it('a courtyard is walked clockwise and its axis is longer than its drawn line', () => {
    const inner = square(200, 160).map(({ from, to }) => ({ from: [from![0] as number + 100, from![1] as number + 80] as const, to: [to![0] as number + 100, to![1] as number + 80] as const }));
    const answer = slowTakeoff(drawing([...square(480, 336), ...inner]));
    expect(answer.walls.slice(4).map((wall) => wall.axis)).toEqual([211, 171, 211, 171]);
  });

  it('a re-entrant corner lengthens the axis: L-shape 480 x 336 less 240 x 168', () => {
    const points = [[0, 0], [480, 0], [480, 168], [240, 168], [240, 336], [0, 336]] as const;
    const answer = slowTakeoff(drawing(points.map((from, index) => ({ from, to: points[(index + 1) % 6]! }))));
    expect(answer.walls.map((wall) => Math.round(wall.axis * 1e9) / 1e9)).toEqual([469, 157, 240, 168, 229, 325]);
    expect(answer.concreteByUnion / answer.concreteByLengths).toBeCloseTo(1, 12);
  });

  it('a turn of 45: 240 less 11/2 x tan 22.5 on the axis, one half unit a course', () => {
    const answer = slowTakeoff(drawing([{ from: [0, 0], to: [240, 0] }, { from: [240, 0], to: [240 + 120 * Math.SQRT1_2, 120 * Math.SQRT1_2] }]));
    expect(answer.walls[0]!.axis).toBeCloseTo(240 - 5.5 * Math.tan(Math.PI / 8), 9);
    expect(answer.corners).toEqual(new Map([['corner-pair 6', 6]]));
    expect(answer.concreteByUnion / answer.concreteByLengths).toBeCloseTo(1, 12);
  });

  it('a square tee: node on the through axis, concrete from its core face', () => {
    const answer = slowTakeoff(drawing([...square(480, 336), { from: [200, 11], to: [200, 325] }]));
    expect(answer.walls[4]!.axis).toBe(336 - 11);
    const outline = (2 * 469 + 2 * 325) * 6 * 96;
    expect(answer.concreteByLengths).toBeCloseTo(outline + (325 - 6) * 6 * 96, 6);
    expect(answer.concreteByUnion / answer.concreteByLengths).toBeCloseTo(1, 12);
    expect(answer.laid.every(({ length }) => Math.abs(length - (1632 - 4 * 59 + 325 - 11)) < 1e-9)).toBe(true);
  });

  it('openings: a door 84 high stops 5 of 6 courses, jamb closures stand in every course it touches', () => {
    const door = { mark: 'D', wall: 'W0', at: 100, sill: 0, width: 36, height: 84 } as const;
    const buck = slowTakeoff(drawing([{ from: [0, 0], to: [240, 0] }], { openings: [door] }));
    expect(buck.laid.map(({ length }) => length)).toEqual([204, 204, 204, 204, 204, 240]);
    expect(buck.closures.get('6')).toBe(12);
    const closed = slowTakeoff(drawing([{ from: [0, 0], to: [240, 0] }], { openings: [{ ...door, lining: 'end-closure' }] }));
    expect(closed.laid.map(({ length }) => length)).toEqual([209, 209, 209, 209, 209, 240]);
    expect(closed.closures.get('6')).toBe(12 + 12);
    expect(closed.concreteByLengths).toBe((235 * 96 - 36 * 84) * 6);
  });

  it('a garage step: above the lower wall the higher one is a free end', () => {
    const answer = slowTakeoff(drawing([{ from: [0, 0], to: [240, 0] }, { from: [240, 0], to: [240, 200], height: 64 }]));
    expect(answer.corners.get('corner 6')).toBe(4);
    expect(answer.closures.get('6')).toBe(6 + 2 + 4);
    expect(answer.concreteByLengths).toBeCloseTo(6 * (64 * (240 - 5.5 + 200 - 5.5 - 5) + 32 * (240 - 5)), 6);
    expect(answer.concreteByUnion / answer.concreteByLengths).toBeCloseTo(1, 12);
  });

  it('a seam only between two corners off the module', () => {
    const points = [[0, 0], [480, 0], [480, 336.5], [0, 336.5]] as const;
    const rows = points.map((from, index) => ({ from, to: points[(index + 1) % 4]! }));
    expect(slowTakeoff(drawing(rows)).seams).toEqual([['W1'], ['W3']]);
    expect(slowTakeoff(drawing([{ from: [0, 0], to: [240.5, 0] }])).seams).toEqual([]);
  });

  it('feet, millimetres and words give the same', () => {
    const length = [[240, 'in'], [20, 'ft'], [6096, 'mm'], ["20'-0\"", 'ft'], ['6.096 m', 'in']] as const;
    for (const [to, units] of length) {
      const height = units === 'ft' ? 8 : units === 'mm' ? 2438.4 : 96;
      const storeys = [{ id: 'S1', height, grade: 'above', storeyAbove: false, closed: false }] as const;
      const answer = slowTakeoff(drawing([{ from: [0, 0], to: [to, 0] }], { units, storeys }));
      expect(answer.walls[0]!.axis).toBeCloseTo(240, 9);
      expect(answer.leastForms.get('6')).toBe(30);
    }
  });
});

describe('every stack there is', () => {
  it('8 ft is 6 courses', () => {
    expect(slowStacks(96, HERON)[0]).toEqual({ full: 6, strips: 0, ripped: 0, height: 96, deviation: 0 });
  });
  it('9 ft is 6 courses and one of 12, or 6 and 4 strips', () => {
    expect(slowStacks(108, HERON)[0]).toEqual({ full: 6, strips: 0, ripped: 12, height: 108, deviation: 0 });
    expect(slowStacks(108, { ...HERON, stackPrefers: 'strips' })[0]).toEqual({ full: 6, strips: 4, ripped: 0, height: 108, deviation: 0 });
  });
});

describe('union of polygons', () => {
  it('two unit squares half over one another, a hole left by four walls, one polygon twice', () => {
    const box = (x: number, y: number, width: number, depth: number) => [[x, y], [x + width, y], [x + width, y + depth], [x, y + depth]] as const;
    expect(unionArea([box(0, 0, 1, 1), box(0.5, 0.5, 1, 1)])).toBeCloseTo(1.75, 12);
    expect(unionArea([box(0, 0, 10, 1), box(0, 9, 10, 1), box(0, 0, 1, 10), box(9, 0, 1, 10)])).toBeCloseTo(36, 12);
    expect(unionArea([box(0, 0, 2, 3), box(0, 0, 2, 3)])).toBeCloseTo(6, 12);
    expect(unionArea([[[0, 0], [4, 0], [0, 4]], [[0, 0], [4, 4], [0, 4]]])).toBeCloseTo(12, 12);
  });
  it('shoelace of a triangle', () => {
    expect(shoelace([[0, 0], [4, 0], [0, 3]])).toBe(6);
    expect(shoelace([[0, 0], [0, 3], [4, 0]])).toBe(-6);
  });
});
