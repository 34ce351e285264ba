import { describe, expect, test } from '@jest/globals';
import { takeOff, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { inches, toMm } from '../../../src/domain/quantity/length.js';
import type { Schedule } from '../../../src/domain/schedule/schedule.js';
import { brokenLaws } from '../../oracles/laid-laws.js';
import { boughtOf, cubicInches, extra, featured, formsIn, inInches, ledge, rectangle, reached, spansOf, wallIn } from '../../support/features.js';
import { heron } from '../../support/small-schedules.js';

// Worked by hand from decision 23; the demo range: T 11 and core 6, course 16, form 48, closure 2.5, projection 5, section 40 in².

const RANGE = heron();
const FREE = [{ mark: 'A', from: [0, 0], to: [240, 0] }] as const;
const lay = (schedule: Schedule): Takeoff => {
  const takeoff = takeOff(schedule, RANGE);
  expect(brokenLaws(takeoff, RANGE)).toEqual([]);
  return takeoff;
};
const told = ({ findings }: Takeoff): unknown[] => findings.filter(({ severity }) => severity !== 'note').map(({ code, wall, numbers }) => [code, wall, numbers]);

describe('a free wall 20 ft long with a ledge at 4 ft', () => {
  test('all along: five ledge forms in course 3, 25 straight ones in the others, section × (240 − 2 closures)', () => {
    const takeoff = lay(featured(FREE, [ledge('A', 48, 0, 240)]));
    const wall = wallIn(takeoff, 'A');
    expect(formsIn(wall, 3, 'ledge')).toEqual([[0, 48], [48, 96], [96, 144], [144, 192], [192, 240]]);
    expect([boughtOf(takeoff, 'LG6'), boughtOf(takeoff, 'ST6'), boughtOf(takeoff, 'EC6')]).toEqual([5, 25, 12]);
    expect(wall.ledges).toHaveLength(1);
    expect(wall.ledges[0]).toMatchObject({ course: 3, face: 'outside', bearing: inches(48), projection: inches(5), mitreStart: false, mitreEnd: false });
    expect(spansOf(wall.ledges[0]!.spans)).toEqual([[0, 240]]);
    expect(extra(wall.ledges[0]!)).toBeCloseTo(40 * 235, 6);
    expect(cubicInches(wall)).toBeCloseTo(235 * 96 * 6 + 40 * 235, 6);
    expect(told(takeoff)).toEqual([]);
    expect(takeoff.units.find(({ sku }) => sku === 'LG6')).toMatchObject({ kind: 'ledge', core: '6', spare: 0, lowerBound: 5 });
  });

  test('along a part of it: joints of kind unit where it meets straight forms, section × its own length', () => {
    const takeoff = lay(featured(FREE, [ledge('A', 48, 60, 120)]));
    const wall = wallIn(takeoff, 'A');
    expect(spansOf(wall.ledges[0]!.spans)).toEqual([[60, 120]]);
    expect(wall.courses[2]!.headJoints.filter(({ kind }) => kind === 'unit').map(({ at }) => inInches(at))).toEqual([60, 120]);
    expect(extra(wall.ledges[0]!)).toBeCloseTo(40 * 60, 6);
    expect(boughtOf(takeoff, 'LG6')).toBe(2);
  });

  test('ending off the form module: its own pieces come to 89.75 in', () => {
    const takeoff = lay(featured(FREE, [ledge('A', 48, 10.5, 100.25)]));
    const pieces = wallIn(takeoff, 'A').courses[2]!.pieces.filter(({ kind }) => kind === 'ledge');
    expect(pieces.reduce((sum, { pieceLength }) => sum + pieceLength, 0)).toBe(inches(89.75));
    expect(pieces.every(({ sku, webs }) => sku === 'LG6' && webs !== null)).toBe(true);
    expect(takeoff.cuts.filter(({ sku }) => sku === 'LG6').flatMap(({ parts }) => parts.map(({ length }) => length)).sort()).toEqual(
      pieces.filter(({ cutEnds }) => cutEnds > 0).map(({ pieceLength }) => pieceLength).sort(),
    );
  });

  test('an end that leaves less than a piece is laid and told as a note', () => {
    const takeoff = lay(featured(FREE, [ledge('A', 48, 3, 240)]));
    expect(takeoff.findings.filter(({ code }) => code === 'piece-short')).toEqual([
      expect.objectContaining({ severity: 'note', wall: 'A', course: 3, atMm: 0, numbers: { lengthMm: 76.2, minPieceMm: 203.2, courses: 1, core: '6' } }),
    ]);
  });

  test('the end of the forms is not the end of the concrete: a ledge that ends 1 in before it loses 1.5 in of the closure', () => {
    expect(extra(wallIn(lay(featured(FREE, [ledge('A', 48, 120, 239)])), 'A').ledges[0]!)).toBeCloseTo(40 * (237.5 - 120), 6);
  });

  test('metric: 1 m to 4 m of a wall of 6 m', () => {
    const metres = (value: number): number => value / 0.0254;
    const takeoff = lay(featured([{ mark: 'A', from: [0, 0], to: [metres(6), 0] }], [ledge('A', 48, metres(1), metres(4))]));
    expect(wallIn(takeoff, 'A').ledges[0]!.concreteMm3).toBeCloseTo(40 * 645.16 * 3000, 3);
    expect(toMm(wallIn(takeoff, 'A').ledges[0]!.spans[0]!.to)).toBe(4000);
  });

  test('goes on over a mark: one run of ledge forms, each wall its own concrete', () => {
    const walls = [{ mark: 'A', from: [0, 0], to: [100, 0] }, { mark: 'B', from: [100, 0], to: [240, 0] }] as const;
    const takeoff = lay(featured(walls, [ledge('A', 48, 0, 100), ledge('B', 48, 0, 140)]));
    expect([boughtOf(takeoff, 'LG6'), boughtOf(takeoff, 'ST6')]).toEqual([5, 25]);
    expect([wallIn(takeoff, 'A'), wallIn(takeoff, 'B')].map(({ ledges }) => [spansOf(ledges[0]!.spans), Math.round(extra(ledges[0]!))])).toEqual([
      [[[0, 100]], 40 * 97.5], [[[0, 140]], 40 * 137.5],
    ]);
  });
});

describe('a house of 480 × 336 in', () => {
  const around = (face: 'outside' | 'inside') =>
    featured(rectangle(480, 336), [ledge('A', 48, 0, 480, face), ledge('B', 48, 0, 336, face), ledge('C', 48, 0, 480, face), ledge('D', 48, 0, 336, face)]);

  test('ledge all round outside: no corner unit in its course, forms to the outer tips, section × (L + 2 · 5)', () => {
    const takeoff = lay(around('outside'));
    const drawn: Readonly<Record<string, number>> = { A: 480, B: 336, C: 480, D: 336 };
    for (const [mark, length] of Object.entries(drawn)) {
      const wall = wallIn(takeoff, mark);
      expect(reached(wall, 3)).toEqual([-10.5, length - 11 + 10.5]);
      expect(spansOf(wall.ledges[0]!.spans)).toEqual([[-10.5, length - 0.5]]);
      expect(wall.ledges[0]).toMatchObject({ mitreStart: true, mitreEnd: true });
      expect(extra(wall.ledges[0]!)).toBeCloseTo(40 * (length + 10), 6);
      expect(cubicInches(wall)).toBeCloseTo((length - 11) * 96 * 6 + 40 * (length + 10), 4);
    }
    expect(takeoff.laid.storeys[0]!.junctions.map(({ units }) => units.map(({ course }) => course))).toEqual(Array(4).fill([1, 2, 4, 5, 6]));
    expect(takeoff.units.filter(({ kind }) => kind === 'corner').reduce((sum, { bought }) => sum + bought, 0)).toBe(20);
    expect(takeoff.units.find(({ sku }) => sku === 'ST6')!.because.some(({ course }) => course === 3)).toBe(false);
    expect(told(takeoff)).toEqual([]);
  });

  test('ledge all round inside: forms to the foam-face corner outside, section × (L − 2 · 11 − 2 · 5)', () => {
    const takeoff = lay(around('inside'));
    const wall = wallIn(takeoff, 'A');
    expect(reached(wall, 3)).toEqual([-5.5, 474.5]);
    expect(extra(wall.ledges[0]!)).toBeCloseTo(40 * (480 - 22 - 10), 6);
    expect(told(takeoff)).toEqual([]);
  });

  test('on A alone: forms of A and of its neighbours run to the foam-face corners', () => {
    const takeoff = lay(featured(rectangle(480, 336), [ledge('A', 48, 0, 480)]));
    const wall = wallIn(takeoff, 'A');
    expect(reached(wall, 3)).toEqual([-5.5, 474.5]);
    expect(reached(wallIn(takeoff, 'B'), 3)[0]).toBe(-5.5);
    expect(reached(wallIn(takeoff, 'D'), 3)[1]).toBe(336 - 11 + 5.5);
    expect(wall.ledges[0]).toMatchObject({ mitreStart: false, mitreEnd: false });
    expect(extra(wall.ledges[0]!)).toBeCloseTo(40 * 480, 6);
    expect(takeoff.laid.storeys[0]!.junctions.map(({ walls, units }) => [walls.includes('A'), units.some(({ course }) => course === 3)])).toEqual(
      expect.arrayContaining([[true, false], [false, true]]),
    );
  });

  test('an end inside the leg takes the corner unit away; an end clear of the longest leg leaves it', () => {
    const unitsAt = (to: number): number[] => {
      const takeoff = lay(featured(rectangle(480, 336), [ledge('A', 48, 100, to)]));
      return takeoff.laid.storeys[0]!.junctions.find(({ walls }) => walls.includes('A') && walls.includes('B'))!.units.map(({ course }) => course);
    };
    expect(unitsAt(470)).toEqual([1, 2, 4, 5, 6]);
    expect(unitsAt(442)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  test('stops at a door that takes its course and at a window that takes a part of it', () => {
    const openings = [
      { mark: 'D1', wall: 'A', at: 60, sill: 0, width: 36, height: 84 },
      { mark: 'W1', wall: 'A', at: 200, sill: 40, width: 48, height: 36 },
    ];
    const takeoff = lay(featured(rectangle(480, 336), [ledge('A', 48, 0, 480)], openings));
    const wall = wallIn(takeoff, 'A');
    expect(spansOf(wall.ledges[0]!.spans)).toEqual([[-5.5, 54.5], [90.5, 194.5], [242.5, 474.5]]);
    expect(extra(wall.ledges[0]!)).toBeCloseTo(40 * (480 - 36 - 48), 6);
    const over = wall.courses[2]!.pieces.filter(({ kind }) => kind === 'straight');
    expect(spansOf(over)).toEqual([[194.5, 242.5]]);
    expect(over[0]!.notches).toEqual([expect.objectContaining({ opening: 'W1', bottom: inches(8), top: inches(16) })]);
  });

  test('a jamb lined with closures: forms run into the hole, the concrete does not', () => {
    const openings = [{ mark: 'D1', wall: 'A', at: 60, sill: 0, width: 36, height: 84, lining: 'end-closure' as const }];
    const wall = wallIn(lay(featured(rectangle(480, 336), [ledge('A', 48, 0, 480)], openings)), 'A');
    expect(spansOf(wall.ledges[0]!.spans)).toEqual([[-5.5, 57], [88, 474.5]]);
    expect(extra(wall.ledges[0]!)).toBeCloseTo(40 * (480 - 36), 6);
  });
});

test('a courtyard with a ledge on its foam face: re-entrant corners, section × (L − 2 · 5), forms to the convex corner', () => {
  const court = rectangle(300, 240).map(({ from, to, ...wall }) => ({ ...wall, mark: `${wall.mark}2`, from: [from[0] + 200, from[1] + 200], to: [to[0] + 200, to[1] + 200] }) as const);
  const features = court.map(({ mark, from, to }) => ledge(mark, 48, 0, Math.abs(to[0] - from[0]) + Math.abs(to[1] - from[1])));
  const takeoff = lay(featured([...rectangle(800, 700), ...court], features));
  const wall = wallIn(takeoff, 'A2');
  expect(inInches(wall.length)).toBe(311);
  expect(reached(wall, 3)).toEqual([-5.5, 316.5]);
  expect(extra(wall.ledges[0]!)).toBeCloseTo(40 * (300 - 10), 6);
});

test('two walls at a turn of 45° with a ledge: mitred at the outer tip, and asked about', () => {
  const half = 200 * Math.SQRT1_2;
  const walls = [{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [240 + half, half] }] as const;
  const takeoff = lay(featured(walls, [ledge('A', 48, 0, 240), ledge('B', 48, 0, 200)]));
  const tan = Math.tan(Math.PI / 8);
  expect(reached(wallIn(takeoff, 'A'), 3)[1]).toBeCloseTo(240 - 5.5 * tan + 10.5 * tan, 6);
  expect(extra(wallIn(takeoff, 'A').ledges[0]!)).toBeCloseTo(40 * (240 - 2.5 + 5 * tan), 4);
  expect(told(takeoff)).toEqual([['mitre-odd', 'A', { turnDeg: 45, core: '6' }]]);
});

describe('what cannot be laid as asked', () => {
  const HOUSE = rectangle(480, 336);
  const branch = { mark: 'P', from: [240, 11], to: [240, 200] } as const;

  test('off a course line: the nearest, of two as near the lower, and a question', () => {
    const moved = (at: number): unknown => {
      const takeoff = lay(featured(HOUSE, [ledge('A', at, 0, 480)]));
      return [wallIn(takeoff, 'A').ledges[0]!.course, ...told(takeoff)];
    };
    expect(moved(48.25)).toEqual([3]);
    expect(moved(50)).toEqual([3, ['height-not-coursed', 'A', { askedMm: 1270, stackMm: 1219.2, deviationMm: -50.8, feature: 'ledge' }]]);
    expect(moved(56)).toEqual([3, ['height-not-coursed', 'A', expect.objectContaining({ deviationMm: -203.2 })]]);
    expect(moved(57)).toEqual([4, ['height-not-coursed', 'A', expect.objectContaining({ deviationMm: 177.8 })]]);
  });

  test('over a branch on its own face: a hold; on the other face: laid', () => {
    const inside = lay(featured([...HOUSE, branch], [ledge('A', 48, 0, 480, 'inside')]));
    expect(told(inside)).toEqual([['outside-method', 'A', { feature: 'ledge over a tee', core: '6', branchCore: '6' }]]);
    expect(wallIn(inside, 'A').ledges).toEqual([]);
    const outside = lay(featured([...HOUSE, branch], [ledge('A', 48, 0, 480)]));
    expect(told(outside)).toEqual([]);
    expect(extra(wallIn(outside, 'A').ledges[0]!)).toBeCloseTo(40 * 480, 6);
  });

  test('a ledge on the branch ends at the panel of the wall it stands on', () => {
    const takeoff = lay(featured([...HOUSE, branch], [ledge('P', 48, 0, 189)]));
    expect(reached(wallIn(takeoff, 'P'), 3)[0]).toBe(5.5);
    expect(extra(wallIn(takeoff, 'P').ledges[0]!)).toBeCloseTo(40 * (189 - 2.5), 6);
  });

  test.each([
    ['on a core without the unit', featured(rectangle(480, 336, '4'), [ledge('A', 48, 0, 480)]), { feature: 'ledge', core: '4' }],
    ['in a ripped course', featured(HOUSE, [ledge('A', 108, 0, 480)], [], 108), { feature: 'ledge in a ripped course', core: '6', askedMm: 2743.2 }],
    ['two at one place', featured(HOUSE, [ledge('A', 48, 0, 480), ledge('A', 48, 100, 200, 'inside')]), { feature: 'two ledges at one place', core: '6', askedMm: 1219.2 }],
  ])('%s: a hold', (_, schedule, numbers) => {
    expect(told(lay(schedule))).toEqual([['outside-method', 'A', numbers]]);
  });
});

describe('a wall that goes from core 8 to core 6 at 48 in, outside flush', () => {
  const change = { kind: 'core-change' as const, wall: 'A', at: inches(48), core: '6', flush: 'outside' as const, place: { sheet: null, row: null, pointer: '' } };
  const walls = [{ mark: 'A', from: [0, 0], to: [240, 0], core: '8' }] as const;

  test('a ledge above the change is of the upper core, one below of the lower; each is laid once', () => {
    const takeoff = lay(featured(walls, [change, ledge('A', 80, 0, 240), ledge('A', 32, 60, 156)]));
    expect([boughtOf(takeoff, 'LG6'), boughtOf(takeoff, 'LG8')]).toEqual([5, 2]);
    expect(wallIn(takeoff, 'A').ledges.map(({ course, concreteMm3 }) => [course, Math.round(extra({ concreteMm3 }))])).toEqual([[2, 40 * 96], [5, 40 * 235]]);
  });

  test('a core without the unit above the change: a hold for that ledge alone', () => {
    const takeoff = lay(featured(walls, [{ ...change, core: '4' }, ledge('A', 80, 0, 240), ledge('A', 32, 60, 156)]));
    expect(boughtOf(takeoff, 'LG8')).toBe(2);
    expect(told(takeoff)).toContainEqual(['outside-method', 'A', { feature: 'ledge', core: '4' }]);
  });
});
