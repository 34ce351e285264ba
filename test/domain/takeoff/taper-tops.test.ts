import { describe, expect, test } from '@jest/globals';
import { takeOff, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { inches } from '../../../src/domain/quantity/length.js';
import type { Schedule } from '../../../src/domain/schedule/schedule.js';
import { brokenLaws } from '../../oracles/laid-laws.js';
import { boughtOf, cubicInches, extra, featured, formsIn, ledge, rectangle, reached, spansOf, taper, wallIn } from '../../support/features.js';
import { heron } from '../../support/small-schedules.js';

// Worked by hand; the demo range: T 11 and core 6, six courses of 16, form 48, closure 2.5, one face: seat 2, section 14 in²; both: 4, 28.

const RANGE = heron();
const FREE = [{ mark: 'A', from: [0, 0], to: [240, 0] }] as const;
const SQUARE_INCH = 645.16;
const lay = (schedule: Schedule): Takeoff => {
  const takeoff = takeOff(schedule, RANGE);
  expect(brokenLaws(takeoff, RANGE)).toEqual([]);
  return takeoff;
};
const told = ({ findings }: Takeoff): unknown[] => findings.filter(({ severity }) => severity !== 'note').map(({ code, wall, numbers }) => [code, wall, numbers]);

describe('a free wall 20 ft long', () => {
  test.each([['one', 'TT6-1', 14, 2], ['both', 'TT6-2', 28, 4]] as const)('%s: the top course is 24 + 4 × 48 + 24 of %s, section × 235, uplift seat × 235', (faces, sku, section, seat) => {
    const takeoff = lay(featured(FREE, [taper('A', faces)]));
    const wall = wallIn(takeoff, 'A');
    expect(formsIn(wall, 6, 'taper-top')).toEqual([[0, 24], [24, 72], [72, 120], [120, 168], [168, 216], [216, 240]]);
    expect([boughtOf(takeoff, sku), boughtOf(takeoff, 'ST6')]).toEqual([5, 25]);
    expect(takeoff.units.find((unit) => unit.sku === sku)).toMatchObject({ kind: 'taper-top', pieces: 6, spare: 0, lowerBound: 5 });
    expect(wall.taper).toMatchObject({ faces, course: 6, seatGain: inches(seat) });
    expect(spansOf(wall.taper!.spans)).toEqual([[0, 240]]);
    expect(extra(wall.taper!)).toBeCloseTo(section * 235, 6);
    expect(wall.taper!.upliftMm2 / SQUARE_INCH).toBeCloseTo(seat * 235, 6);
    expect(cubicInches(wall)).toBeCloseTo(235 * 96 * 6 + section * 235, 6);
    expect(told(takeoff)).toEqual([]);
  });

  test('an opening to the top takes it out; one below the top course changes nothing', () => {
    const laid = (sill: number, height: number) => wallIn(lay(featured(FREE, [taper('A')], [{ mark: 'W1', wall: 'A', at: 60, sill, width: 36, height }])), 'A').taper!;
    expect(spansOf(laid(48, 48).spans)).toEqual([[0, 60], [96, 240]]);
    expect(extra(laid(48, 48))).toBeCloseTo(14 * (235 - 36), 6);
    expect(extra(laid(32, 48))).toBeCloseTo(14 * 235, 6);
  });

  test('an opening that reaches into the top course: forms laid through and notched, its length out of the concrete', () => {
    const wall = wallIn(lay(featured(FREE, [taper('A')], [{ mark: 'W1', wall: 'A', at: 60, sill: 40, width: 36, height: 44 }])), 'A');
    expect(spansOf(wall.taper!.spans)).toEqual([[0, 240]]);
    expect(extra(wall.taper!)).toBeCloseTo(14 * (235 - 36), 6);
    expect(wall.courses[5]!.pieces.flatMap(({ kind, notches }) => notches.map(() => kind))).toContain('taper-top');
  });
});

describe('a house of 480 × 336 in', () => {
  test('all round: mitred at every corner, section × node to node', () => {
    const takeoff = lay(featured(rectangle(480, 336), ['A', 'B', 'C', 'D'].map((mark) => taper(mark, 'both'))));
    for (const [mark, length] of [['A', 480], ['B', 336], ['C', 480], ['D', 336]] as const) {
      const wall = wallIn(takeoff, mark);
      expect(reached(wall, 6)).toEqual([-5.5, length - 5.5]);
      expect(extra(wall.taper!)).toBeCloseTo(28 * (length - 11), 6);
      expect(formsIn(wall, 6, 'straight')).toEqual([]);
    }
    expect(takeoff.laid.storeys[0]!.junctions.map(({ units }) => units.length)).toEqual([5, 5, 5, 5]);
    expect(told(takeoff)).toEqual([]);
  });

  test('one wall alone: the corner units stay, the taper stops at their legs: 469 less a leg of 32 and one of 16', () => {
    const takeoff = lay(featured(rectangle(480, 336), [taper('A')]));
    const wall = wallIn(takeoff, 'A');
    const [start, end] = [wall.courses[5]!.pieces[0]!, wall.courses[5]!.pieces.filter(({ inside }) => !inside).at(-1)!];
    expect([start.kind, end.kind]).toEqual(['corner', 'corner']);
    expect(wall.taper!.spans).toEqual([{ from: start.to, to: end.from }]);
    expect(extra(wall.taper!)).toBeCloseTo(14 * (469 - 32 - 16), 6);
    expect(wall.taper!.upliftMm2 / SQUARE_INCH).toBeCloseTo(2 * (469 - 32 - 16), 6);
    expect(takeoff.laid.storeys[0]!.junctions.map(({ units }) => units.length)).toEqual([6, 6, 6, 6]);
  });

  test('neighbours with one face and with both: no mitre between them', () => {
    const takeoff = lay(featured(rectangle(480, 336), [taper('A', 'one'), taper('B', 'both')]));
    expect(takeoff.laid.storeys[0]!.junctions.every(({ units }) => units.length === 6)).toBe(true);
  });

  test('a turn of 45° that is mitred is asked about', () => {
    const half = 200 * Math.SQRT1_2;
    const walls = [{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [240 + half, half] }] as const;
    const takeoff = lay(featured(walls, [taper('A'), taper('B')]));
    const tan = Math.tan(Math.PI / 8);
    expect(extra(wallIn(takeoff, 'A').taper!)).toBeCloseTo(14 * (240 - 2.5 - 5.5 * tan), 4);
    expect(told(takeoff)).toEqual([['mitre-odd', 'A', { turnDeg: 45, core: '6' }]]);
  });

  test('a branch: from the panel of the wall it stands on', () => {
    const takeoff = lay(featured([...rectangle(480, 336), { mark: 'P', from: [240, 11], to: [240, 200] }], [taper('P')]));
    expect(extra(wallIn(takeoff, 'P').taper!)).toBeCloseTo(14 * (189 - 2.5), 6);
  });
});

test.each([
  ['a core without the unit', featured(rectangle(480, 336, '10'), [taper('A')]), 'taper-top', '10'],
  ['a ripped top course', featured(rectangle(480, 336), [taper('A')], [], 108), 'taper-top in a ripped course', '6'],
  ['a second one on the wall', featured(rectangle(480, 336), [taper('A'), taper('A')]), 'two taper tops on one wall', '6'],
  [
    'a gable above it',
    featured(rectangle(480, 336), [taper('A'), { kind: 'gable', wall: 'A', rise: inches(60), peakAt: inches(240), place: { sheet: null, row: null, pointer: '' } }]),
    'taper-top under a gable', '6',
  ],
])('%s: a hold', (_, schedule, feature, core) => {
  expect(told(lay(schedule)).filter((found) => (found as string[])[0] === 'outside-method')).toEqual([['outside-method', 'A', { feature, core, faces: 'one' }]]);
});

test('a ledge in the tapered course: a hold', () => {
  expect(told(lay(featured(rectangle(480, 336), [ledge('A', 96, 0, 480), taper('A')])))).toEqual([
    ['outside-method', 'A', { feature: 'ledge in a taper-top course', core: '6', askedMm: 2438.4 }],
  ]);
});
